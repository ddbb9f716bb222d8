package coilwright.lesson;

import coilwright.drawing.Drawing;
import coilwright.fault.ConnectionCheck;
import coilwright.winding.Armature;
import coilwright.winding.Coil;
import coilwright.winding.Direction;
import coilwright.winding.ListedCoil;
import coilwright.winding.Pitches;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Find the one error in a connection list.
 *
 * @param grade 1 to 3; at grade 3 only the list itself shows throw, direction and lead throw
 * @param armature core and commutator
 * @param spec the winding meant
 * @param found the list with the error, in order of coil
 */
public record ListErrorExercise(int grade, Armature armature, WindingSpec.Regular spec, List<ListedCoil> found)
        implements Exercise {
    /**
     * Copies the list.
     *
     * @param grade 1 to 3; at grade 3 only the list itself shows throw, direction and lead throw
     * @param armature core and commutator
     * @param spec the winding meant
     * @param found the list with the error, in order of coil
     */
    public ListErrorExercise {
        found = List.copyOf(found);
    }

    static ListErrorExercise make(Dice dice, int grade) {
        int most = grade == 1 ? 12 : grade == 2 ? 18 : 24;
        while (true) {
            Winding w = Made.winding(
                    dice,
                    Math.min(grade, 2),
                    most,
                    x -> grade > 1 || x.armature().bars() >= 7);
            List<ListedCoil> list = new ArrayList<>(w.asListed().coils());
            int a = dice.from(1, list.size()) - 1;
            int b = Math.floorMod(a + dice.from(1, list.size() - 1), list.size());
            switch (dice.from(1, grade == 1 ? 2 : 4)) {
                case 1 -> swap(list, a, b, dice.oneIn(2));
                case 2 -> {
                    ListedCoil c = list.get(a);
                    list.set(a, new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.bottomBar(), c.topBar()));
                }
                case 3 -> {
                    ListedCoil c = list.get(a);
                    int slot = w.armature().wrapSlot(c.bottomSlot() + dice.of(-1, 1));
                    list.set(a, new ListedCoil(c.coil(), c.topSlot(), slot, c.topBar(), c.bottomBar()));
                }
                default -> {
                    ListedCoil c = list.get(a);
                    int bar = w.armature().wrapBar(c.bottomBar().getAsInt() + dice.of(-1, 1));
                    list.set(a, new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.topBar(), OptionalInt.of(bar)));
                }
            }
            var made = new ListErrorExercise(grade, w.armature(), Made.spec(w), list);
            if (made.sound()) {
                return made;
            }
        }
    }

    private static void swap(List<ListedCoil> list, int a, int b, boolean top) {
        ListedCoil x = list.get(a);
        ListedCoil y = list.get(b);
        list.set(a, top ? withTop(x, y.topBar()) : withBottom(x, y.bottomBar()));
        list.set(b, top ? withTop(y, x.topBar()) : withBottom(y, x.bottomBar()));
    }

    private static ListedCoil withTop(ListedCoil c, OptionalInt bar) {
        return new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), bar, c.bottomBar());
    }

    private static ListedCoil withBottom(ListedCoil c, OptionalInt bar) {
        return new ListedCoil(c.coil(), c.topSlot(), c.bottomSlot(), c.topBar(), bar);
    }

    /** Whether the list is off by one thing, and no other winding that may be meant comes as near. */
    private boolean sound() {
        ConnectionCheck.Result result = result();
        if (result.whole().isPresent() || result.differences().isEmpty()) {
            return false;
        }
        List<Integer> coils = result.coils();
        boolean one = result.differences().size() == coils.size()
                && (coils.size() == 1
                        || (coils.size() == 2
                                && result.differences().get(0).kind() == ConnectionCheck.Kind.SWAPPED_LEADS));
        return one && (grade < 3 || alone());
    }

    /** Whether every other throw, direction or lead throw leaves more than two lines unexplained. */
    private boolean alone() {
        Winding meant = Winding.build(armature, spec);
        int u = meant.sidesPerSlot();
        int k = armature.bars();
        for (Direction direction : Direction.values()) {
            int yc = direction.sign() * spec.plex();
            if (spec.type() == WindingType.WAVE) {
                if ((k + yc) % armature.polePairs() != 0) {
                    continue;
                }
                yc = (k + yc) / armature.polePairs();
            }
            for (int y1 = u; y1 <= u * (armature.slots() - 1); y1++) {
                for (int offset = 0; offset < k; offset++) {
                    if (unexplained(yc, y1, offset) <= 2 && !same(meant, yc, y1, offset)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private boolean same(Winding meant, int yc, int y1, int offset) {
        Pitches y = meant.pitches().orElseThrow();
        return Math.floorMod(yc - y.commutator(), armature.bars()) == 0
                && y1 == y.backSpan()
                && Math.floorMod(offset - spec.leadOffset(), armature.bars()) == 0;
    }

    /** Lines that differ from a plan with no dead coil. */
    private int unexplained(int yc, int y1, int offset) {
        int k = armature.bars();
        int u = k / armature.slots();
        int n = 0;
        for (ListedCoil c : found) {
            int i = c.coil() - 1;
            int top = Math.floorMod(i + offset, k);
            boolean fits = c.topSlot() == 1 + i / u
                    && c.bottomSlot() == 1 + Math.floorMod(i + y1, k) / u
                    && c.topBar().getAsInt() == 1 + top
                    && c.bottomBar().getAsInt() == 1 + Math.floorMod(top + yc, k);
            n += fits ? 0 : 1;
        }
        return n;
    }

    private ConnectionCheck.Result result() {
        return ConnectionCheck.of(Winding.build(armature, spec), found);
    }

    @Override
    public Kind kind() {
        return Kind.LIST_ERROR;
    }

    @Override
    public List<String> question() {
        List<String> out = new ArrayList<>();
        if (grade < 3) {
            out.add("Meant: " + Made.core(armature) + "; " + Made.winding(armature, spec) + ".");
            out.addAll(Made.numbering());
        } else {
            out.add("Meant: " + Made.core(armature) + "; " + WindingSpec.plexWord(spec.plex()) + " "
                    + spec.type().word() + " winding, all coils alike; throw, direction and lead throw as the list"
                    + " shows.");
        }
        out.add("The list holds one error: two leads exchanged, a coil with its own two leads changed over, a lead on"
                + " a wrong bar, or a side in a wrong slot. Name the coil or the two coils, and what each line should"
                + " be.");
        return List.copyOf(out);
    }

    @Override
    public Optional<Grid> table() {
        return Optional.of(new Grid(
                Grid.COILS,
                found.stream()
                        .map(c -> IntStream.of(
                                        c.coil(),
                                        c.topSlot(),
                                        c.bottomSlot(),
                                        c.topBar().getAsInt(),
                                        c.bottomBar().getAsInt())
                                .mapToObj(Integer::toString)
                                .toList())
                        .toList()));
    }

    @Override
    public List<Answer> answers() {
        ConnectionCheck.Result result = result();
        List<Answer> out = new ArrayList<>();
        ConnectionCheck.Kind kind = result.differences().get(0).kind();
        out.add(Answer.word(
                "error",
                kind.word() + ":" + Figures.commas(result.coils()),
                kind.word().replace('-', ' ') + ", coil" + (result.coils().size() == 1 ? " " : "s ")
                        + Figures.list(result.coils())));
        for (int n : result.coils()) {
            Coil c = Winding.build(armature, spec).coil(n);
            List<Integer> line = List.of(
                    c.top().slot(),
                    c.bottom().slot(),
                    c.topBar().getAsInt(),
                    c.bottomBar().getAsInt());
            out.add(Answer.word(
                    "coil " + n + " should be",
                    Figures.commas(line),
                    "slots " + line.get(0) + " and " + line.get(1) + ", bars " + line.get(2) + " and " + line.get(3)));
        }
        return List.copyOf(out);
    }

    @Override
    public List<String> asked() {
        return List.of("error", "coil or coils", "line as it should be", "second line, if any");
    }

    @Override
    public List<String> steps() {
        Winding w = Winding.build(armature, spec);
        Pitches y = w.pitches().orElseThrow();
        List<String> out = new ArrayList<>();
        int u = w.sidesPerSlot();
        String span = y.stepped()
                ? Figures.count(y.backSpan(), "position")
                : Figures.count(y.throwSlots().getAsInt(), "slot");
        out.add("slots: " + (u == 1 ? "every coil" : u + " coils to a slot; every coil") + " reaches " + span
                + " on, round past slot " + armature.slots() + " to slot 1");
        out.add("top leads: coil by coil one bar on; bottom leads: top bar " + (y.commutator() < 0 ? "− " : "+ ")
                + Math.abs(y.commutator()) + ", round past bar " + armature.bars());
        for (ConnectionCheck.Difference d : result().differences()) {
            ListedCoil is = d.found().orElseThrow();
            ListedCoil should = d.expected().orElseThrow();
            out.add("coil " + d.coil() + ": the list has " + line(is) + ", the rule gives " + line(should));
        }
        int others = found.size() - result().coils().size();
        out.add("the other " + Figures.count(others, "line") + " keep the rule; so: "
                + result().differences().get(0).words());
        return List.copyOf(out);
    }

    private static String line(ListedCoil c) {
        return "slots " + c.topSlot() + " and " + c.bottomSlot() + ", bars "
                + c.topBar().getAsInt() + " and " + c.bottomBar().getAsInt();
    }

    @Override
    public Optional<Drawing> keyPicture() {
        if (!Pictures.small(armature)) {
            return Optional.empty();
        }
        Winding asFound = Winding.build(armature, new WindingSpec.Listed(found));
        return Optional.of(Pictures.developed(asFound, result().coils(), false));
    }
}
