package coilwright.desktop;

import coilwright.circuit.Brush;
import coilwright.circuit.BrushGear;
import coilwright.circuit.CurrentPath;
import coilwright.drawing.Element;
import coilwright.winding.Coil;
import coilwright.winding.Winding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** What is joined to what in one winding, for lighting it up and for saying so. */
final class Ties {
    private final Winding winding;
    private final Map<Integer, CurrentPath> pathOfCoil = new LinkedHashMap<>();
    private final Map<Integer, Brush> brushOfBar = new LinkedHashMap<>();
    private final Set<Integer> shorted = new LinkedHashSet<>();
    private final int paths;

    /**
     * All that belongs to one thing.
     *
     * @param of the thing
     * @param lit it and what touches it
     * @param along the coils of the parallel path it lies in
     * @param words all that in words
     */
    record Tied(Element of, Set<Element> lit, Set<Element> along, String words) {}

    Ties(Winding winding) {
        this.winding = winding;
        Optional<BrushGear> gear = gear(winding);
        paths = gear.map(g -> g.paths().size()).orElse(0);
        gear.ifPresent(g -> {
            g.paths()
                    .forEach(p -> p.steps().forEach(s -> pathOfCoil.put(s.coil().number(), p)));
            g.brushes().forEach(b -> b.bars().forEach(bar -> brushOfBar.putIfAbsent(bar, b)));
            g.shorted().forEach(c -> shorted.add(c.number()));
        });
    }

    /** The brushes with slot 1 under pole 1; empty where no path can be traced. */
    private static Optional<BrushGear> gear(Winding winding) {
        try {
            return Optional.of(BrushGear.at(winding, 0, BrushGear.leastWidth(winding)));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    Winding winding() {
        return winding;
    }

    /** Number of the parallel path that a coil lies in; empty where it lies in none. */
    OptionalInt path(int coil) {
        return pathOfCoil.containsKey(coil)
                ? OptionalInt.of(pathOfCoil.get(coil).number())
                : OptionalInt.empty();
    }

    /** Whether the winding has the thing. */
    boolean has(Element e) {
        return switch (e.kind()) {
            case COIL -> winding.hasCoil(e.number());
            case BAR -> e.number() >= 1 && e.number() <= winding.armature().bars();
            case SLOT -> e.number() >= 1 && e.number() <= winding.armature().slots();
            default -> false;
        };
    }

    Tied of(Element e) {
        return switch (e.kind()) {
            case COIL -> ofCoil(winding.coil(e.number()));
            case BAR -> ofBar(e.number());
            case SLOT -> ofSlot(e.number());
            case BRUSH -> ofBrush(e);
            default -> new Tied(e, Set.of(e), Set.of(), Ui.capital(e.kind().word()) + " " + e.number());
        };
    }

    private Tied ofCoil(Coil c) {
        Set<Element> lit = new LinkedHashSet<>();
        lit.add(Element.coil(c.number()));
        light(lit, c);
        StringBuilder words = new StringBuilder("Coil " + c.number() + ": top side in slot "
                + c.top().slot() + ", bottom side in slot " + c.bottom().slot());
        if (c.isDead()) {
            words.append("; dead, both leads cut off");
        } else {
            words.append("; top lead on ")
                    .append(lead(c.topBar()))
                    .append(", bottom lead on ")
                    .append(lead(c.bottomBar()));
        }
        Set<Element> along = new LinkedHashSet<>();
        Optional.ofNullable(pathOfCoil.get(c.number())).ifPresent(p -> {
            p.steps().forEach(s -> along.add(Element.coil(s.coil().number())));
            words.append("; in path ").append(p.number()).append(" of ").append(paths);
            words.append(", brush ").append(p.fromBrush()).append(" to brush ").append(p.toBrush());
        });
        if (shorted.contains(c.number())) {
            words.append("; shorted by a brush with slot 1 under pole 1");
        }
        return new Tied(Element.coil(c.number()), lit, along, words.append('.').toString());
    }

    private static String lead(OptionalInt bar) {
        return bar.isPresent() ? "bar " + bar.getAsInt() : "no bar";
    }

    private static void light(Set<Element> lit, Coil c) {
        c.topBar().ifPresent(b -> lit.add(Element.bar(b)));
        c.bottomBar().ifPresent(b -> lit.add(Element.bar(b)));
        lit.add(Element.slot(c.top().slot()));
        lit.add(Element.slot(c.bottom().slot()));
    }

    private Tied ofBar(int bar) {
        Set<Element> lit = new LinkedHashSet<>();
        lit.add(Element.bar(bar));
        List<String> tops = new ArrayList<>();
        List<String> bottoms = new ArrayList<>();
        Set<Element> along = new LinkedHashSet<>();
        Set<Integer> through = new LinkedHashSet<>();
        for (Coil c : winding.coils()) {
            if (!c.touches(bar)) {
                continue;
            }
            lit.add(Element.coil(c.number()));
            light(lit, c);
            (c.topBar().orElse(0) == bar ? tops : bottoms).add(Integer.toString(c.number()));
            path(c.number()).ifPresent(through::add);
        }
        StringBuilder words = new StringBuilder("Bar " + bar + ": ");
        if (tops.isEmpty() && bottoms.isEmpty()) {
            words.append("no lead lands on it");
        } else {
            words.append(leads("top", tops))
                    .append(tops.isEmpty() || bottoms.isEmpty() ? "" : ", ")
                    .append(leads("bottom", bottoms));
        }
        along(through, along, words);
        Optional.ofNullable(brushOfBar.get(bar))
                .ifPresent(b -> words.append("; under brush ")
                        .append(b.number())
                        .append(b.positive() ? " (+)" : " (−)")
                        .append(" with slot 1 under pole 1"));
        return new Tied(Element.bar(bar), lit, along, words.append('.').toString());
    }

    private void along(Set<Integer> through, Set<Element> along, StringBuilder words) {
        if (through.isEmpty()) {
            return;
        }
        pathOfCoil.forEach((coil, p) -> {
            if (through.contains(p.number())) {
                along.add(Element.coil(coil));
            }
        });
        words.append(through.size() == 1 ? "; path " : "; paths ")
                .append(String.join(
                        " and ", through.stream().map(String::valueOf).toList()))
                .append(" of ")
                .append(paths);
    }

    private static String leads(String which, List<String> coils) {
        return coils.isEmpty()
                ? ""
                : which + (coils.size() == 1 ? " lead of coil " : " leads of coils ") + String.join(", ", coils);
    }

    private Tied ofSlot(int slot) {
        Set<Element> lit = new LinkedHashSet<>();
        lit.add(Element.slot(slot));
        List<String> tops = new ArrayList<>();
        List<String> bottoms = new ArrayList<>();
        for (Coil c : winding.coils()) {
            if (!c.lies(slot)) {
                continue;
            }
            lit.add(Element.coil(c.number()));
            light(lit, c);
            if (c.top().slot() == slot) {
                tops.add(Integer.toString(c.number()));
            }
            if (c.bottom().slot() == slot) {
                bottoms.add(Integer.toString(c.number()));
            }
        }
        String words = "Slot " + slot + ": "
                + (tops.isEmpty() && bottoms.isEmpty() ? "empty" : sides("top", tops))
                + (tops.isEmpty() || bottoms.isEmpty() ? "" : ", ") + sides("bottom", bottoms) + ".";
        return new Tied(Element.slot(slot), lit, Set.of(), words);
    }

    private static String sides(String which, List<String> coils) {
        return coils.isEmpty()
                ? ""
                : which + (coils.size() == 1 ? " side of coil " : " sides of coils ") + String.join(", ", coils);
    }

    private Tied ofBrush(Element e) {
        Set<Element> lit = new LinkedHashSet<>();
        lit.add(e);
        List<String> bars = new ArrayList<>();
        brushOfBar.forEach((bar, b) -> {
            if (b.number() == e.number()) {
                lit.add(Element.bar(bar));
                bars.add(Integer.toString(bar));
            }
        });
        return new Tied(
                e,
                lit,
                Set.of(),
                "Brush " + e.number()
                        + (bars.isEmpty()
                                ? ""
                                : (bars.size() == 1 ? ": on bar " : ": on bars ") + String.join(", ", bars)
                                        + " with slot 1 under pole 1")
                        + ".");
    }
}
