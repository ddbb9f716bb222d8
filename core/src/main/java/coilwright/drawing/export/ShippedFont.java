package coilwright.drawing.export;

import coilwright.drawing.Drawing;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.TextAttribute;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.AttributedCharacterIterator;
import java.util.Map;
import org.apache.batik.bridge.FontFace;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.gvt.font.AWTGVTFont;
import org.apache.batik.gvt.font.GVTFont;
import org.apache.batik.gvt.font.GVTFontFace;
import org.apache.batik.gvt.font.GVTFontFamily;

/** DejaVu Sans as shipped, for every family a drawing asks for, whatever fonts the platform has. */
final class ShippedFont implements FontFamilyResolver, GVTFontFamily {
    static final String FAMILY = "DejaVu Sans";
    static final ShippedFont INSTANCE = new ShippedFont();

    private final Font regular = load("DejaVuSans.ttf");
    private final Font bold = load("DejaVuSans-Bold.ttf");
    private final GVTFontFace face = new GVTFontFace(FAMILY);

    private ShippedFont() {}

    static InputStream open(String file) {
        InputStream in = Drawing.class.getResourceAsStream("fonts/" + file);
        if (in == null) {
            throw new IllegalStateException("font file " + file + " is missing from the program: install it again");
        }
        return in;
    }

    private static Font load(String file) {
        try (InputStream in = open(file)) {
            return Font.createFont(Font.TRUETYPE_FONT, in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("font file " + file + " is damaged: install the program again", e);
        }
    }

    @Override
    public GVTFontFamily resolve(String familyName) {
        return this;
    }

    @Override
    public GVTFontFamily resolve(String familyName, FontFace fontFace) {
        return this;
    }

    @Override
    public GVTFontFamily loadFont(InputStream in, FontFace fontFace) {
        return this;
    }

    @Override
    public GVTFontFamily getDefault() {
        return this;
    }

    @Override
    public GVTFontFamily getFamilyThatCanDisplay(char c) {
        return this;
    }

    @Override
    public String getFamilyName() {
        return FAMILY;
    }

    @Override
    public GVTFontFace getFontFace() {
        return face;
    }

    @Override
    public GVTFont deriveFont(float size, AttributedCharacterIterator text) {
        return deriveFont(size, text.getAttributes());
    }

    @Override
    @SuppressWarnings("rawtypes")
    public GVTFont deriveFont(float size, Map attributes) {
        Object weight = attributes.get(TextAttribute.WEIGHT);
        boolean heavy = weight instanceof Number n && n.floatValue() > TextAttribute.WEIGHT_MEDIUM;
        return new AWTGVTFont(heavy ? bold : regular, size);
    }

    @Override
    public boolean isComplex() {
        return false;
    }
}
