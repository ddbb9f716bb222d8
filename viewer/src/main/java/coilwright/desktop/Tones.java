package coilwright.desktop;

import java.awt.Color;

/** The colours of a drawing on the screen: as printed, or with light and dark exchanged, hue by hue. */
enum Tones {
    /** On white, as printed. */
    LIGHT {
        @Override
        Color of(int rgb) {
            return new Color(rgb);
        }
    },
    /** On near black. */
    DARK {
        @Override
        Color of(int rgb) {
            int r = rgb >> 16 & 0xff;
            int g = rgb >> 8 & 0xff;
            int b = rgb & 0xff;
            int shift = 255 - Math.max(r, Math.max(g, b)) - Math.min(r, Math.min(g, b));
            return new Color(lift(r + shift), lift(g + shift), lift(b + shift));
        }

        /** Black would hide the edge of the page, and the darkest fills on it. */
        private int lift(int value) {
            return 30 + value * 225 / 255;
        }
    };

    abstract Color of(int rgb);
}
