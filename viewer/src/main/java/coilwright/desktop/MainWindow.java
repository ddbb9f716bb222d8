package coilwright.desktop;

import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.PageFormat;
import coilwright.file.SafeFiles;
import coilwright.job.BadInputException;
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
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JFileChooser;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.JTabbedPane;
import javax.swing.filechooser.FileNameExtensionFilter;

/** The window: menu, the parts as tabs, and a line that says in words what is lit up. */
final class MainWindow {
    private static final String NO_FILE = "New job";

    private final Settings settings;
    private final JobDocument document;
    private final Autosave autosave;
    private final JFrame frame = new JFrame();
    private final JTabbedPane tabs = new JTabbedPane();
    private final WindingPanel winding;
    private final JPanel benchPlace = new JPanel(new BorderLayout());
    private final JPanel comparePlace = new JPanel(new BorderLayout());
    private Optional<BenchPanel> bench = Optional.empty();
    private final JPanel sheetPlace = new JPanel(new BorderLayout());
    private Optional<ComparePanel> compare = Optional.empty();
    private Optional<SheetPanel> sheets = Optional.empty();
    private final JPanel orderPlace = new JPanel(new BorderLayout());
    private Optional<OrderPanel> order = Optional.empty();
    private final JPanel tracePlace = new JPanel(new BorderLayout());
    private Optional<TracePanel> trace = Optional.empty();
    private final JLabel status = new JLabel(" ");
    private final JProgressBar progress = new JProgressBar();
    private final JButton cancel = Ui.named(new JButton(), "Cancel");
    private final JMenu recent = Ui.named(new JMenu(), "Open &recent");
    private final Background worker = new Background("work", this::trouble);
    /** Apart from all other work, so that nothing asked for later can overtake a save. */
    private final Background saver = new Background("save", e -> {
        trouble(e);
        say("Not saved: " + status.getText());
    });

    /** What was saved last, by file. */
    private final Map<Path, String> stored = new HashMap<>();

    private final CountDownLatch closed = new CountDownLatch(1);
    private Action undo;
    private Action redo;

    MainWindow(Settings settings, Optional<Path> file, JobText text) {
        this.settings = settings;
        this.document = new JobDocument(file, text);
        this.autosave = new Autosave(document, settings, this::say);
        this.winding = new WindingPanel(document, this::say, this::trouble);
        frame.setName("main");
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
            }

            @Override
            public void windowActivated(WindowEvent e) {
                lookAgain();
            }

            @Override
            public void windowClosed(WindowEvent e) {
                closed.countDown();
            }
        });
        tabs.addTab("Winding", winding);
        tabs.addTab("Bench", benchPlace);
        tabs.addTab("Compare", comparePlace);
        tabs.addTab("Sheets", sheetPlace);
        tabs.addTab("Order of work", orderPlace);
        tabs.addTab("Commutator", tracePlace);
        tabs.addChangeListener(e -> {
            if (tabs.getSelectedComponent() == benchPlace) {
                bench().fillIfShown();
            } else if (tabs.getSelectedComponent() == comparePlace) {
                compare();
            } else if (tabs.getSelectedComponent() == sheetPlace) {
                sheets().begin();
            } else if (tabs.getSelectedComponent() == orderPlace) {
                order().begin();
            } else if (tabs.getSelectedComponent() == tracePlace) {
                trace().begin();
            }
        });
        tabs.getAccessibleContext().setAccessibleName("Parts");
        frame.add(tabs);
        frame.add(statusBar(), BorderLayout.SOUTH);
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

    /** The part for readings; made when first asked for, since most openings never need it. */
    BenchPanel bench() {
        if (bench.isEmpty()) {
            bench = Optional.of(new BenchPanel(winding, document, this::say, this::save, this::trouble));
            benchPlace.add(bench.get());
            benchPlace.revalidate();
        }
        return bench.get();
    }

    /** The part that compares; made when first asked for. */
    ComparePanel compare() {
        if (compare.isEmpty()) {
            compare = Optional.of(new ComparePanel(winding, this::say, this::trouble));
            comparePlace.add(compare.get());
            comparePlace.revalidate();
        }
        return compare.get();
    }

    /** The part that shows the sheets; made when first asked for. */
    SheetPanel sheets() {
        if (sheets.isEmpty()) {
            sheets = Optional.of(new SheetPanel(this));
            sheetPlace.add(sheets.get());
            sheetPlace.revalidate();
        }
        return sheets.get();
    }

    /** The part that leads through the winding work; made when first asked for. */
    OrderPanel order() {
        if (order.isEmpty()) {
            order = Optional.of(new OrderPanel(this, this::trouble));
            orderPlace.add(order.get());
            orderPlace.revalidate();
        }
        return order.get();
    }

    /** The part for the run-out of the commutator; made when first asked for. */
    TracePanel trace() {
        if (trace.isEmpty()) {
            trace = Optional.of(new TracePanel(this, this::trouble));
            tracePlace.add(trace.get());
            tracePlace.revalidate();
        }
        return trace.get();
    }

    /** Comes back when the window is closed. */
    void await() throws InterruptedException {
        closed.await();
    }

    void open() {
        frame.setVisible(true);
        winding.begin();
        document.file().ifPresent(this::noteOpened);
        offerRecovery();
    }

    private JPanel statusBar() {
        var bar = new JPanel(new BorderLayout(8, 0));
        bar.setBorder(BorderFactory.createEmptyBorder(3, 10, 3, 10));
        status.setName("status");
        status.getAccessibleContext().setAccessibleName("Status");
        bar.add(status);
        var right = new JPanel(new BorderLayout(6, 0));
        progress.setIndeterminate(true);
        progress.setVisible(false);
        cancel.setName("cancel");
        cancel.setVisible(false);
        right.add(progress);
        right.add(cancel, BorderLayout.EAST);
        bar.add(right, BorderLayout.EAST);
        return bar;
    }

    void say(String words) {
        status.setText(words.isEmpty() ? " " : words);
        status.setToolTipText(words.isEmpty() ? null : words);
        status.getAccessibleContext().setAccessibleDescription(words);
    }

    /** What should never happen, in one line. */
    private void trouble(Throwable e) {
        progress.setVisible(false);
        cancel.setVisible(false);
        String why = e instanceof IOException io
                ? told(io)
                : e instanceof UncheckedIOException u ? SafeFiles.reason(u.getCause()) : e.getMessage();
        boolean expected =
                e instanceof IOException || e instanceof IllegalArgumentException || e instanceof BadInputException;
        say(
                expected
                        ? String.valueOf(why)
                        : "This should not have happened; please report it: "
                                + e.getClass().getSimpleName() + (why == null ? "" : ": " + why));
    }

    /** Which file failed, and why. */
    static String told(IOException e) {
        return e instanceof FileSystemException f && f.getFile() != null
                ? f.getFile() + ": " + SafeFiles.reason(e)
                : SafeFiles.reason(e);
    }

    /** Works something out with a bar to show it and a button to give it up. */
    <T> void busy(String what, Callable<T> work, Consumer<T> then) {
        progress.setString(what);
        progress.setStringPainted(true);
        progress.setVisible(true);
        cancel.setVisible(true);
        for (var l : cancel.getActionListeners()) {
            cancel.removeActionListener(l);
        }
        cancel.addActionListener(e -> {
            worker.cancel();
            progress.setVisible(false);
            cancel.setVisible(false);
            say("Given up: " + what);
        });
        worker.replace(work, answer -> {
            progress.setVisible(false);
            cancel.setVisible(false);
            then.accept(answer);
        });
    }

    private JMenuBar menu() {
        var bar = new JMenuBar();
        JMenu file = Ui.named(new JMenu(), "&File");
        file.add(Ui.action("&New", "ctrl N", this::newFile));
        file.add(Ui.action("&Open…", "ctrl O", this::chooseFile));
        file.add(recent);
        file.addSeparator();
        file.add(Ui.action("&Save", "ctrl S", () -> save(() -> {})));
        file.add(Ui.action("Save &as…", "ctrl shift S", () -> saveAs(() -> {})));
        file.addSeparator();
        file.add(Ui.action("Save &drawing or sheet as…", "ctrl E", this::export));
        file.add(Ui.action("&Print drawing or sheet…", "ctrl P", this::print));
        file.addSeparator();
        file.add(Ui.action("&Close", "ctrl W", this::close));
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
            tabs.setSelectedComponent(benchPlace);
            bench().focus();
        }));
        atBench.add(Ui.action("&Compare", "F4", () -> tabs.setSelectedComponent(comparePlace)));
        atBench.add(Ui.action("&Sheets", "F5", () -> tabs.setSelectedComponent(sheetPlace)));
        atBench.add(Ui.action("&Order of work", "F6", () -> tabs.setSelectedComponent(orderPlace)));
        atBench.add(Ui.action("Co&mmutator", "F7", () -> tabs.setSelectedComponent(tracePlace)));
        atBench.addSeparator();
        for (String word : BenchPanel.tests()) {
            atBench.add(Ui.action("Readings: " + word, "", () -> {
                tabs.setSelectedComponent(benchPlace);
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
        return tabs.getSelectedComponent() == sheetPlace;
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
            sheets.ifPresent(SheetPanel::refresh);
            order.ifPresent(OrderPanel::refresh);
            trace.ifPresent(TracePanel::refresh);
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
        bench.ifPresent(BenchPanel::redraw);
        compare.ifPresent(ComparePanel::compare);
        sheets.ifPresent(SheetPanel::repaintPage);
        order.ifPresent(OrderPanel::refresh);
        trace.ifPresent(TracePanel::refresh);
        frame.revalidate();
    }

    private void showTitle() {
        String name = document.file().map(f -> f.getFileName().toString()).orElse(NO_FILE);
        frame.setTitle((document.unsaved() ? "• " : "") + name + " – Coilwright");
        if (undo != null) {
            undo.setEnabled(document.undoable().isPresent());
            redo.setEnabled(document.redoable().isPresent());
        }
        recent.removeAll();
        for (Path p : settings.recent()) {
            recent.add(Ui.action(p.toString(), "", () -> guarded(() -> openFile(p))));
        }
        recent.setEnabled(recent.getItemCount() > 0);
    }

    // ---- files ------------------------------------------------------------------------------------------------------

    /** Goes on when nothing unsaved would be lost, asking where it would. */
    private void guarded(Runnable then) {
        if (!document.unsaved()) {
            then.run();
            return;
        }
        String[] answers = {"Save", "Give up changes", "Go back"};
        int answer = JOptionPane.showOptionDialog(
                frame,
                "The changes of "
                        + document.file().map(f -> f.getFileName().toString()).orElse(NO_FILE) + " are not saved.",
                "Unsaved changes",
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.WARNING_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            save(then);
        } else if (answer == 1) {
            autosave.clear();
            autosave.forget(document.file());
            then.run();
        }
    }

    private void newFile() {
        guarded(() -> {
            JobText text = newJob();
            document.replace(Optional.empty(), text, text.text());
            say("A new job: change the fields on the left");
        });
    }

    private void chooseFile() {
        guarded(() -> {
            var chooser = new JFileChooser(folder());
            chooser.setDialogTitle("Open a job");
            chooser.setFileFilter(
                    new FileNameExtensionFilter("Job files (*.yaml, *.yml, *.json)", "yaml", "yml", "json"));
            if (chooser.showOpenDialog(frame) == JFileChooser.APPROVE_OPTION) {
                openFile(chooser.getSelectedFile().toPath());
            }
        });
    }

    private File folder() {
        return document.file()
                .map(f -> f.toAbsolutePath().getParent().toFile())
                .orElse(Path.of("").toAbsolutePath().toFile());
    }

    private void openFile(Path path) {
        busy("Opening " + path.getFileName(), () -> JobText.read(path), text -> {
            document.replace(Optional.of(path), text, text.text());
            noteOpened(path);
            offerRecovery();
        });
    }

    private void noteOpened(Path path) {
        settings.opened(path);
        showTitle();
        say(
                document.text().problems().isEmpty()
                        ? "Opened " + path
                        : "Opened " + path + ", which is not right yet: see the fields marked ✗");
    }

    private void offerRecovery() {
        Optional<String> kept =
                autosave.leftOver(document.file(), document.text().text());
        if (kept.isEmpty()) {
            return;
        }
        String[] answers = {"Take them up", "Throw them away"};
        int answer = JOptionPane.showOptionDialog(
                frame,
                "There are changes that were not saved when Coilwright last ended.",
                "Unsaved changes found",
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            document.change(JobText.of(document.file().map(Path::toString).orElse(NO_FILE), kept.get()), "taken up");
            say("The unsaved changes are back; undo gives the file as it is");
        } else if (answer == 1) {
            autosave.forget(document.file());
        }
    }

    void save(Runnable then) {
        if (document.file().isEmpty()) {
            saveAs(then);
        } else {
            write(document.file().get(), then);
        }
    }

    private void saveAs(Runnable then) {
        var chooser = new JFileChooser(folder());
        chooser.setDialogTitle("Save the job as");
        chooser.setSelectedFile(document.file().orElse(Path.of("job.yaml")).toFile());
        if (chooser.showSaveDialog(frame) == JFileChooser.APPROVE_OPTION) {
            Path chosen = chooser.getSelectedFile().toPath();
            Path path = chosen.getFileName().toString().contains(".")
                    ? chosen
                    : chosen.resolveSibling(chosen.getFileName() + ".yaml");
            if (mayWrite(List.of(path), document.file())) {
                write(path, then);
            }
        }
    }

    private boolean mayWrite(List<Path> paths, Optional<Path> own) {
        for (Path p : paths) {
            if (Files.exists(p) && !Optional.of(p).equals(own)) {
                return JOptionPane.showConfirmDialog(
                                frame,
                                "The file " + p.getFileName() + " is there already. Put the new one in its place?",
                                "Replace",
                                JOptionPane.OK_CANCEL_OPTION)
                        == JOptionPane.OK_OPTION;
            }
        }
        return true;
    }

    private void write(Path path, Runnable then) {
        if (document.text().job().isEmpty()) {
            say("Not saved: " + document.text().problems().get(0).field() + " "
                    + document.text().problems().get(0).message());
            focusProblem();
            return;
        }
        String text = document.text().text();
        Optional<Path> before = document.file();
        boolean own = before.filter(path::equals).isPresent();
        List<String> known = List.of(document.saved(), text);
        saver.queue(
                () -> own && isChanged(path, known) ? Optional.<Path>empty() : Optional.of(store(path, text)), p -> {
                    if (p.isPresent()) {
                        saved(before, path, text, then);
                    } else {
                        askWhichToKeep(path, text, then);
                    }
                });
    }

    /** On the thread of the saver alone. */
    private Path store(Path path, String text) throws IOException {
        SafeFiles.write(path, text);
        stored.put(path, text);
        return path;
    }

    /** On the thread of the saver alone. A save that the window was not told of yet is no other program's. */
    private boolean isChanged(Path path, List<String> known) throws IOException {
        List<String> all = new ArrayList<>(known);
        Optional.ofNullable(stored.get(path)).ifPresent(all::add);
        return JobDocument.isChanged(path, all);
    }

    private void saved(Optional<Path> before, Path path, String text, Runnable then) {
        autosave.clear();
        autosave.forget(before);
        document.savedAs(path, text);
        settings.opened(path);
        showTitle();
        say("Saved " + path);
        then.run();
    }

    private void askWhichToKeep(Path path, String text, Runnable then) {
        String[] answers = {"Save mine under another name", "Put mine in its place", "Take up the other", "Go back"};
        int answer = JOptionPane.showOptionDialog(
                frame,
                "Another program changed " + path.getFileName() + " since it was opened or saved here.\n"
                        + "If the other is taken up, undo gives yours again.",
                "Changed meanwhile",
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.WARNING_MESSAGE,
                null,
                answers,
                answers[0]);
        switch (answer) {
            case 0 -> saveAs(then);
            case 1 -> saver.queue(() -> store(path, text), p -> saved(Optional.of(p), p, text, then));
            case 2 ->
                busy("Opening " + path.getFileName(), () -> JobText.read(path), other -> {
                    document.takeUp(other);
                    say("Taken up as the other program saved it; undo gives yours");
                });
            default -> say("Not saved: another program changed " + path.getFileName());
        }
    }

    /** Says so when another program changed the job while the window was not looked at. */
    private void lookAgain() {
        document.file().ifPresent(file -> {
            List<String> known = List.of(document.saved());
            saver.queue(() -> isChanged(file, known), changed -> {
                if (changed && document.file().filter(file::equals).isPresent()) {
                    say("Another program changed " + file.getFileName() + ": "
                            + (document.unsaved() ? "saving asks which to keep" : "open it again to see it"));
                }
            });
        });
    }

    private void focusProblem() {
        document.text().problems().stream()
                .map(p -> winding.form().input(p.field()))
                .flatMap(Optional::stream)
                .findFirst()
                .ifPresent(c -> c.requestFocusInWindow());
    }

    private void close() {
        guarded(() -> {
            autosave.clear();
            frame.dispose();
        });
    }

    // ---- drawing out ------------------------------------------------------------------------------------------------

    void export() {
        var chooser = new JFileChooser(folder());
        chooser.setDialogTitle(atSheets() ? "Save the sheet as" : "Save the drawing as");
        for (String ending : List.of("pdf", "png", "svg")) {
            chooser.addChoosableFileFilter(
                    new FileNameExtensionFilter(ending.toUpperCase(Locale.ROOT) + " (*." + ending + ")", ending));
        }
        String word = atSheets() ? sheets().kind().word() : winding.view().word();
        chooser.setSelectedFile(new File(folder(), word + ".pdf"));
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
                files -> {
                    if (files.keySet().stream().anyMatch(this::isTheJob)) {
                        say("Not saved: " + path.getFileName() + " is the job itself: choose another name");
                        return;
                    }
                    if (!mayWrite(new ArrayList<>(files.keySet()), Optional.empty())) {
                        return;
                    }
                    busy(
                            "Saving " + path.getFileName(),
                            () -> {
                                SafeFiles.write(files);
                                return files.size();
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
