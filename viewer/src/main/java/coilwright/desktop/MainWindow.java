package coilwright.desktop;

import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.PageFormat;
import coilwright.file.SafeFiles;
import coilwright.job.Job;
import coilwright.job.JobText;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.WindingSpec;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.ButtonGroup;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JFileChooser;
import javax.swing.JFrame;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JOptionPane;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.JTabbedPane;
import javax.swing.filechooser.FileNameExtensionFilter;

/** The window: menu, the parts as tabs, and a line that says in words what is lit up. */
final class MainWindow {
    static final String NO_FILE = "New job";

    private final Settings settings;
    private final JobDocument document;
    private final JFrame frame = new JFrame();
    private final StatusBar status = new StatusBar();
    private final JTabbedPane tabs = new JTabbedPane();
    private final WindingPanel winding;
    private final LatePart<BenchPanel> bench;
    private final LatePart<ComparePanel> compare;
    private final LatePart<SheetPanel> sheets;
    private final LatePart<OrderPanel> order;
    private final LatePart<TracePanel> trace;
    private final JobFiles files;
    private final JMenu recent = Ui.named(new JMenu(), "Open &recent");
    private final CountDownLatch closed = new CountDownLatch(1);
    private Action undo;
    private Action redo;

    MainWindow(Settings settings, Optional<Path> file, JobText text) {
        this.settings = settings;
        this.document = new JobDocument(file, text);
        this.files = new JobFiles(this, settings, document, status::notSaved);
        this.winding = new WindingPanel(document, this::say, status::trouble);
        bench = new LatePart<>(() -> new BenchPanel(winding, document, this::say, files::save, status::trouble));
        compare = new LatePart<>(() -> new ComparePanel(winding, this::say, status::trouble));
        sheets = new LatePart<>(() -> new SheetPanel(this, status::trouble));
        order = new LatePart<>(() -> new OrderPanel(this, status::trouble));
        trace = new LatePart<>(() -> new TracePanel(this, status::trouble));
        frame.setName("main");
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                files.close();
            }

            @Override
            public void windowActivated(WindowEvent e) {
                files.lookAgain();
            }

            @Override
            public void windowClosed(WindowEvent e) {
                closed.countDown();
            }
        });
        tabs.addTab("Winding", winding);
        tabs.addTab("Bench", bench.place());
        tabs.addTab("Compare", compare.place());
        tabs.addTab("Sheets", sheets.place());
        tabs.addTab("Order of work", order.place());
        tabs.addTab("Commutator", trace.place());
        tabs.addChangeListener(e -> {
            if (tabs.getSelectedComponent() == bench.place()) {
                bench().fillIfShown();
            } else if (tabs.getSelectedComponent() == compare.place()) {
                compare();
            } else if (tabs.getSelectedComponent() == sheets.place()) {
                sheets().begin();
            } else if (tabs.getSelectedComponent() == order.place()) {
                order().begin();
            } else if (tabs.getSelectedComponent() == trace.place()) {
                trace().begin();
            }
        });
        tabs.getAccessibleContext().setAccessibleName("Parts");
        frame.add(tabs);
        frame.add(status, BorderLayout.SOUTH);
        frame.setJMenuBar(menu());
        document.onChange(this::showTitle);
        showTitle();
        frame.setIconImages(Icon.images());
        frame.setMinimumSize(new Dimension(640, 400));
        Dimension screen = Toolkit.getDefaultToolkit().getScreenSize();
        frame.setSize(Math.min(Ui.px(1280), screen.width), Math.min(Ui.px(800), screen.height));
        frame.setLocationRelativeTo(null);
    }

    static JobText newJob() {
        return JobText.of(
                NO_FILE, Job.of("New armature", Armature.of(12, 12, 2), WindingSpec.lap(1, Direction.PROGRESSIVE)));
    }

    JFrame frame() {
        return frame;
    }

    WindingPanel winding() {
        return winding;
    }

    JobDocument document() {
        return document;
    }

    /** The part for readings. */
    BenchPanel bench() {
        return bench.get();
    }

    /** The part that compares. */
    ComparePanel compare() {
        return compare.get();
    }

    /** The part that shows the sheets. */
    SheetPanel sheets() {
        return sheets.get();
    }

    /** The part that leads through the winding work. */
    OrderPanel order() {
        return order.get();
    }

    /** The part for the run-out of the commutator. */
    TracePanel trace() {
        return trace.get();
    }

    JobFiles files() {
        return files;
    }

    void save(Runnable then) {
        files.save(then);
    }

    void say(String words) {
        status.say(words);
    }

    /** Works something out after what was asked before, with a bar to show it and a button to give it up. */
    <T> void busy(String what, Callable<T> work, Consumer<T> then) {
        status.busy(what, work, then);
    }

    /** Opens a job in place of any other that is being opened. */
    <T> void opening(Path path, Callable<T> work, Consumer<T> then) {
        status.opening("Opening " + path.getFileName(), work, then);
    }

    /** Comes back when the window is closed. */
    void await() throws InterruptedException {
        closed.await();
    }

    void open() {
        frame.setVisible(true);
        winding.begin();
        document.file().ifPresent(files::noteOpened);
        files.offerRecovery();
    }

    private JMenuBar menu() {
        var bar = new JMenuBar();
        JMenu file = Ui.named(new JMenu(), "&File");
        file.add(Ui.action("&New", "ctrl N", files::newFile));
        file.add(Ui.action("&Open…", "ctrl O", files::chooseFile));
        file.add(recent);
        file.addSeparator();
        file.add(Ui.action("&Save", "ctrl S", () -> files.save(() -> {})));
        file.add(Ui.action("Save &as…", "ctrl shift S", () -> files.saveAs(() -> {})));
        file.addSeparator();
        file.add(Ui.action("Save &drawing or sheet as…", "ctrl E", this::export));
        file.add(Ui.action("&Print drawing or sheet…", "ctrl P", this::print));
        file.addSeparator();
        file.add(Ui.action("&Close", "ctrl W", files::close));
        bar.add(file);
        JMenu edit = Ui.named(new JMenu(), "&Edit");
        undo = Ui.action("&Undo", "ctrl Z", () -> {
            document.undo();
            say("");
        });
        redo = Ui.action("&Redo", "ctrl Y", document::redo);
        edit.add(undo);
        edit.add(redo);
        edit.addSeparator();
        edit.add(Ui.action("Copy &drawing", "ctrl shift C", this::copyDrawing));
        edit.add(Ui.action("Copy &table", "", this::copyTable));
        edit.addSeparator();
        edit.add(Ui.action("&Find…", "ctrl F", () -> {
            tabs.setSelectedComponent(winding);
            winding.findField().requestFocusInWindow();
            winding.findField().selectAll();
        }));
        bar.add(edit);
        bar.add(viewMenu());
        JMenu atBench = Ui.named(new JMenu(), "&Bench");
        atBench.add(Ui.action("&Winding", "F2", () -> tabs.setSelectedComponent(winding)));
        atBench.add(Ui.action("&Bench", "F3", () -> {
            tabs.setSelectedComponent(bench.place());
            bench().focus();
        }));
        atBench.add(Ui.action("&Compare", "F4", () -> tabs.setSelectedComponent(compare.place())));
        atBench.add(Ui.action("&Sheets", "F5", () -> tabs.setSelectedComponent(sheets.place())));
        atBench.add(Ui.action("&Order of work", "F6", () -> tabs.setSelectedComponent(order.place())));
        atBench.add(Ui.action("Co&mmutator", "F7", () -> tabs.setSelectedComponent(trace.place())));
        atBench.addSeparator();
        for (String word : BenchPanel.tests()) {
            atBench.add(Ui.action("Readings: " + word, "", () -> {
                tabs.setSelectedComponent(bench.place());
                bench().choose(word);
            }));
        }
        bar.add(atBench);
        JMenu help = Ui.named(new JMenu(), "&Help");
        help.add(Ui.action("&Keys", "F1", this::keys));
        bar.add(help);
        return bar;
    }

    private boolean atSheets() {
        return tabs.getSelectedComponent() == sheets.place();
    }

    private DrawingPane shownDrawing() {
        return atSheets() ? sheets().pane() : winding.drawing();
    }

    private JMenu viewMenu() {
        JMenu view = Ui.named(new JMenu(), "&View");
        int key = 0;
        for (DrawingView v : DrawingView.values()) {
            key++;
            view.add(Ui.action("&" + WindingPanel.name(v), "ctrl " + key, () -> {
                tabs.setSelectedComponent(winding);
                winding.view(v);
            }));
        }
        view.addSeparator();
        view.add(Ui.action("Zoom &in", "ctrl PLUS", () -> shownDrawing().zoomIn()));
        view.add(Ui.action("Zoom &out", "ctrl MINUS", () -> shownDrawing().zoomOut()));
        view.add(Ui.action("&Fit", "ctrl 0", () -> shownDrawing().fit()));
        view.addSeparator();
        var grey = Ui.named(new JCheckBoxMenuItem(), "&Black and white");
        grey.addActionListener(e -> {
            winding.grey(grey.isSelected());
            sheets.ifMade(SheetPanel::refresh);
            order.ifMade(OrderPanel::refresh);
            trace.ifMade(TracePanel::refresh);
        });
        view.add(grey);
        var dark = Ui.named(new JCheckBoxMenuItem(), "Dar&k");
        dark.setSelected(settings.dark());
        dark.addActionListener(e -> {
            settings.dark(dark.isSelected());
            dress();
        });
        view.add(dark);
        JMenu size = Ui.named(new JMenu(), "&Size of letters");
        var group = new ButtonGroup();
        for (int percent : new int[] {100, 125, 150, 175, 200, 250}) {
            var item = new JRadioButtonMenuItem(percent + " %", percent == settings.size());
            item.addActionListener(e -> {
                settings.size(percent);
                dress();
            });
            group.add(item);
            size.add(item);
        }
        view.add(size);
        return view;
    }

    private void dress() {
        dress(settings.dark(), settings.size());
    }

    void dress(boolean inTheDark, int percent) {
        Ui.dress(inTheDark, percent);
        winding.fitSides();
        winding.draw();
        bench.ifMade(BenchPanel::redraw);
        compare.ifMade(ComparePanel::compare);
        sheets.ifMade(SheetPanel::repaintPage);
        order.ifMade(OrderPanel::refresh);
        trace.ifMade(TracePanel::refresh);
        frame.revalidate();
    }

    void showTitle() {
        String name = document.file().map(f -> f.getFileName().toString()).orElse(NO_FILE);
        frame.setTitle((document.unsaved() ? "• " : "") + name + " – Coilwright");
        if (undo != null) {
            undo.setEnabled(document.undoable().isPresent());
            redo.setEnabled(document.redoable().isPresent());
        }
        recent.removeAll();
        for (Path p : settings.recent()) {
            recent.add(Ui.action(p.toString(), "", () -> files.guarded(() -> files.openFile(p))));
        }
        recent.setEnabled(recent.getItemCount() > 0);
    }

    // ---- drawing out ------------------------------------------------------------------------------------------------

    void export() {
        var chooser = new JFileChooser(files.folder());
        chooser.setDialogTitle(atSheets() ? "Save the sheet as" : "Save the drawing as");
        for (String ending : List.of("pdf", "png", "svg")) {
            chooser.addChoosableFileFilter(
                    new FileNameExtensionFilter(ending.toUpperCase(Locale.ROOT) + " (*." + ending + ")", ending));
        }
        String word = atSheets() ? sheets().kind().word() : winding.view().word();
        chooser.setSelectedFile(new File(files.folder(), word + ".pdf"));
        if (chooser.showSaveDialog(frame) == JFileChooser.APPROVE_OPTION) {
            exportTo(chooser.getSelectedFile().toPath());
        }
    }

    void exportTo(Path path) {
        boolean pdf = path.toString().toLowerCase(Locale.ROOT).endsWith(".pdf");
        Optional<Callable<DrawingPages>> pages = pages(pdf ? PageFormat.A4 : PageFormat.SINGLE);
        if (pages.isEmpty()) {
            say(nothingYet());
            return;
        }
        busy(
                "Drawing " + path.getFileName(),
                () -> DrawingFiles.contents(pages.get().call(), path, OptionalDouble.empty()),
                drawn -> {
                    if (drawn.keySet().stream().anyMatch(this::isTheJob)) {
                        say("Not saved: " + path.getFileName() + " is the job itself: choose another name");
                        return;
                    }
                    if (!files.mayWrite(new ArrayList<>(drawn.keySet()), Optional.empty())) {
                        return;
                    }
                    status.surely(
                            "Saving " + path.getFileName(),
                            () -> {
                                SafeFiles.write(drawn);
                                return drawn.size();
                            },
                            n -> say("Saved " + path + (n > 1 ? " and " + (n - 1) + " more" : "")));
                });
    }

    private boolean isTheJob(Path path) {
        try {
            return document.file().isPresent()
                    && Files.isSameFile(path, document.file().get());
        } catch (IOException e) {
            // What is not there is no job.
            return false;
        }
    }

    private Optional<Callable<DrawingPages>> pages(PageFormat format) {
        return atSheets() ? sheets().pages().map(p -> () -> p) : winding.pages(format);
    }

    private String nothingYet() {
        return atSheets() ? "There is no sheet yet" : "There is no drawing yet";
    }

    void print() {
        pages(PageFormat.A4)
                .ifPresentOrElse(pages -> Printing.print(this, frame.getTitle(), pages), () -> say(nothingYet()));
    }

    private void copyDrawing() {
        winding.drawing()
                .scene()
                .ifPresentOrElse(
                        scene -> busy("Copying", () -> Printing.picture(scene.drawing()), image -> {
                            Toolkit.getDefaultToolkit()
                                    .getSystemClipboard()
                                    .setContents(new Printing.Picture(image), null);
                            say("The drawing is on the clipboard as a picture");
                        }),
                        () -> say("There is no drawing yet"));
    }

    private void copyTable() {
        Toolkit.getDefaultToolkit()
                .getSystemClipboard()
                .setContents(new StringSelection(winding.table().asText()), null);
        say("The table of coils is on the clipboard");
    }

    private void keys() {
        JOptionPane.showMessageDialog(frame, Ui.html("""
                        Ctrl+1 … Ctrl+5: the views; F2 … F7: winding, bench, comparison, sheets, order of work, commutator
                        Ctrl+F: find a bar, coil or slot
                        In the drawing: + and − zoom, 0 shows the whole page, arrows move it, Esc lets go
                        In a sheet: Page Up and Page Down turn the page
                        In the order of work: Enter ticks the step and goes on, Space ticks or unticks
                        On the commutator: Enter goes to the next bar, / back, Delete clears
                        Mouse: wheel zooms, dragging moves, a click keeps what is lit up
                        Ctrl+Z, Ctrl+Y: undo, redo
                        Ctrl+S: save; Ctrl+E: save the drawing or sheet; Ctrl+P: print it
                        At the bench: Enter notes, * is off the scale, / takes back, + goes to the proposed pair"""), "Keys", JOptionPane.PLAIN_MESSAGE);
    }
}
