package coilwright.desktop;

import coilwright.file.SafeFiles;
import coilwright.rewind.WindingWay;
import coilwright.rewind.WorkOrder;
import coilwright.rewind.WorkStep;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Steps of an order of work that are done, as kept beside the job in {@code NAME.order.csv}.
 *
 * @param way how the coils come into the slots
 * @param mark tells one order from another: of the same winding wound the same way it is the same
 * @param done numbers of the steps done
 */
record WorkTicks(WindingWay way, String mark, Set<Integer> done) {
    private static final String HEADING = "step,done";
    private static final Pattern KEPT = Pattern.compile("#\\s*(way|order):\\s*(\\S+)\\s*");
    private static final Pattern ROW = Pattern.compile("\\s*(\\d{1,7})\\s*,\\s*(yes|no)\\s*");
    private static final int MARK_BYTES = 8;
    private static final int MOST_BYTES = 4 * 1024 * 1024;

    WorkTicks {
        done = Set.copyOf(done);
    }

    /** Nothing of an order done yet. */
    static WorkTicks none(WorkOrder order) {
        return new WorkTicks(order.way(), markOf(order), Set.of());
    }

    /** The mark of an order of work. */
    static String markOf(WorkOrder order) {
        StringBuilder all = new StringBuilder(order.way().word());
        for (WorkStep s : order.steps()) {
            all.append('\n')
                    .append(s.kind())
                    .append(s.coils())
                    .append(s.slots())
                    .append(s.bars());
        }
        try {
            byte[] sum =
                    MessageDigest.getInstance("SHA-256").digest(all.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum, 0, MARK_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where the ticks of a job are kept. */
    static Path beside(Path job) {
        return named(job, "");
    }

    private static Path named(Path job, String number) {
        return JobFiles.beside(job, ".order" + number + ".csv");
    }

    WorkTicks with(int step, boolean isDone) {
        Set<Integer> next = new TreeSet<>(done);
        if (isDone) {
            next.add(step);
        } else {
            next.remove(step);
        }
        return new WorkTicks(way, mark, next);
    }

    /** The text of the file. */
    String toText() {
        StringBuilder out = new StringBuilder("# order of work, steps done\n# way: ")
                .append(way.word())
                .append("\n# order: ")
                .append(mark)
                .append('\n')
                .append(HEADING)
                .append('\n');
        new TreeSet<>(done).forEach(n -> out.append(n).append(",yes\n"));
        return out.toString();
    }

    /** Ticks read; empty where the text is none of such a file. A line broken off by a power cut is passed over. */
    static Optional<WorkTicks> parse(String text) {
        Optional<WindingWay> way = Optional.empty();
        String mark = "";
        Set<Integer> done = new TreeSet<>();
        for (String line : text.split("\r?\n")) {
            Matcher kept = KEPT.matcher(line);
            Matcher row = ROW.matcher(line);
            if (kept.matches() && kept.group(1).equals("order")) {
                mark = kept.group(2);
            } else if (kept.matches()) {
                try {
                    way = Optional.of(WindingWay.named(kept.group(2)));
                } catch (IllegalArgumentException e) {
                    return Optional.empty();
                }
            } else if (row.matches()) {
                int step = Integer.parseInt(row.group(1));
                if (row.group(2).equals("yes")) {
                    done.add(step);
                } else {
                    done.remove(step);
                }
            }
        }
        return way.isEmpty() || mark.isEmpty() ? Optional.empty() : Optional.of(new WorkTicks(way.get(), mark, done));
    }

    /**
     * What is kept in a file.
     *
     * @return empty where there is no file, or none of ticks
     * @throws IOException when it cannot be read
     */
    static Optional<WorkTicks> read(Path file) throws IOException {
        return Files.isRegularFile(file) && Files.size(file) <= MOST_BYTES
                ? parse(new String(Files.readAllBytes(file), StandardCharsets.UTF_8))
                : Optional.empty();
    }

    /**
     * Keeps one step beside a job, ticked or not, and leaves the others as they are kept there: another window may have
     * ticked them. Where nothing is kept yet, all are. A file there that holds those of another order, or something else,
     * is put aside under a name of its own first.
     *
     * @return where it was put; empty where there was nothing to put aside
     * @throws IOException when they cannot be kept; the old file is then unharmed
     */
    Optional<Path> keep(Path job, int step) throws IOException {
        Path file = beside(job);
        Optional<WorkTicks> there = read(file).filter(t -> t.mark().equals(mark));
        String text =
                there.map(t -> t.with(step, done.contains(step))).orElse(this).toText();
        if (there.isPresent() || !Files.exists(file)) {
            SafeFiles.write(file, text);
            return Optional.empty();
        }
        int n = 1;
        while (Files.exists(named(job, "-" + n))) {
            n++;
        }
        Path aside = named(job, "-" + n);
        Files.copy(file, aside);
        try {
            SafeFiles.write(file, text);
        } catch (IOException e) {
            Files.delete(aside);
            throw e;
        }
        return Optional.of(aside);
    }
}
