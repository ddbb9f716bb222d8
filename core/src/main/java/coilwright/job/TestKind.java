package coilwright.job;

import coilwright.bench.FeedBars;
import coilwright.bench.Procedure;
import coilwright.bench.Procedures;
import coilwright.winding.Winding;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The tests whose readings can be noted, by the words that files and commands use. */
public enum TestKind {
    /** Direct current fed to two bars, volts from bar to bar. */
    DROP("drop", Quantity.Kind.VOLTAGE),
    /** Growler and meter, the probes walked round a still armature. */
    GROWLER("growler", Quantity.Kind.VOLTAGE, Quantity.Kind.CURRENT),
    /** Growler and meter, the armature turned under probes held still. */
    GROWLER_TURNED("growler-turned", Quantity.Kind.VOLTAGE, Quantity.Kind.CURRENT),
    /** Ohms from bar to bar. */
    RESISTANCE("resistance", Quantity.Kind.RESISTANCE),
    /** Ohms from bar to shaft. */
    GROUND("ground", Quantity.Kind.RESISTANCE),
    /** Direct current fed to two bars, volts from bar to shaft. */
    GROUND_WALK("ground-walk", Quantity.Kind.VOLTAGE),
    /** Which way a compass swings: 1 as in a sound coil, -1 the other way, 0 not at all. */
    POLARITY("polarity");

    private final String word;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<Quantity.Kind> kinds;

    TestKind(String word, Quantity.Kind... kinds) {
        this.word = word;
        this.kinds = List.of(kinds);
    }

    /** {@return the word for it} */
    public String word() {
        return word;
    }

    /** {@return the kinds of quantity its meter can show, the usual one first; empty where readings have no unit} */
    public List<Quantity.Kind> kinds() {
        return kinds;
    }

    /** {@return whether current is fed to two bars} */
    public boolean fed() {
        return this == DROP || this == GROUND_WALK;
    }

    /** {@return whether one probe touches the shaft} */
    public boolean toShaft() {
        return this == GROUND || this == GROUND_WALK;
    }

    /** {@return whether it has pairs of its own, and is not walked from one bar to the next} */
    public boolean ownPairs() {
        return toShaft() || this == POLARITY;
    }

    /** {@return whether a growler's meter is read, which without a known pair tells relative readings only} */
    public boolean growler() {
        return this == GROWLER || this == GROWLER_TURNED;
    }

    /** {@return whether its meter reads ohms} */
    public boolean ohms() {
        return kinds.contains(Quantity.Kind.RESISTANCE);
    }

    /** {@return whether readings may have no unit: divisions of a growler's meter, the swing of a compass} */
    public boolean unitless() {
        return growler() || this == POLARITY;
    }

    /**
     * {@return how the test is done}
     *
     * @param winding the winding
     * @param feeds where it may be fed, the best first; for a test that is fed
     * @param clock place of probes held still, degrees clockwise from straight up; for a growler turned under them
     */
    public Procedure procedure(Winding winding, List<FeedBars> feeds, double clock) {
        return switch (this) {
            case DROP -> Procedures.drop(winding, feeds);
            case GROWLER -> Procedures.growlerMeterWalked(winding);
            case GROWLER_TURNED -> Procedures.growlerMeterTurned(winding, clock);
            case RESISTANCE -> Procedures.resistance(winding);
            case GROUND, GROUND_WALK -> Procedures.ground(winding);
            case POLARITY -> Procedures.polarity(winding);
        };
    }

    /**
     * {@return the test of a word; empty where there is none}
     *
     * @param word as files and commands have it
     */
    public static Optional<TestKind> of(String word) {
        return Arrays.stream(values()).filter(t -> t.word.equals(word)).findFirst();
    }
}
