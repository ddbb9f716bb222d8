package coilwright.job;

import coilwright.bench.BenchArmature;
import coilwright.bench.Point;
import coilwright.fault.Fault;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Faults as commands write them: the kind, a colon, and what it needs with commas between. */
public final class FaultText {
    private static final Map<String, String> FORMS = new LinkedHashMap<>();

    static {
        FORMS.put("open-coil", "open-coil:COIL");
        FORMS.put("shorted-coil", "shorted-coil:COIL");
        FORMS.put("shorted-turns", "shorted-turns:COIL,PERCENT");
        FORMS.put("high-resistance", "high-resistance:COIL,OHMS");
        FORMS.put("bar-short", "bar-short:BAR,BAR");
        FORMS.put("crossed-leads", "crossed-leads:BAR,BAR,top|bottom|both");
        FORMS.put("reversed-coil", "reversed-coil:COIL");
        FORMS.put("wrong-turns", "wrong-turns:COIL,PERCENT");
        FORMS.put("wrong-bar", "wrong-bar:COIL,top|bottom,BAR");
        FORMS.put("ground", "ground:BAR or ground:COIL,PERCENT");
    }

    private final String text;
    private final String kind;
    private final List<String> parts;
    private final Winding winding;

    private FaultText(String text, Winding winding) {
        this.text = text;
        this.winding = winding;
        int colon = text.indexOf(':');
        this.kind = (colon < 0 ? text : text.substring(0, colon)).strip();
        this.parts = colon < 0
                ? List.of()
                : Arrays.stream(text.substring(colon + 1).split(",", -1))
                        .map(String::strip)
                        .toList();
    }

    /** {@return the forms taken, for help} */
    public static List<String> forms() {
        return List.copyOf(FORMS.values());
    }

    /**
     * Reads a fault.
     *
     * @param text such as {@code open-coil:3} or {@code bar-short:4,5}
     * @param winding the winding
     * @return the fault
     * @throws IllegalArgumentException when it is none, or names a coil or bar that the winding has not
     */
    public static Fault parse(String text, Winding winding) {
        return new FaultText(text, winding).fault();
    }

    /**
     * Reads faults and puts them into an armature, one after the other.
     *
     * @param armature the armature as it is on the bench
     * @param faults one text each, as {@link #parse} takes it
     * @return the armature with the faults
     * @throws IllegalArgumentException as {@link #parse} does, and where a fault cannot stand beside those before it
     */
    public static BenchArmature in(BenchArmature armature, List<String> faults) {
        BenchArmature out = armature;
        for (String f : faults) {
            out = parse(f, armature.winding()).in(out);
        }
        return out;
    }

    private Fault fault() {
        return switch (kind) {
            case "open-coil" -> new Fault.OpenCoil(coil(0, 1, 1));
            case "shorted-coil" -> new Fault.ShortedCoil(coil(0, 1, 1));
            case "shorted-turns" -> new Fault.ShortedTurns(coil(0, 2, 2), share(1));
            case "high-resistance" -> new Fault.HighResistance(coil(0, 2, 2), ohms(1));
            case "bar-short" -> {
                List<Integer> pair = bars(2, 2);
                yield new Fault.BarShort(pair.get(0), pair.get(1));
            }
            case "crossed-leads" -> {
                List<Integer> pair = bars(2, 3);
                yield new Fault.CrossedLeads(
                        pair.get(0),
                        pair.get(1),
                        parts.size() < 3 ? Fault.Leads.BOTH : leads(2, List.of(Fault.Leads.values())));
            }
            case "reversed-coil" -> new Fault.ReversedCoil(coil(0, 1, 1));
            case "wrong-turns" -> new Fault.WrongTurns(coil(0, 2, 2), share(1));
            case "wrong-bar" ->
                new Fault.WrongBar(
                        coil(0, 3, 3),
                        leads(1, List.of(Fault.Leads.TOP, Fault.Leads.BOTTOM)) == Fault.Leads.TOP,
                        bar(2));
            case "ground" -> {
                count(1, 2);
                yield new Fault.Ground(
                        parts.size() == 1 ? Point.bar(bar(0)) : new Point.Inside(coil(0, 2, 2), share(1)));
            }
            default ->
                throw new IllegalArgumentException("\"" + Field.shown(kind) + "\" is no kind of fault: "
                        + NearWord.question(kind, FORMS.keySet(), "it is one of " + String.join(", ", FORMS.keySet())));
        };
    }

    private IllegalArgumentException wrong(String why) {
        return new IllegalArgumentException("fault \"" + Field.shown(text) + "\" " + why);
    }

    private void count(int least, int most) {
        if (parts.size() < least || parts.size() > most) {
            throw wrong("is not of the form " + FORMS.get(kind));
        }
    }

    private int number(int part) {
        if (!parts.get(part).matches("[0-9]{1,9}")) {
            throw wrong("has \"" + Field.shown(parts.get(part)) + "\" where a whole number should stand: the form is "
                    + FORMS.get(kind));
        }
        return Integer.parseInt(parts.get(part));
    }

    private int coil(int part, int least, int most) {
        count(least, most);
        int number = number(part);
        if (!winding.hasCoil(number)) {
            throw wrong("names coil " + number + ", but coils run from "
                    + winding.coils().get(0).number() + " to "
                    + winding.coils().get(winding.coils().size() - 1).number());
        }
        if (!winding.coil(number).isLive()) {
            throw wrong("names coil " + number + ", which has not both leads on bars");
        }
        return number;
    }

    private int bar(int part) {
        int number = number(part);
        int most = winding.armature().bars();
        if (number < 1 || number > most) {
            throw wrong("names bar " + number + ", but bars run from 1 to " + most);
        }
        return number;
    }

    private List<Integer> bars(int least, int most) {
        count(least, most);
        List<Integer> out = new ArrayList<>(List.of(bar(0), bar(1)));
        if (out.get(0).equals(out.get(1))) {
            throw wrong("names bar " + out.get(0) + " twice: name two bars");
        }
        return out;
    }

    private double share(int part) {
        String written = parts.get(part);
        if (!written.matches("[0-9]{1,4}(\\.[0-9]{1,6})? ?%")) {
            throw wrong("has \"" + Field.shown(written) + "\" where a share such as 50% should stand");
        }
        double share = Double.parseDouble(written.replace("%", "").strip()) / 100;
        if (!(share > 0) || (!kind.equals("wrong-turns") && share >= 1)) {
            throw wrong("has " + written + ", but it must be over 0%"
                    + (kind.equals("wrong-turns") ? "" : " and under 100%"));
        }
        return share;
    }

    private double ohms(int part) {
        double ohms;
        try {
            ohms = Quantity.parse(parts.get(part), Quantity.Kind.RESISTANCE).in("ohm");
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("fault \"" + Field.shown(text) + "\": " + e.getMessage(), e);
        }
        if (!(ohms > 0)) {
            throw wrong("adds " + parts.get(part) + ", but a bad joint adds more than 0");
        }
        return ohms;
    }

    private Fault.Leads leads(int part, List<Fault.Leads> taken) {
        return taken.stream()
                .filter(l -> l.word().equals(parts.get(part)))
                .findFirst()
                .orElseThrow(() -> wrong("has \"" + Field.shown(parts.get(part)) + "\" where one of "
                        + String.join(
                                ", ", taken.stream().map(Fault.Leads::word).toList()) + " should stand"));
    }
}
