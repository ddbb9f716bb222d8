package coilwright.job;

import coilwright.file.SafeFiles;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.ListedCoil;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.NodeId;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.resolver.Resolver;

/** Writes job files, such that {@link JobReader} reads the same job back. */
public final class JobWriter {
    private JobWriter() {}

    /**
     * Writes a job file in one step: the file holds the old job or the new one, never a part.
     *
     * @param job the job
     * @param file where it lies
     * @throws IOException when it cannot be written
     */
    public static void write(Job job, Path file) throws IOException {
        SafeFiles.write(file, toText(job));
    }

    /**
     * {@return the text of a job file; the same job gives the same text}
     *
     * @param job the job
     */
    public static String toText(Job job) {
        StringBuilder out = new StringBuilder();
        line(out, "coilwright: " + JobReader.VERSION);
        line(out, "title: " + text(job.title()));
        Armature a = job.armature();
        line(
                out,
                "armature: {slots: " + a.slots() + ", bars: " + a.bars() + ", poles: " + a.poles()
                        + ", slotOneInLineWith: " + a.slotOneInLineWith().word() + "}");
        line(out, "winding:");
        line(out, "  type: " + job.winding().type().word());
        if (job.winding() instanceof WindingSpec.Regular r) {
            line(out, "  plex: " + r.plex());
            line(out, "  direction: " + r.direction().word());
            span(out, r.span());
            line(
                    out,
                    "  deadCoils: "
                            + r.deadCoils().stream().map(String::valueOf).collect(Collectors.joining(", ", "[", "]")));
            line(out, "  leadOffset: " + r.leadOffset());
        } else if (job.winding() instanceof WindingSpec.FrogLeg f) {
            line(out, "  plex: " + f.plex());
            line(out, "  direction: " + f.direction().word());
            span(out, f.span());
            line(out, "  leadOffset: " + f.leadOffset());
        }
        job.turns().ifPresent(n -> line(out, "  turns: " + n));
        job.coilResistance().ifPresent(r -> line(out, "  coilResistance: " + r));
        if (job.winding() instanceof WindingSpec.Listed listed) {
            line(out, "  coils:");
            listed.coils().forEach(c -> line(out, "    - " + coil(c)));
        }
        line(
                out,
                "growler: {halfGap: " + number(job.growler().halfGap()) + ", face: "
                        + number(job.growler().face()) + "}");
        job.equalizers().ifPresent(e -> line(out, "equalizers: {every: " + e.every() + "}"));
        particulars(out, job.particulars());
        if (!job.readings().isEmpty()) {
            line(out, "readings:");
            job.readings().forEach(set -> readings(out, set));
        }
        return out.toString();
    }

    private static void particulars(StringBuilder out, Particulars p) {
        section(out, "rating", p.rating());
        section(out, "wire", p.wire());
        section(out, "core", p.core());
        section(out, "commutator", p.commutator());
        section(out, "asFound", p.asFound());
        section(out, "plan", p.plan());
        section(out, "asRewound", p.asRewound());
        if (!p.notes().isEmpty()) {
            line(out, "notes:");
            p.notes().forEach(n -> line(out, "  - " + text(n)));
        }
    }

    private static void section(StringBuilder out, String name, Optional<? extends Record> section) {
        section.ifPresent(s -> SectionWriter.write(l -> line(out, l), name, s, 0));
    }

    private static void readings(StringBuilder out, ReadingSet set) {
        String indent = "  - ";
        for (String line : setUp(set)) {
            line(out, indent + line);
            indent = "    ";
        }
        if (set.readings().isEmpty()) {
            line(out, "    readings: []");
            return;
        }
        line(out, "    readings:");
        for (TakenReading r : set.readings()) {
            String shown = r.written();
            line(
                    out,
                    "      - {from: " + TakenReading.name(r.from()) + ", to: " + TakenReading.name(r.to())
                            + ", reading: " + (shown.isEmpty() ? "null" : shown) + "}");
        }
    }

    /** The lines of a set of readings that say how they were taken. */
    static List<String> setUp(ReadingSet set) {
        List<String> out = new ArrayList<>();
        out.add("test: " + set.test().word());
        if (set.stage() != ReadingSet.Stage.AS_FOUND) {
            out.add("stage: " + Words.of(set.stage()));
        }
        set.date().ifPresent(d -> out.add("date: " + d));
        set.feed()
                .ifPresent(f -> out.add("feed: {in: " + f.in() + ", out: " + f.out() + ", amps: "
                        + f.amps().toPlainString() + "}"));
        set.angle().ifPresent(x -> out.add("angle: " + x.toPlainString()));
        set.clock().ifPresent(x -> out.add("clock: " + x.toPlainString()));
        set.unit().ifPresent(u -> out.add("unit: " + u));
        set.meter().ifPresent(m -> out.add("meter: " + text(m)));
        set.temperature().ifPresent(t -> out.add("temperature: " + t));
        return out;
    }

    private static void line(StringBuilder out, String line) {
        out.append(line).append('\n');
    }

    private static void span(StringBuilder out, CoilSpan span) {
        if (span instanceof CoilSpan.Throw t) {
            line(out, "  throw: " + t.slots());
        } else if (span instanceof CoilSpan.Positions p) {
            line(out, "  backSpan: " + p.positions());
        }
    }

    static String coil(ListedCoil c) {
        return "{coil: " + c.coil() + ", topSlot: " + c.topSlot() + ", bottomSlot: " + c.bottomSlot() + ", topBar: "
                + bar(c.topBar()) + ", bottomBar: " + bar(c.bottomBar()) + "}";
    }

    private static String number(double x) {
        return x == Math.rint(x) && Math.abs(x) < 1e9 ? Long.toString((long) x) : Double.toString(x);
    }

    private static String bar(OptionalInt bar) {
        return bar.isPresent() ? Integer.toString(bar.getAsInt()) : "null";
    }

    /** Plain where YAML would read the same text back, else in quotation marks. */
    static String text(String value) {
        boolean plain = value.matches("[A-Za-z]([A-Za-z0-9 .,()/-]*[A-Za-z0-9)])?")
                && new Resolver().resolve(NodeId.scalar, value, true).equals(Tag.STR);
        if (plain) {
            return value;
        }
        StringBuilder out = new StringBuilder("\"");
        for (Iterator<Integer> it = value.codePoints().iterator(); it.hasNext(); ) {
            int c = it.next();
            if (c == '"' || c == '\\') {
                out.append('\\').appendCodePoint(c);
            } else if (Job.isUnseen(c)) {
                out.append(String.format(Locale.ROOT, c > 0xFFFF ? "\\U%08X" : "\\u%04X", c));
            } else {
                out.appendCodePoint(c);
            }
        }
        return out.append('"').toString();
    }
}
