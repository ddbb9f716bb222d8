package coilwright.sheet;

import coilwright.drawing.Drawing;
import coilwright.drawing.SvgWriter;
import java.util.regex.Pattern;

/**
 * A drawing that stands in a page: without prologue and style sheet, with ids of its own.
 *
 * @param svg the element
 * @param style the style sheet, the same for every drawing of a palette
 * @param width of the drawing, mm
 * @param height of the drawing, mm
 */
record BenchPageDrawing(String svg, String style, double width, double height) {
    private static final String STYLE_START = "<style type=\"text/css\">";
    private static final String STYLE_END = "</style>\n";

    // Words of a drawing never hold a line feed, so that none of them can begin a line as these do.
    private static final Pattern ID = Pattern.compile("^<(g|title|desc) id=\"", Pattern.MULTILINE);
    private static final Pattern SIZE = Pattern.compile(" width=\"[^\"]*\" height=\"[^\"]*\"");

    /**
     * Takes a drawing into a page.
     *
     * @param prefix before every id in it
     */
    static BenchPageDrawing of(Drawing drawing, String prefix) {
        String all = SvgWriter.write(drawing);
        int start = all.indexOf(STYLE_START);
        int end = all.indexOf(STYLE_END, start);
        String head = all.substring(all.indexOf("<svg"), start);
        String svg = SIZE.matcher(head)
                        .replaceFirst("")
                        .replaceFirst(" xmlns=\"[^\"]*\"", "")
                        .replaceFirst(
                                "aria-labelledby=\"title desc\"",
                                "aria-labelledby=\"" + prefix + "title " + prefix + "desc\"")
                + all.substring(end + STYLE_END.length());
        String style = all.substring(start + STYLE_START.length(), end)
                .replace("&gt;", ">")
                .replace("&lt;", "<")
                .replace("&amp;", "&");
        return new BenchPageDrawing(
                ID.matcher(svg).replaceAll("<$1 id=\"" + prefix), style, drawing.width(), drawing.height());
    }
}
