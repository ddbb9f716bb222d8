package coilwright.desktop;

import coilwright.drawing.DrawingPages;
import coilwright.drawing.Palette;
import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.rewind.WindingWay;
import coilwright.sheet.SheetKind;
import coilwright.winding.ImpossibleWindingException;
import java.awt.BorderLayout;
import java.awt.Component;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.BorderFactory;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.Timer;

/** The sheets of the job, page by page, before they are printed or saved. */
final class SheetPanel extends JPanel {
    private static final long serialVersionUID = 1L;

    /** After the last change of the job, ms. */
    private static final int WAIT = 500;

    private final transient MainWindow window;
    private final transient Background worker;
    private final JComboBox<SheetKind> kind = new JComboBox<>(SheetKind.values());
    private final JComboBox<WindingWay> way = new JComboBox<>(WindingWay.values());
    private final JLabel wayLabel = Ui.label("Wo&und", way);
    private final JButton back = Ui.named(new JButton(), "◀");
    private final JButton on = Ui.named(new JButton(), "▶");
    private final JLabel number = new JLabel(" ");
    private final Wrapped words = new Wrapped(500);
    private final DrawingPane pane = new DrawingPane("sheet");
    private final Timer later = new Timer(WAIT, e -> refresh());
    private transient Optional<Made> made = Optional.empty();
    private int page;
    private boolean wide;

    /**
     * An answer to what was asked for.
     *
     * @param of which sheet
     * @param pages empty where it cannot be made
     * @param why it cannot
     */
    private record Made(Asked of, Optional<DrawingPages> pages, String why) {}

    /** What decides what a sheet looks like. */
    private record Asked(JobText text, SheetKind kind, WindingWay way, Palette palette) {}

    SheetPanel(MainWindow window, Consumer<Throwable> trouble) {
        super(new BorderLayout());
        this.window = window;
        this.worker = new Background("sheet", e -> {
            words.setText("✗ This sheet cannot be made");
            trouble.accept(e);
        });
        later.setRepeats(false);
        var bar = new JPanel(new Rows());
        kind.setName("sheet kind");
        kind.setRenderer(renderer(SheetKind::title));
        kind.addActionListener(e -> {
            page = 0;
            refresh();
        });
        way.setName("sheet way");
        way.setRenderer(renderer(WindingWay::words));
        way.addActionListener(e -> {
            page = 0;
            refresh();
        });
        bar.add(Ui.label("Sh&eet", kind));
        bar.add(kind);
        bar.add(wayLabel);
        bar.add(way);
        bar.add(tool(back, "page back", "The page before (Page Up)", () -> turn(page - 1)));
        number.setName("page");
        bar.add(number);
        bar.add(tool(on, "page on", "The next page (Page Down)", () -> turn(page + 1)));
        bar.add(tool(new JButton("−"), "sheet smaller", "Zoom out", () -> zoom(pane::zoomOut)));
        bar.add(tool(new JButton("+"), "sheet larger", "Zoom in", () -> zoom(pane::zoomIn)));
        bar.add(tool(new JButton("Page"), "sheet page", "Show the whole page", () -> {
            wide = false;
            pane.fit();
        }));
        bar.add(tool(new JButton("Width"), "sheet width", "Show the page at its full width", () -> {
            wide = true;
            pane.fitWidth();
        }));
        bar.add(tool(Ui.named(new JButton(), "Save &as…"), "sheet save", "Save all pages (Ctrl+E)", window::export));
        bar.add(tool(Ui.named(new JButton(), "Prin&t…"), "sheet print", "Print all pages (Ctrl+P)", window::print));
        var top = new JPanel(new BorderLayout());
        top.add(bar, BorderLayout.NORTH);
        var said = new JPanel(new BorderLayout());
        said.setBorder(BorderFactory.createEmptyBorder(0, 10, 6, 10));
        words.setName("sheet words");
        said.add(words);
        top.add(said);
        add(top, BorderLayout.NORTH);
        add(pane);
        Ui.key(this, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, "PAGE_UP", () -> turn(page - 1));
        Ui.key(this, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, "PAGE_DOWN", () -> turn(page + 1));
        window.document().onChange(() -> {
            if (isShowing()) {
                later.restart();
            }
        });
    }

    /** Shows things of a list by their names. */
    static <T> DefaultListCellRenderer renderer(Function<T, String> name) {
        return new DefaultListCellRenderer() {
            private static final long serialVersionUID = 1L;

            @Override
            @SuppressWarnings("unchecked")
            public Component getListCellRendererComponent(
                    JList<?> list, Object value, int index, boolean selected, boolean focused) {
                return super.getListCellRendererComponent(
                        list, Ui.capital(name.apply((T) value)), index, selected, focused);
            }
        };
    }

    private static JButton tool(JButton button, String name, String tip, Runnable run) {
        button.setName(name);
        button.putClientProperty("JButton.buttonType", "toolBarButton");
        button.setToolTipText(tip);
        button.getAccessibleContext().setAccessibleName(tip);
        button.addActionListener(e -> run.run());
        return button;
    }

    private void zoom(Runnable how) {
        wide = false;
        how.run();
    }

    DrawingPane pane() {
        return pane;
    }

    SheetKind kind() {
        return (SheetKind) kind.getSelectedItem();
    }

    /** Shows a kind of sheet. */
    void choose(SheetKind wanted) {
        kind.setSelectedItem(wanted);
    }

    /** The pages of what is asked for; empty while there are none. */
    Optional<DrawingPages> pages() {
        return made.filter(m -> m.of().equals(asked())).flatMap(Made::pages);
    }

    private Optional<DrawingPages> shown() {
        return made.flatMap(Made::pages);
    }

    private Asked asked() {
        return new Asked(
                window.document().text(),
                kind(),
                (WindingWay) way.getSelectedItem(),
                window.winding().grey() ? Palette.MONOCHROME : Palette.COLOUR);
    }

    /** Makes the sheet when the part comes into sight, if it is not there yet. */
    void begin() {
        refresh();
        pane.requestFocusInWindow();
    }

    /** Makes the sheet again where anything has changed that it shows. */
    void refresh() {
        if (!isShowing()) {
            return;
        }
        boolean order = kind() == SheetKind.ORDER;
        way.setVisible(order);
        wayLabel.setVisible(order);
        Asked asked = asked();
        Optional<Made> same = made.filter(m -> m.of().equals(asked));
        if (same.isPresent()) {
            worker.cancel();
            tell(same.get());
            return;
        }
        words.setText("The sheet is being made …");
        worker.replace(() -> make(asked), this::show);
    }

    private static Made make(Asked asked) {
        Optional<Job> job = asked.text().job();
        if (job.isEmpty()) {
            return new Made(asked, Optional.empty(), "First mend the job: a field is not right yet.");
        }
        try {
            return new Made(asked, Optional.of(asked.kind().pages(job.get(), asked.way(), asked.palette())), "");
        } catch (ImpossibleWindingException e) {
            return new Made(
                    asked,
                    Optional.empty(),
                    "First mend the winding: " + e.findings().get(0).message());
        } catch (IllegalArgumentException e) {
            return new Made(asked, Optional.empty(), "This sheet cannot be made: " + e.getMessage());
        }
    }

    private void show(Made next) {
        made = Optional.of(next);
        tell(next);
        turn(Math.min(page, Math.max(0, pageCount() - 1)));
    }

    private void tell(Made next) {
        words.setText(next.why().isEmpty() ? Ui.capital(next.of().kind().words()) + "." : "✗ " + next.why());
    }

    private int pageCount() {
        return shown().map(p -> p.pages().size()).orElse(0);
    }

    private void turn(int to) {
        int count = pageCount();
        if (count > 0 && (to < 0 || to >= count)) {
            return;
        }
        page = to;
        back.setEnabled(page > 0);
        on.setEnabled(page + 1 < count);
        number.setText(count == 0 ? "No page" : "Page " + (page + 1) + " of " + count);
        repaintPage();
        if (wide) {
            pane.fitWidth();
        }
        if (count > 0) {
            window.say(number.getText());
        }
    }

    /** Shows the page again, in the colours of the window. */
    void repaintPage() {
        Tones tones = Ui.tones();
        int at = page;
        pane.show(shown().map(p -> new Scene(p.pages().get(at), tones)));
    }
}
