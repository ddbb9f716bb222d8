package coilwright.rewind;

import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** How the coils come into the slots. Common practice. */
public enum WindingWay {
    /** Coils formed beforehand are put in slot after slot, in true layers. */
    FORMED_COILS("formed coils"),
    /** Wire is wound straight into the slots, one coil after another in order round the core. */
    COIL_BY_COIL("by hand, coil by coil"),
    /** Wire is wound straight into the slots, each coil followed by the one opposite to it; two poles only. */
    OPPOSITE_PAIRS("by hand, in opposite pairs");

    private final String words;

    WindingWay(String words) {
        this.words = words;
    }

    /** {@return the short word for it, as in {@code formed-coils}} */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@return what it is, in words} */
    public String words() {
        return words;
    }

    /** {@return whether wire is wound straight into the slots} */
    public boolean byHand() {
        return this != FORMED_COILS;
    }

    /**
     * {@return the way of a short word}
     *
     * @param word one of those that {@code --way} takes
     * @throws IllegalArgumentException when there is none, naming those there are
     */
    public static WindingWay named(String word) {
        return Arrays.stream(values())
                .filter(w -> w.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no way of winding \"" + word
                        + "\": choose one of "
                        + Arrays.stream(values()).map(WindingWay::word).collect(Collectors.joining(", "))));
    }

    /**
     * {@return why a winding is not wound this way, with the way out; empty where it can be}
     *
     * @param winding the winding
     */
    public Optional<String> refusal(Winding winding) {
        if (byHand() && winding.type() == WindingType.FROG_LEG) {
            return Optional.of("a frog-leg winding has four layers and is put in as formed coils, not wound by hand:"
                    + " choose formed-coils");
        }
        if (this == OPPOSITE_PAIRS) {
            int poles = winding.armature().poles();
            int slots = winding.armature().slots();
            if (poles != 2) {
                return Optional.of("with " + poles + " poles the coils span less than half the core, and opposite pairs"
                        + " suit two poles only: choose coil-by-coil or formed-coils");
            }
            if (slots < 4) {
                return Optional.of(
                        "with " + slots + " slots no two coils lie opposite each other: choose coil-by-coil");
            }
        }
        return Optional.empty();
    }
}
