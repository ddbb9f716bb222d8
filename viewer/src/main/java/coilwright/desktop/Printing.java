package coilwright.desktop;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.image.BufferedImage;
import java.awt.print.Book;
import java.awt.print.PageFormat;
import java.awt.print.Paper;
import java.awt.print.Printable;
import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.util.concurrent.Callable;

/** Drawings on paper and on the clipboard. */
final class Printing {
    /** Points a millimetre. */
    private static final double POINTS = 72 / 25.4;

    private static final double MOST_PIXELS = 16_000_000;
    private static final double USUAL_DOTS = 6;

    private Printing() {}

    /** A picture on the clipboard. */
    record Picture(Image image) implements Transferable {
        @Override
        public DataFlavor[] getTransferDataFlavors() {
            return new DataFlavor[] {DataFlavor.imageFlavor};
        }

        @Override
        public boolean isDataFlavorSupported(DataFlavor flavor) {
            return flavor.equals(DataFlavor.imageFlavor);
        }

        @Override
        public Object getTransferData(DataFlavor flavor) throws UnsupportedFlavorException {
            if (!isDataFlavorSupported(flavor)) {
                throw new UnsupportedFlavorException(flavor);
            }
            return image;
        }
    }

    /** The drawing as a picture on white, at about 150 dots an inch. */
    static BufferedImage picture(Drawing drawing) {
        double area = drawing.width() * drawing.height();
        double dots = Math.min(USUAL_DOTS, Math.max(0.5, MOST_PIXELS / area / USUAL_DOTS));
        BufferedImage image = new BufferedImage(
                (int) (drawing.width() * dots), (int) (drawing.height() * dots), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.scale(dots, dots);
        new Scene(drawing, Tones.LIGHT).paint(g, dots, () -> false);
        g.dispose();
        return image;
    }

    static void print(MainWindow window, String title, Callable<DrawingPages> pages) {
        PrinterJob job = PrinterJob.getPrinterJob();
        if (job.getPrintService() == null) {
            window.say("There is no printer here: save the drawing as PDF instead (Ctrl+E)");
            return;
        }
        job.setJobName(title);
        if (!job.printDialog()) {
            return;
        }
        window.busy(
                "Printing",
                () -> {
                    DrawingPages all = pages.call();
                    Book book = new Book();
                    for (Drawing page : all.pages()) {
                        book.append(printable(page), format(job, page));
                    }
                    job.setPageable(book);
                    try {
                        job.print();
                    } catch (PrinterException e) {
                        throw new IllegalArgumentException("Not printed: " + e.getMessage(), e);
                    }
                    return all.pages().size();
                },
                n -> window.say(n == 1 ? "Printed 1 page" : "Printed " + n + " pages"));
    }

    private static PageFormat format(PrinterJob job, Drawing page) {
        PageFormat format = job.defaultPage();
        boolean wide = page.width() > page.height();
        format.setOrientation(wide ? PageFormat.LANDSCAPE : PageFormat.PORTRAIT);
        Paper paper = new Paper();
        double w = page.width() * POINTS;
        double h = page.height() * POINTS;
        paper.setSize(wide ? h : w, wide ? w : h);
        paper.setImageableArea(0, 0, paper.getWidth(), paper.getHeight());
        format.setPaper(paper);
        return format;
    }

    private static Printable printable(Drawing page) {
        Scene scene = new Scene(page, Tones.LIGHT);
        return (graphics, format, index) -> {
            Graphics2D g = (Graphics2D) graphics;
            g.scale(POINTS, POINTS);
            scene.paint(g, 12, () -> false);
            return Printable.PAGE_EXISTS;
        };
    }
}
