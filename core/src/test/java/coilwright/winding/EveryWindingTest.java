package coilwright.winding;

import static coilwright.winding.WindingChecks.wrong;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every winding of up to 40 slots, 4 coil sides per slot and layer, 12 poles and triplex. */
class EveryWindingTest {
    private static final int MOST_SLOTS = 40;
    private static final int MOST_SIDES = 4;
    private static final int MOST_POLES = 12;
    private static final int MOST_PLEX = 3;

    /** The condition of the books, found by trying every pitch: some whole yc with p·yc = K ± m (lap: yc = ±m). */
    private static boolean canBeStepped(WindingType type, Direction direction, int bars, int poles, int plex) {
        if (bars < 2 * plex) {
            return false;
        }
        if (type == WindingType.LAP) {
            return true;
        }
        int wanted = direction == Direction.PROGRESSIVE ? bars + plex : bars - plex;
        for (int yc = 1; yc * (poles / 2) <= wanted; yc++) {
            if (yc * (poles / 2) == wanted) {
                return true;
            }
        }
        return false;
    }

    private static Set<Integer> spans(int slots, int u, int poles) {
        int usual = Math.max(1, slots / poles);
        Set<Integer> out = new LinkedHashSet<>();
        out.add(usual * u);
        for (int y1 : List.of(u, (usual + 1) * u, (usual - 1) * u, usual * u + 1, usual * u - 1, slots / 2 * u)) {
            if (y1 >= u && y1 <= (slots - 1) * u) {
                out.add(y1);
            }
        }
        return out;
    }

    @Test
    void everyLapAndWaveIsSoundAndAgreesWithTheConductorWalk() {
        long built = 0;
        long refused = 0;
        for (int slots = 2; slots <= MOST_SLOTS; slots++) {
            for (int u = 1; u <= MOST_SIDES; u++) {
                for (int poles = 2; poles <= MOST_POLES; poles += 2) {
                    var armature = Armature.of(slots, slots * u, poles);
                    for (int plex = 1; plex <= MOST_PLEX; plex++) {
                        for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE)) {
                            for (Direction direction : Direction.values()) {
                                var plain =
                                        new WindingSpec.Regular(type, plex, direction, CoilSpan.usual(), List.of(), 0);
                                if (!canBeStepped(type, direction, slots * u, poles, plex)) {
                                    refusedWithWayOut(armature, plain);
                                    refused++;
                                    continue;
                                }
                                for (int y1 : spans(slots, u, poles)) {
                                    int offset = (y1 * 7 + slots) % 11 - 5;
                                    var w = Winding.build(
                                            armature,
                                            plain.withSpan(CoilSpan.ofPositions(y1))
                                                    .withLeadOffset(offset));
                                    WindingChecks.regular(w, y1);
                                    built++;
                                }
                                int usual = Math.max(1, slots / poles);
                                var first = Winding.build(armature, plain);
                                var same = Winding.build(armature, plain.withSpan(CoilSpan.ofThrow(usual)));
                                if (!first.coils().equals(same.coils())) {
                                    throw wrong(plain, "usual throw");
                                }
                            }
                        }
                    }
                }
            }
        }
        assertThat(built).isGreaterThan(35_000);
        assertThat(refused).isGreaterThan(2_500);
    }

    @Test
    void everyWindingWithDeadCoilsIsSoundAndAgreesWithTheConductorWalk() {
        long built = 0;
        for (int slots = 2; slots <= MOST_SLOTS; slots++) {
            for (int u = 1; u <= MOST_SIDES; u++) {
                int q = slots * u;
                List<List<Integer>> places =
                        List.of(List.of(1), List.of(q), List.of((q + 1) / 2), List.of(1, q / 2 + 1), List.of(q - 1, q));
                for (int poles = 2; poles <= MOST_POLES; poles += 2) {
                    for (int plex = 1; plex <= MOST_PLEX; plex++) {
                        for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE)) {
                            for (Direction direction : Direction.values()) {
                                for (List<Integer> dead : places) {
                                    int bars = q - dead.size();
                                    if (bars < 2 || !canBeStepped(type, direction, bars, poles, plex)) {
                                        continue;
                                    }
                                    var w = Winding.build(
                                            Armature.of(slots, bars, poles),
                                            new WindingSpec.Regular(
                                                    type,
                                                    plex,
                                                    direction,
                                                    CoilSpan.usual(),
                                                    dead,
                                                    (slots + u) % 5 - 2));
                                    WindingChecks.regular(w, Math.max(1, slots / poles) * u);
                                    if (w.deadCoils().size() != dead.size()) {
                                        throw wrong(w.spec(), "dead coils");
                                    }
                                    built++;
                                }
                            }
                        }
                    }
                }
            }
        }
        assertThat(built).isGreaterThan(30_000);
    }

    @Test
    void everyFrogLegIsSoundAndItsTwoPartsCancel() {
        long built = 0;
        for (int slots = 2; slots <= MOST_SLOTS; slots++) {
            for (int u = 1; u <= MOST_SIDES; u++) {
                for (int poles = 2; poles <= MOST_POLES; poles += 2) {
                    int bars = slots * u;
                    int p = poles / 2;
                    for (int plex = 1; plex <= MOST_PLEX; plex++) {
                        for (Direction direction : Direction.values()) {
                            for (int y1 : spans(slots, u, poles)) {
                                var spec = new WindingSpec.FrogLeg(
                                        plex, direction, CoilSpan.ofPositions(y1), (slots + y1) % 7 - 3);
                                var armature = Armature.of(slots, bars, poles);
                                boolean possible =
                                        bars % p == 0 && bars >= 2 * p * plex && y1 >= u && bars / p - y1 >= u;
                                if (!possible) {
                                    refusedWithWayOut(armature, spec);
                                    continue;
                                }
                                frogLeg(Winding.build(armature, spec), y1, plex * direction.sign());
                                built++;
                            }
                        }
                    }
                }
            }
        }
        assertThat(built).isGreaterThan(5_000);
    }

    static void frogLeg(Winding w, int lapSpan, int lapStep) {
        int k = w.armature().bars();
        int p = w.armature().polePairs();
        int q = w.positions();
        WindingChecks.everySideInOnePlace(w);
        WindingChecks.everyBarMetTwice(w);
        WindingChecks.closesAsOften(w, 0, WindingChecks.commonDivisor(k, Math.abs(lapStep)));
        WindingChecks.closesAsOften(w, 1, WindingChecks.commonDivisor(k, Math.abs(k / p - lapStep)));
        WindingChecks.sameWhenRenumbered(w, w);
        // The second construction: from each lap coil go on, at its far bar and out of its far place, by the wave
        // coil; the pair must come down two pole pitches on, in the slots and on the bars.
        Map<Integer, Coil> waveFrom = new LinkedHashMap<>();
        w.coils().stream()
                .filter(c -> c.set() == 1)
                .forEach(c -> waveFrom.put(c.topBar().getAsInt(), c));
        for (Coil lap : w.coils()) {
            if (lap.set() != 0) {
                continue;
            }
            Coil wave = waveFrom.get(lap.bottomBar().getAsInt());
            if (wave.top().position() != lap.bottom().position()) {
                throw wrong(w.spec(), "wave coil " + wave + " after " + lap);
            }
            if (lap.bottom().position() != (lap.number() + lapSpan - 1) % q + 1) {
                throw wrong(w.spec(), "span of " + lap);
            }
            if (wave.bottom().position() != (lap.number() + q / p - 1) % q + 1) {
                throw wrong(w.spec(), "two pole pitches by " + lap + " and " + wave);
            }
            if (wave.bottomBar().getAsInt() != (lap.topBar().getAsInt() + k / p - 1) % k + 1) {
                throw wrong(w.spec(), "two pole pitches of bars by " + lap + " and " + wave);
            }
        }
    }

    @Test
    void aWindingIsBuiltExactlyWhereItCanBe() {
        for (int slots = 2; slots <= 14; slots++) {
            for (int bars = 2; bars <= 36; bars++) {
                for (int poles = 2; poles <= MOST_POLES; poles += 2) {
                    for (int plex = 1; plex <= MOST_PLEX; plex++) {
                        for (int dead = 0; dead <= 2; dead++) {
                            for (WindingType type : List.of(WindingType.LAP, WindingType.WAVE)) {
                                for (Direction direction : Direction.values()) {
                                    var spec = new WindingSpec.Regular(
                                            type, plex, direction, CoilSpan.usual(), firstCoils(dead), 0);
                                    var armature = Armature.of(slots, bars, poles);
                                    if ((bars + dead) % slots == 0
                                            && canBeStepped(type, direction, bars, poles, plex)) {
                                        if (Winding.build(armature, spec)
                                                        .coils()
                                                        .size()
                                                != bars + dead) {
                                            throw wrong(spec, "number of coils");
                                        }
                                    } else {
                                        refusedWithWayOut(armature, spec);
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    private static List<Integer> firstCoils(int count) {
        List<Integer> out = new ArrayList<>();
        for (int n = 1; n <= count; n++) {
            out.add(n);
        }
        return out;
    }

    private record Trial(Armature armature, WindingSpec spec) {}

    /** It is refused; each finding has reason and way out; and whatever number a way out names really works. */
    private static void refusedWithWayOut(Armature armature, WindingSpec spec) {
        Object where = List.of(armature, spec);
        List<Finding> findings;
        try {
            Winding.build(armature, spec);
            throw new AssertionError("built, though impossible: " + where);
        } catch (ImpossibleWindingException e) {
            findings = e.findings();
            if (e.getMessage().isBlank()) {
                throw wrong(where, "no message");
            }
        }
        for (Finding f : findings) {
            if (f.severity() != Severity.ERROR) {
                throw wrong(where, "severity of " + f);
            }
            if (f.reason().isBlank() || f.wayOut().isBlank()) {
                throw wrong(where, "no way out in " + f);
            }
            List<Trial> trials = trials(armature, spec, f);
            for (Trial t : trials) {
                List<Finding> left = Rules.blocking(t.armature(), t.spec());
                if (left.stream().anyMatch(g -> g.rule().equals(f.rule()))) {
                    throw wrong(where, "'" + f.wayOut() + "' does not help: " + t + " " + left);
                }
                if (findings.size() == 1 && !left.isEmpty()) {
                    throw wrong(where, "'" + f.wayOut() + "' still is impossible: " + t + " " + left);
                }
            }
        }
    }

    private static final Pattern BARS = Pattern.compile("(\\d+)(?: \\(([^)]*)\\))?(?= or |$)");

    /** What a way out proposes, as something to be built. A number of bars that this core cannot take gets its own. */
    private static List<Trial> trials(Armature a, WindingSpec spec, Finding f) {
        List<Trial> out = new ArrayList<>();
        String way = f.wayOut();
        switch (f.rule()) {
            case "commutator-pitch-whole" -> {
                var r = (WindingSpec.Regular) spec;
                Matcher reversed =
                        Pattern.compile("^wound (\\w+) the pitch is (\\d+)").matcher(way);
                if (reversed.find()) {
                    var other = new WindingSpec.Regular(
                            r.type(), r.plex(), r.direction().reversed(), r.span(), r.deadCoils(), r.leadOffset());
                    if (!other.direction().word().equals(reversed.group(1))) {
                        throw wrong(f, "direction");
                    }
                    if (Integer.parseInt(reversed.group(2))
                            != (a.bars() + other.direction().sign() * r.plex()) / a.polePairs()) {
                        throw wrong(f, "pitch");
                    }
                    out.add(new Trial(a, other));
                }
                String list = way.substring(way.lastIndexOf("; ") + 2).replace(" would do", "");
                Matcher m = BARS.matcher(list);
                int found = 0;
                while (m.find()) {
                    int bars = Integer.parseInt(m.group(1));
                    String remark = Optional.ofNullable(m.group(2)).orElse("");
                    Direction d = remark.contains("wound") ? r.direction().reversed() : r.direction();
                    Matcher dead = Pattern.compile("(\\w+) dead coil").matcher(remark);
                    int count = dead.find() ? number(dead.group(1)) : 0;
                    out.add(new Trial(
                            Armature.of(count > 0 ? a.slots() : bars, bars, a.poles()),
                            new WindingSpec.Regular(
                                    r.type(), r.plex(), d, CoilSpan.usual(), firstCoils(count), r.leadOffset())));
                    found++;
                }
                if (found == 0) {
                    throw wrong(f, "no number of bars named");
                }
            }
            case "coil-sides-fit-slots" -> {
                Matcher fill = Pattern.compile("(\\w+) dead coils? in all would fill the slots")
                        .matcher(way);
                if (fill.find()) {
                    var r = (WindingSpec.Regular) spec;
                    out.add(new Trial(a, r.withDeadCoils(firstCoils(number(fill.group(1))))));
                }
                Matcher bars =
                        Pattern.compile("((?:\\d+ or )?\\d+) bars would do").matcher(way);
                if (bars.find()) {
                    for (String k : bars.group(1).split(" or ")) {
                        out.add(new Trial(Armature.of(a.slots(), Integer.parseInt(k), a.poles()), spec));
                    }
                }
                if (out.isEmpty() && !way.startsWith("no number of bars")) {
                    throw wrong(f, "nothing proposed");
                }
            }
            case "leads-apart" -> {
                var r = (WindingSpec.Regular) spec;
                Matcher plex = Pattern.compile("^plex (\\d+)").matcher(way);
                if (plex.find()) {
                    out.add(new Trial(
                            a,
                            new WindingSpec.Regular(
                                    r.type(),
                                    Integer.parseInt(plex.group(1)),
                                    r.direction(),
                                    r.span(),
                                    r.deadCoils(),
                                    r.leadOffset())));
                }
                Matcher bars = Pattern.compile("(\\d+) bars for this plex").matcher(way);
                if (bars.find()) {
                    int k = Integer.parseInt(bars.group(1));
                    out.add(new Trial(
                            Armature.of(k, k, a.poles()),
                            r.withSpan(CoilSpan.usual()).withDeadCoils(List.of())));
                }
                if (out.isEmpty()) {
                    throw wrong(f, "nothing proposed");
                }
            }
            case "frog-leg-fits" -> {
                var l = (WindingSpec.FrogLeg) spec;
                Matcher span = Pattern.compile("^a backSpan of (\\d+) or less").matcher(way);
                Matcher plex = Pattern.compile("^plex (\\d+)").matcher(way);
                if (span.find()) {
                    out.add(new Trial(
                            a,
                            new WindingSpec.FrogLeg(
                                    l.plex(),
                                    l.direction(),
                                    CoilSpan.ofPositions(Integer.parseInt(span.group(1))),
                                    l.leadOffset())));
                } else if (plex.find()) {
                    out.add(new Trial(
                            a,
                            new WindingSpec.FrogLeg(
                                    Integer.parseInt(plex.group(1)), l.direction(), l.span(), l.leadOffset())));
                }
                Matcher number =
                        Pattern.compile("(\\d+) (?:or (\\d+) )?(?:bars|slots)").matcher(way);
                if (number.find()) {
                    for (String n : List.of(
                            number.group(1),
                            Optional.ofNullable(number.group(2)).orElse(number.group(1)))) {
                        int count = Integer.parseInt(n);
                        int bars = way.contains("slots") ? count * a.bars() / a.slots() : count;
                        out.add(new Trial(
                                Armature.of(count, bars, a.poles()),
                                new WindingSpec.FrogLeg(l.plex(), l.direction(), CoilSpan.usual(), l.leadOffset())));
                    }
                }
                // Several things may be wrong with a frog-leg winding, and one way out mends one of them.
                out.removeIf(t -> Rules.blocking(a, spec).size() > 1);
            }
            default -> {
                if (!f.rule().equals("span-in-range")) {
                    throw wrong(f, "rule without a trial");
                }
            }
        }
        return out;
    }

    private static int number(String word) {
        return switch (word) {
            case "one" -> 1;
            case "two" -> 2;
            case "three" -> 3;
            default -> Integer.parseInt(word);
        };
    }
}
