package coilwright.sheet;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a printable document says, apart from how it is laid out: {@link #pages} puts it on paper, {@link RecordHtml} into
 * one file for a browser.
 *
 * @param title what it is about
 * @param subtitle what kind of document it is
 * @param palette colours of its drawings
 * @param blocks in order
 */
public record Document(String title, String subtitle, Palette palette, List<Block> blocks) {
    /** Stands where a value is to be written in among facts. */
    private static final String BLANK = "_".repeat(24);

    /** Room between drawings side by side, mm. */
    private static final double GAP = 8;

    /** How high a heading is, and each line to write on under it, mm. */
    private static final double HEADING = 8;

    private static final double LINE_TO_WRITE_ON = 10;

    /**
     * Copies the list.
     *
     * @param title what it is about
     * @param subtitle what kind of document it is
     * @param palette colours of its drawings
     * @param blocks in order
     */
    public Document {
        blocks = List.copyOf(blocks);
    }

    /** {@return the document on pages of A4: upright ones with its text, then those of its annexes as they are} */
    public DrawingPages pages() {
        Sheet sheet = Sheet.titled(title, subtitle, palette);
        List<Drawing> annexes = new ArrayList<>();
        for (Block block : blocks) {
            put(block, sheet, annexes);
        }
        List<Drawing> all = new ArrayList<>(sheet.fewestPages().pages());
        all.addAll(annexes);
        return new DrawingPages(all);
    }

    private void put(Block block, Sheet sheet, List<Drawing> annexes) {
        if (block instanceof Block.Heading h) {
            sheet.heading(h.words());
        } else if (block instanceof Block.Paragraph p) {
            sheet.paragraph(p.words());
        } else if (block instanceof Block.Items i) {
            sheet.items(i.items());
        } else if (block instanceof Block.Ticks t) {
            sheet.ticks(t.items());
        } else if (block instanceof Block.Cautions c) {
            sheet.caution(c.items());
        } else if (block instanceof Block.Facts f) {
            Map<String, String> shown = new LinkedHashMap<>();
            f.facts().forEach((name, value) -> shown.put(name, value.isEmpty() ? BLANK : value));
            sheet.facts(shown);
        } else if (block instanceof Block.Grid g) {
            sheet.table(g.table());
        } else if (block instanceof Block.Blanks b) {
            sheet.fields(b.names());
        } else if (block instanceof Block.Lines l) {
            sheet.keepTogether(HEADING + l.lines() * LINE_TO_WRITE_ON);
            for (int i = 0; i < l.lines(); i++) {
                sheet.fields(List.of(""));
            }
        } else if (block instanceof Block.Pictures p) {
            sheet.drawing(SideBySide.of(p.drawings(), GAP, palette), 120);
        } else if (block instanceof Block.Annex a) {
            int n = a.pages().pages().size();
            sheet.items(List.of(a.words() + ": " + (n == 1 ? "1 page" : n + " pages") + " at the end."));
            annexes.addAll(a.pages().pages());
        } else {
            throw new IllegalStateException("no place for " + block.getClass().getSimpleName());
        }
    }
}
