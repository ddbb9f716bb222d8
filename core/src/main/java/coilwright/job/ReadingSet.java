package coilwright.job;

import coilwright.bench.BenchTest;
import coilwright.bench.Growler;
import coilwright.bench.PairReading;
import coilwright.bench.TestRun;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Readings taken in one go and noted with the job.
 *
 * @param date when they were taken
 * @param test which test
 * @param feed where current went in and out; given for the tests that are fed, and for no other
 * @param angle of slot 1's centre line, degrees; given for a growler with the armature still, and for no other
 * @param clock place of the probes, degrees; given for a growler with the armature turned, and for no other
 * @param unit of the numbers that have none of their own; needed where there are such, unless the test needs none
 * @param meter which meter, one line
 * @param temperature of the winding
 * @param readings in the order taken, with gaps and repeats
 * @param stage whether the old winding or the new one was read
 */
public record ReadingSet(
        Optional<LocalDate> date,
        TestKind test,
        Optional<GivenFeed> feed,
        Optional<BigDecimal> angle,
        Optional<BigDecimal> clock,
        Optional<String> unit,
        Optional<String> meter,
        Optional<Quantity> temperature,
        List<TakenReading> readings,
        Stage stage) {
    /** Which winding was read. */
    public enum Stage {
        /** The old one, before stripping. */
        AS_FOUND,
        /** The new one. */
        AS_REWOUND
    }

    /** Largest angle taken, degrees either way. */
    static final int MOST_DEGREES = 3600;

    private static final int MOST_DECIMALS = 12;

    /** Most readings taken in one go. */
    public static final int MOST_READINGS = 20_000;

    /**
     * Where current was fed.
     *
     * @param in bar where it went in
     * @param out bar where it came out
     * @param amps how much, over 0
     */
    public record GivenFeed(int in, int out, BigDecimal amps) {
        /**
         * Checks the values.
         *
         * @param in bar where it went in
         * @param out bar where it came out
         * @param amps how much, over 0
         * @throws IllegalArgumentException when the bars are the same or the current is out of range
         */
        public GivenFeed {
            if (in < 1 || out < 1 || in == out) {
                throw new IllegalArgumentException(
                        "feeds in at bar " + in + " and out at bar " + out + ": name two different bars");
            }
            checkAmps(amps);
        }

        /**
         * Checks a current.
         *
         * @param amps amperes
         * @throws IllegalArgumentException when it is not over 0 or out of range, in words to stand after its name
         */
        public static void checkAmps(BigDecimal amps) {
            checkDecimals(amps);
            if (amps.signum() <= 0 || amps.compareTo(BigDecimal.valueOf(1_000_000)) > 0) {
                throw new IllegalArgumentException(
                        "is " + Visible.cut(amps.toString()) + ", but must be over 0 and at most 1000000 amperes");
            }
        }
    }

    /**
     * Checks that all that the test needs is there, and nothing else.
     *
     * @param date when they were taken
     * @param test which test
     * @param feed where current went in and out; given for the tests that are fed, and for no other
     * @param angle of slot 1's centre line, degrees; given for a growler with the armature still, and for no other
     * @param clock place of the probes, degrees; given for a growler with the armature turned, and for no other
     * @param unit of the numbers that have none of their own; needed where there are such, unless the test needs none
     * @param meter which meter, one line
     * @param temperature of the winding
     * @param readings in the order taken, with gaps and repeats
     * @param stage whether the old winding or the new one was read
     * @throws IllegalArgumentException when it is not
     */
    public ReadingSet {
        readings = List.copyOf(readings);
        angle.ifPresent(ReadingSet::checkDegrees);
        clock.ifPresent(ReadingSet::checkDegrees);
        needs("feed", feed.isPresent(), test.fed(), test);
        needs("angle", angle.isPresent(), test == TestKind.GROWLER, test);
        needs("clock", clock.isPresent(), test == TestKind.GROWLER_TURNED, test);
        unit.ifPresent(u -> checkUnit(u, test));
        meter.ifPresent(ReadingSet::checkMeter);
        if (temperature.isPresent() && temperature.get().kind() != Quantity.Kind.TEMPERATURE) {
            throw new IllegalArgumentException("temperature is \"" + temperature.get() + "\", "
                    + temperature.get().kind().words() + ", but must be a temperature");
        }
        if (readings.size() > MOST_READINGS) {
            throw new IllegalArgumentException(
                    "has " + readings.size() + " readings, but may have at most " + MOST_READINGS);
        }
        for (TakenReading r : readings) {
            checkReading(r, test, unit);
        }
    }

    /**
     * Readings of the winding as found.
     *
     * @param date when they were taken; empty where it was not noted
     * @param test which test
     * @param feed bars or brushes fed, and with what; empty for the usual
     * @param angle of slot 1's centre line, degrees; growler tests
     * @param clock where the probes were held, degrees; the turned growler test
     * @param unit of readings that have none of their own
     * @param meter what they were taken with
     * @param temperature of the winding
     * @param readings in the order taken
     */
    public ReadingSet(
            Optional<LocalDate> date,
            TestKind test,
            Optional<GivenFeed> feed,
            Optional<BigDecimal> angle,
            Optional<BigDecimal> clock,
            Optional<String> unit,
            Optional<String> meter,
            Optional<Quantity> temperature,
            List<TakenReading> readings) {
        this(date, test, feed, angle, clock, unit, meter, temperature, readings, Stage.AS_FOUND);
    }

    /**
     * {@return the same test and set-up with other readings}
     *
     * @param others in the order taken
     */
    public ReadingSet withReadings(List<TakenReading> others) {
        return new ReadingSet(date, test, feed, angle, clock, unit, meter, temperature, others, stage);
    }

    /**
     * {@return the same readings, of the other winding}
     *
     * @param when the old winding or the new one
     */
    public ReadingSet at(Stage when) {
        return new ReadingSet(date, test, feed, angle, clock, unit, meter, temperature, readings, when);
    }

    private static void needs(String key, boolean given, boolean needed, TestKind test) {
        if (given != needed) {
            throw new IllegalArgumentException(
                    needed
                            ? "a " + test.word() + " test needs " + key
                            : key + " is not used by a " + test.word() + " test");
        }
    }

    /**
     * Checks the place of slot 1 or of the probes.
     *
     * @param degrees clockwise, or the other way where below 0
     * @throws IllegalArgumentException when it is out of range, in words to stand after its name
     */
    public static void checkDegrees(BigDecimal degrees) {
        checkDecimals(degrees);
        Job.checkDegrees(degrees, MOST_DEGREES);
    }

    /** A file holds no more of them. */
    private static void checkDecimals(BigDecimal number) {
        if (number.scale() > MOST_DECIMALS) {
            throw new IllegalArgumentException(
                    "is " + Visible.cut(number.toString()) + ", but may have at most " + MOST_DECIMALS + " decimals");
        }
    }

    /**
     * Checks a unit against the test.
     *
     * @param unit as written
     * @param test whose readings have it
     * @throws IllegalArgumentException when the test is not read in it, in words to stand after its name
     */
    public static void checkUnit(String unit, TestKind test) {
        if (test.kinds().stream().noneMatch(k -> k.units().contains(unit))) {
            throw new IllegalArgumentException("is \"" + Field.shown(unit) + "\", but a " + test.word()
                    + " test is read "
                    + (test.kinds().isEmpty()
                            ? "without a unit"
                            : "in "
                                    + Quantity.Kind.plain(test.kinds().stream()
                                            .flatMap(k -> k.units().stream())
                                            .toList())));
        }
    }

    /**
     * Checks the name of a meter.
     *
     * @param meter its name
     * @throws IllegalArgumentException when it is blank, too long or no single line, in words to stand after its name
     */
    public static void checkMeter(String meter) {
        Job.checkLine(meter, "is blank: name the meter or leave the key out");
    }

    /** Checks one reading against its test and the unit that stands for all. */
    static void checkReading(TakenReading r, TestKind test, Optional<String> unit) {
        boolean shaft = r.from() == BenchTest.SHAFT || r.to() == BenchTest.SHAFT;
        if (shaft != test.toShaft()) {
            throw new IllegalArgumentException("is from " + TakenReading.name(r.from()) + " to "
                    + TakenReading.name(r.to()) + ", but a " + test.word() + " test is read "
                    + (test.toShaft() ? "from a bar to the shaft" : "between two bars"));
        }
        if (r.shown() instanceof TakenReading.Value v) {
            v.unit().ifPresent(u -> checkUnit(u, test));
            if (v.unit().isEmpty() && unit.isEmpty() && !test.unitless()) {
                throw new IllegalArgumentException("is " + v.number().toPlainString()
                        + " without a unit: give the unit of all readings beside them, such as unit: "
                        + test.kinds().get(0).units().get(0));
            }
        }
    }

    /**
     * {@return the readings with their test, in volts, amperes or ohms (or without a unit), gaps left out, infinite
     * where the meter was off its scale}
     *
     * @param growler that the armature lay on
     */
    public TestRun run(Growler growler) {
        BenchTest bench = switch (test) {
            case DROP ->
                new BenchTest.Drop(
                        feed.orElseThrow().in(),
                        feed.orElseThrow().out(),
                        feed.orElseThrow().amps().doubleValue());
            case GROWLER ->
                new BenchTest.GrowlerWalked(growler, angle.orElseThrow().doubleValue());
            case GROWLER_TURNED ->
                new BenchTest.GrowlerTurned(growler, clock.orElseThrow().doubleValue());
            case RESISTANCE -> new BenchTest.Resistance();
            case GROUND -> new BenchTest.Ground();
            case GROUND_WALK ->
                new BenchTest.GroundWalk(
                        feed.orElseThrow().in(),
                        feed.orElseThrow().out(),
                        feed.orElseThrow().amps().doubleValue());
            case POLARITY -> new BenchTest.Polarity();
        };
        return new TestRun(bench, pairReadings(readings, test, unit));
    }

    /** Readings as numbers in the base unit of their kind, gaps left out. */
    static List<PairReading> pairReadings(List<TakenReading> readings, TestKind test, Optional<String> unit) {
        List<PairReading> out = new ArrayList<>();
        for (TakenReading r : readings) {
            OptionalDouble value = number(r, test, unit);
            if (value.isPresent()) {
                out.add(new PairReading(r.from(), r.to(), value.getAsDouble()));
            }
        }
        return out;
    }

    private static OptionalDouble number(TakenReading r, TestKind test, Optional<String> unit) {
        if (r.shown() instanceof TakenReading.Value v && v.unit().isEmpty() && unit.isEmpty()) {
            return OptionalDouble.of(v.number().doubleValue());
        }
        String own = r.shown() instanceof TakenReading.Value v
                ? v.unit().or(() -> unit).orElseThrow()
                : test.kinds().isEmpty() ? "V" : test.kinds().get(0).units().get(0);
        String base = new Quantity(BigDecimal.ONE, own).kind().units().get(0);
        return r.in(base, own);
    }
}
