package coilwright.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import coilwright.bench.BenchArmature;
import coilwright.bench.BenchTest;
import coilwright.bench.PairReading;
import coilwright.drawing.Element;
import coilwright.fault.Fault;
import coilwright.job.JobReader;
import coilwright.job.JobText;
import coilwright.rewind.WindingWay;
import coilwright.sheet.SheetKind;
import java.awt.Component;
import java.awt.KeyboardFocusManager;
import java.awt.Point;
import java.awt.Window;
import java.awt.geom.Rectangle2D;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JOptionPane;
import javax.swing.JTable;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * What a user does with real windows, on a display of its own. Run by {@link DesktopTest} in a program of its own, since
 * the tests' own has no display. Prints PASS or FAIL and the name of each.
 */
final class Scenarios {
    private static final int MARK = 0xb0106b;

    private final Hand hand;
    private final Path samples;
    private final Path folder;
    private Optional<MainWindow> window = Optional.empty();

    private interface Scenario {
        void run() throws Exception;
    }

    private Scenarios(Path samples, Path folder) throws Exception {
        this.hand = new Hand();
        this.samples = samples;
        this.folder = folder;
    }

    public static void main(String[] args) throws Exception {
        if (args[0].equals("victim")) {
            victim(Path.of(args[1]));
            return;
        }
        var all = new Scenarios(Path.of(args[0]), Path.of(args[1]));
        Map<String, Scenario> scenarios = new LinkedHashMap<>();
        scenarios.put("opens a job and draws every view", all::opens);
        scenarios.put("lights up what the pointer is at, and says so", all::hovers);
        scenarios.put("shows the reason under the field, a way out, and undoes", all::edits);
        scenarios.put("saves with the comments kept, and guards what is unsaved", all::saves);
        scenarios.put("asks before it saves over what another program saved", all::meanwhile);
        scenarios.put("loses nothing to a slow disk", all::slowly);
        scenarios.put("can be worked by the keyboard alone, and every part has a name", all::keyboard);
        scenarios.put("finds a fault in a run of readings by the number pad", all::runs);
        scenarios.put("loses nothing to a kill", all::killed);
        scenarios.put("turns the pages of a sheet and saves them", all::sheets);
        scenarios.put("ticks off the order of work, and takes it up again", all::ticks);
        scenarios.put("takes a commutator's run-out by the number pad", all::traces);
        scenarios.put("holds together in the dark and at 250 %", all::sizes);
        for (Map.Entry<String, Scenario> s : scenarios.entrySet()) {
            String outcome;
            long start = System.nanoTime();
            try {
                s.getValue().run();
                outcome = "PASS";
            } catch (Exception | AssertionError e) {
                outcome = "FAIL";
                var trace = new StringWriter();
                e.printStackTrace(new PrintWriter(trace));
                System.out.print(trace);
                System.out.println("the status line says: " + all.status());
            }
            all.close();
            System.out.println(outcome + " " + s.getKey() + " " + (System.nanoTime() - start) / 1_000_000);
        }
        System.exit(0);
    }

    private Path copy(String sample) throws IOException {
        Path to = Files.createTempDirectory(folder, "job").resolve(sample + ".yaml");
        Files.copy(samples.resolve(sample + ".yaml"), to);
        return to;
    }

    private MainWindow open(Path file) throws Exception {
        MainWindow opened =
                Desktop.window(Optional.of(file), JobText.read(file), new Settings(folder.resolve("settings")));
        window = Optional.of(opened);
        hand.untilItStays(
                "the window shows and takes what is typed",
                () -> opened.frame().isShowing()
                        && opened.frame().isFocused()
                        && opened.frame().getFocusOwner() != null);
        return opened;
    }

    private MainWindow drawn(Path file) throws Exception {
        MainWindow opened = open(file);
        hand.until("the drawing is there", () -> opened.winding().drawing().isPainted());
        hand.until("the coils are there", () -> opened.winding().table().getRowCount() > 0);
        return opened;
    }

    private void close() {
        window.ifPresent(w -> SwingUtilities.invokeLater(() -> {
            for (var other : Window.getWindows()) {
                other.dispose();
            }
        }));
        window = Optional.empty();
        hand.until("no window shows", () -> Hand.all().isEmpty());
    }

    private String status() {
        return Hand.see(() -> status(Hand.all()));
    }

    private static String status(List<? extends Component> all) {
        return all.stream()
                .filter(c -> "status".equals(c.getName()))
                .map(c -> ((JLabel) c).getText())
                .findFirst()
                .orElse("none");
    }

    private String text(String field) {
        return Hand.see(() -> ((JTextComponent) hand.now(field)).getText());
    }

    private void retype(String field, String value) {
        Component c = hand.named(field);
        Hand.see(c::requestFocusInWindow);
        hand.until(field + " has the focus", c::isFocusOwner);
        hand.press("ctrl A");
        if (value.isEmpty()) {
            hand.press("DELETE");
        } else {
            hand.type(value);
        }
    }

    private void opens() throws Exception {
        MainWindow w = drawn(copy("orchard-pump-dynamo"));
        assertThat(Hand.see(() -> w.frame().getTitle())).isEqualTo("orchard-pump-dynamo.yaml – Coilwright");
        assertThat(Hand.see(() -> w.winding().table().getRowCount())).isEqualTo(17);
        assertThat(text("armature.slots")).isEqualTo("17");
        String[] titles = {"Developed", "Round", "Coil", "Paths", "Growler"};
        for (int i = 1; i <= 5; i++) {
            var before = Hand.see(() -> w.winding().drawing().scene());
            hand.press("ctrl " + i);
            if (i > 1) {
                hand.until(
                        "view " + i + " is drawn",
                        () -> !w.winding().drawing().scene().equals(before)
                                && w.winding().drawing().isPainted());
            }
            String name = titles[i - 1].toLowerCase(Locale.ROOT);
            assertThat(Hand.see(() -> ((AbstractButton) hand.now("view " + name)).isSelected()))
                    .isTrue();
        }
        DrawingPane drawing = w.winding().drawing();
        double scale = Hand.see(drawing::scale);
        hand.moveTo(drawing, 200, 200);
        hand.wheel(-2);
        hand.until("the wheel zooms", () -> drawing.scale() > scale * 1.4);
        hand.click(drawing, 50, 50);
        hand.press("0");
        hand.until("0 shows the whole page", () -> Math.abs(drawing.scale() - scale) < 1e-9);
        Point before = Hand.see(() -> drawing.placeOf(0, 0).orElseThrow());
        hand.drag(drawing, 100, 100, 160, 130);
        hand.until("dragging moves", () -> drawing.placeOf(0, 0).orElseThrow().x == before.x + 60);
    }

    private Point placeOf(DrawingPane drawing, Element e) {
        return Hand.see(() -> {
            Rectangle2D b = drawing.scene().orElseThrow().boundsOf(e).orElseThrow();
            return drawing.placeOf(b.getCenterX(), b.getCenterY()).orElseThrow();
        });
    }

    private void hovers() throws Exception {
        MainWindow w = drawn(copy("orchard-pump-dynamo"));
        DrawingPane drawing = w.winding().drawing();
        assertThat(hand.coloured(drawing, MARK)).isZero();
        Point bar = placeOf(drawing, Element.bar(5));
        hand.moveTo(drawing, bar.x, bar.y);
        hand.until("the bar is lit", () -> drawing.lit().isPresent());
        assertThat(Hand.see(() -> drawing.lit().orElseThrow().lit()))
                .contains(Element.bar(5), Element.coil(5), Element.coil(13), Element.slot(5), Element.bar(14));
        assertThat(status()).startsWith("Bar 5: top lead of coil 5, bottom lead of coil 13");
        assertThat(hand.coloured(drawing, MARK)).isGreaterThan(200);
        hand.moveTo(drawing, 3, 3);
        hand.until("nothing is lit", () -> drawing.lit().isEmpty());
        JTable table = w.winding().table();
        var cell = Hand.see(() -> table.getCellRect(2, 0, true));
        hand.click(table, cell.x + 5, cell.y + 5);
        hand.until(
                "coil 3 is lit",
                () -> drawing.lit().filter(t -> t.of().equals(Element.coil(3))).isPresent());
        assertThat(status()).startsWith("Coil 3: top side in slot 3, bottom side in slot 7");
        hand.press("ctrl F");
        hand.type("slot 9\n");
        hand.until(
                "slot 9 is lit",
                () -> drawing.lit().filter(t -> t.of().equals(Element.slot(9))).isPresent());
        hand.press("ctrl A");
        hand.type("bar 99\n");
        assertThat(status()).isEqualTo("There is no bar 99: bars run from 1 to 17");
        Point second = placeOf(drawing, Element.bar(7));
        hand.click(drawing, second.x, second.y);
        hand.until("a click keeps the row", () -> table.getSelectedRow() == 6);
    }

    private void edits() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        String original = Files.readString(file);
        MainWindow w = drawn(file);
        retype("armature.bars", "18");
        Wrapped reason = (Wrapped) hand.named("armature.bars reason");
        assertThat(Hand.see(reason::getText)).startsWith("✗ ").contains("not whole");
        hand.until("ways out are offered", () -> Hand.all().stream().anyMatch(c -> "way out".equals(c.getName())));
        AbstractButton way = (AbstractButton) hand.named("way out");
        assertThat(Hand.see(way::getText)).contains("17 bars");
        hand.click(way);
        hand.until("the reason is gone", () -> !reason.isShowing());
        assertThat(text("armature.bars")).isEqualTo("17");
        hand.press("ctrl Z");
        assertThat(text("armature.bars")).isEqualTo("18");
        hand.press("ctrl Z");
        hand.until("all is as it was", () -> w.document().text().text().equals(original));
        assertThat(Hand.see(() -> w.document().unsaved())).isFalse();
        hand.press("ctrl Y");
        assertThat(text("armature.bars")).isEqualTo("18");
        hand.press("ctrl Z");
        retype("winding.coilResistance", "5 mm");
        Wrapped wrong = (Wrapped) hand.named("winding.coilResistance reason");
        assertThat(Hand.see(wrong::getText)).contains("must be a resistance");
        hand.press("ctrl S");
        assertThat(status()).startsWith("Not saved: winding.coilResistance");
        assertThat(Files.readString(file)).isEqualTo(original);
        JComboBox<?> type = (JComboBox<?>) hand.named("winding.type");
        hand.press("ctrl Z");
        Hand.see(() -> {
            type.setSelectedItem("listed");
            return true;
        });
        hand.until("the table can be changed", () -> w.winding().table().isCellEditable(2, 3));
        JTable table = w.winding().table();
        var cell = Hand.see(() -> table.getCellRect(2, 3, true));
        hand.click(table, cell.x + 5, cell.y + 5);
        hand.type("9\n");
        hand.until(
                "coil 3 has moved",
                () -> w.document().text().get("winding.coils[3].topBar").equals("9"));
    }

    private void saves() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        String original = Files.readString(file);
        drawn(file);
        retype("winding.turns", "8");
        Path kept = Autosave.beside(file);
        hand.until("the change is kept beside the file", () -> Files.exists(kept));
        assertThat(Files.readString(file)).isEqualTo(original);
        hand.press("ctrl W");
        hand.click(hand.button("Go back"));
        hand.until("the question is gone", () -> Hand.all().stream().noneMatch(c -> c instanceof JOptionPane));
        hand.until(
                "the window has the focus", () -> window.orElseThrow().frame().isFocused());
        hand.press("ctrl S");
        hand.until("it is saved", () -> Files.readString(file).equals(original.replace("turns: 6", "turns: 8")));
        hand.until("nothing is kept beside it", () -> !Files.exists(kept));
        hand.until(
                "the title says so",
                () -> !window.orElseThrow().frame().getTitle().startsWith("•"));
        retype("winding.turns", "9");
        hand.press("ctrl W");
        hand.click(hand.button("Give up changes"));
        hand.until("the window is closed", () -> !window.orElseThrow().frame().isDisplayable());
        assertThat(Files.readString(file)).contains("turns: 8");
        hand.until("nothing is kept beside it", () -> !Files.exists(kept));
    }

    private void meanwhile() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        String original = Files.readString(file);
        String theirs = original + "# by another program\n";
        MainWindow opened = drawn(file);
        retype("winding.turns", "8");
        Files.writeString(file, theirs);
        hand.press("ctrl S");
        hand.click(hand.button("Go back"));
        hand.until("the window has the focus", () -> opened.frame().isFocused());
        assertThat(Files.readString(file)).isEqualTo(theirs);
        hand.press("ctrl S");
        hand.click(hand.button("Take up the other"));
        hand.until("theirs is there", () -> opened.document().text().text().equals(theirs));
        assertThat(Hand.see(() -> opened.document().unsaved())).isFalse();
        hand.until("the window has the focus", () -> opened.frame().isFocused());
        hand.press("ctrl Z");
        String mine = original.replace("turns: 6", "turns: 8");
        hand.until("mine is back", () -> opened.document().text().text().equals(mine));
        Files.writeString(file, original);
        hand.press("ctrl S");
        hand.click(hand.button("Put mine in its place"));
        hand.until("mine is saved", () -> Files.readString(file).equals(mine));
        retype("winding.turns", "9");
        Files.delete(file);
        Files.createDirectory(file);
        hand.press("ctrl S");
        hand.until(
                "the trouble is told", () -> status(Hand.all()).startsWith("Not saved: " + file + ": it is a folder"));
        assertThat(Hand.see(() -> opened.document().unsaved())).isTrue();
    }

    private void slowly() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        MainWindow w = drawn(file);
        JobDocument job = w.document();
        // A job that was left before it was on disk is not the one that came after it.
        List<String> done = new ArrayList<>();
        CountDownLatch held = Parts.hold(w.files().saver());
        Parts.run(() -> {
            w.save(() -> done.add("saved"));
            w.files().newFile();
        });
        held.countDown();
        hand.until("it is saved", () -> status(Hand.all()).equals("Saved " + file));
        assertThat(Hand.see(job::file)).isEmpty();
        assertThat(done).isEmpty();
        // What is changed while it is being saved is asked for as well.
        Parts.run(() -> w.files().openFile(file));
        hand.until("it is open again", () -> job.file().isPresent());
        Parts.run(() -> job.edit("winding.turns", "8"));
        CountDownLatch again = Parts.hold(w.files().saver());
        SwingUtilities.invokeLater(() -> w.files().guarded(() -> done.add("gone on")));
        hand.click(hand.button("Save"));
        hand.until("the question is gone", () -> Hand.all().stream().noneMatch(c -> c instanceof JOptionPane));
        Parts.run(() -> job.edit("winding.turns", "9"));
        again.countDown();
        AbstractButton giveUp = hand.button("Give up changes");
        assertThat(done).isEmpty();
        assertThat(Files.readString(file)).contains("turns: 8");
        // What is given up is kept until another job is there.
        Path kept = Autosave.beside(file);
        hand.until("the change is kept", () -> Files.readString(kept).contains("turns: 9"));
        hand.click(giveUp);
        hand.until("it goes on", () -> done.equals(List.of("gone on")));
        hand.untilItStays("it is kept", () -> Files.exists(kept));
        Parts.run(() -> w.files().openFile(file));
        hand.until("it is as saved", () -> job.text().get("winding.turns").equals("8"));
        hand.until("nothing is kept", () -> !Files.exists(kept));
        // Nothing was to be saved when a file that cannot be read is looked at.
        try (var huge = new RandomAccessFile(file.toFile(), "rw")) {
            huge.setLength(1L << 31);
        }
        Parts.run(() -> w.files().lookAgain());
        hand.until("it is told", () -> status(Hand.all()).startsWith("Whether another program changed"));
        Files.delete(file);
    }

    private void keyboard() throws Exception {
        drawn(copy("ferry-lantern-dynamo"));
        hand.pressUntil(
                "alt A", "Alt+A is bars", () -> hand.now("armature.bars").isFocusOwner());
        hand.press("TAB");
        hand.until("then poles", () -> hand.now("armature.poles").isFocusOwner());
        hand.press("shift TAB");
        hand.press("shift TAB");
        hand.until("before them slots", () -> hand.now("armature.slots").isFocusOwner());
        assertThat(nameless()).isEmpty();
        // Round with the tabulator, every field is met, and none holds it fast.
        List<String> met = new ArrayList<>();
        for (int i = 0; i < 45; i++) {
            met.add(String.valueOf(Hand.see(() -> {
                Component owner =
                        KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
                return owner == null ? "none" : String.valueOf(owner.getName());
            })));
            hand.press("TAB");
        }
        assertThat(met).contains("title", "winding.turns", "drawing", "find", "coils", "view developed");
        hand.press("F3");
        hand.until("F3 is the bench", () -> hand.now("begin").isFocusOwner());
        hand.press("F2");
    }

    /** What can be worked but has no name to be told by. */
    private static List<String> nameless() {
        return Hand.see(() -> {
            List<String> out = new ArrayList<>();
            for (Component c : Hand.all()) {
                boolean worked = c instanceof JTextComponent
                        || c instanceof JComboBox<?>
                        || c instanceof JTable
                        || c instanceof DrawingPane
                        || (c instanceof AbstractButton b && b.isFocusable());
                if (worked && c.isFocusable()) {
                    String name = c.getAccessibleContext().getAccessibleName();
                    String what = c.getClass() + " " + c.getName();
                    if ((name == null || name.isBlank()) && !what.contains("JScrollBar") && !what.contains("$")) {
                        out.add(what);
                    }
                }
            }
            return out;
        });
    }

    /** Words of a name, on the window's own thread. */
    private String said(String name) {
        return ((Wrapped) hand.now(name)).getText();
    }

    private void sheets() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        MainWindow w = drawn(file);
        hand.press("F5");
        hand.until(
                "a sheet is shown",
                () -> w.sheets().pages().isPresent() && w.sheets().pane().isPainted());
        assertThat(nameless()).isEmpty();
        Hand.see(() -> {
            w.sheets().choose(SheetKind.ORDER);
            return true;
        });
        hand.until(
                "the order of work is shown",
                () -> w.sheets().pages().isPresent() && w.sheets().pane().isPainted());
        int pages = Hand.see(() -> w.sheets().pages().orElseThrow().pages().size());
        assertThat(pages).isGreaterThan(1);
        var first = Hand.see(() -> w.sheets().pane().scene().orElseThrow().drawing());
        hand.press("PAGE_UP");
        hand.press("PAGE_DOWN");
        assertThat(Hand.see(() -> ((JLabel) hand.now("page")).getText())).isEqualTo("Page 2 of " + pages);
        assertThat(Hand.see(() -> w.sheets().pane().scene().orElseThrow().drawing()))
                .isNotEqualTo(first);
        JComboBox<?> way = (JComboBox<?>) hand.named("sheet way");
        Hand.see(() -> {
            way.setSelectedItem(WindingWay.OPPOSITE_PAIRS);
            return true;
        });
        hand.until("the reason is told", () -> said("sheet words").contains("opposite pairs suit two poles only"));
        Hand.see(() -> {
            way.setSelectedItem(WindingWay.FORMED_COILS);
            return true;
        });
        hand.until("it is there again", () -> w.sheets().pages().isPresent());
        Path out = file.resolveSibling("order.svg");
        Hand.see(() -> {
            w.exportTo(out);
            w.sheets().choose(SheetKind.AS_FOUND);
            return true;
        });
        hand.until("every page is saved", () -> Files.exists(file.resolveSibling("order-" + pages + ".svg")));
    }

    private void ticks() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        MainWindow w = drawn(file);
        hand.press("F6");
        hand.until(
                "the steps are there",
                () -> w.order().table().getRowCount() > 0 && w.order().table().isFocusOwner());
        assertThat(nameless()).isEmpty();
        Path kept = WorkTicks.beside(file);
        for (int i = 0; i < 3; i++) {
            hand.press("ENTER");
        }
        hand.until("three are kept", () -> Files.readString(kept).endsWith("1,yes\n2,yes\n3,yes\n"));
        assertThat(Hand.see(() -> w.order().table().getSelectedRow())).isEqualTo(3);
        assertThat(Hand.see(() -> w.order().pane().lit().orElseThrow().lit()))
                .anyMatch(e -> e.kind() == Element.Kind.COIL);
        hand.press("SPACE");
        hand.press("SPACE");
        hand.until(
                "the fourth is unticked again",
                () -> ((JLabel) hand.now("status")).getText().startsWith("Step 4 is not done"));
        String before = Files.readString(kept);
        close();
        MainWindow again = drawn(file);
        hand.press("F6");
        hand.until("it goes on at step 4", () -> again.order().table().getSelectedRow() == 3);
        assertThat(Hand.see(() -> again.order().isDone(3) && !again.order().isDone(4)))
                .isTrue();
        JComboBox<?> way = (JComboBox<?>) hand.named("order way");
        Hand.see(() -> {
            way.setSelectedItem(WindingWay.COIL_BY_COIL);
            return true;
        });
        hand.until("it says so", () -> said("order words").contains("are not of this order"));
        assertThat(Files.readString(kept)).isEqualTo(before);
        hand.click(hand.named("tick"));
        hand.until(
                "the old ticks are put aside",
                () -> Files.readString(file.resolveSibling("orchard-pump-dynamo.order-1.csv"))
                                .equals(before)
                        && Files.readString(kept).endsWith("done\n1,yes\n"));
    }

    private void traces() throws Exception {
        Path file = copy("tin-tram-toy-motor");
        String original = Files.readString(file);
        MainWindow w = drawn(file);
        hand.press("F7");
        hand.until("the table has the focus", () -> w.trace().table().isFocusOwner());
        assertThat(nameless()).isEmpty();
        hand.type("0.012\n1.2.3\n");
        hand.until("nonsense is refused", () -> said("trace wrong").startsWith("✗"));
        hand.press("ctrl A");
        hand.type("-0.005\n9");
        hand.type("/");
        hand.until("back at bar 2", () -> w.trace().table().getSelectedRow() == 1);
        hand.type("-0.006\n0.008\n");
        hand.until(
                "the job holds them",
                () -> TraceEntries.of(w.document().text().job().orElseThrow()).stream()
                        .map(e -> e.bar() + " " + e.height())
                        .toList()
                        .equals(List.of("1 0.012 mm", "2 -0.006 mm", "3 0.008 mm")));
        hand.until("the trace is drawn", () -> w.trace().pane().isPainted());
        hand.until("and told", () -> said("trace words").contains("Bars read: 3 of 3"));
        // A number typed on past the last bar changes nothing.
        hand.type("7");
        assertThat(Hand.see(() -> w.trace().table().isEditing())).isFalse();
        for (int i = 0; i < 4; i++) {
            hand.press("ctrl Z");
        }
        hand.until("undo gives the file", () -> w.document().text().text().equals(original));
    }

    private static List<String> readings(Path file, Fault fault) throws Exception {
        BenchArmature sound = JobReader.read(file).benchArmature();
        var test = new BenchTest.Drop(1, 5, 1);
        List<String> out = new ArrayList<>();
        for (PairReading r : test.readWalk(fault.in(sound))) {
            out.add(String.format(Locale.ROOT, "%.1f", r.value() * 1000));
        }
        return out;
    }

    private void runs() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        MainWindow w = drawn(file);
        List<String> values = readings(file, new Fault.OpenCoil(7));
        hand.press("F3");
        hand.until(
                "the feed is advised",
                () -> ((JTextComponent) hand.now("run out")).getText().equals("5"));
        hand.until("it can begin", () -> hand.now("begin").isFocusOwner());
        hand.press("ENTER");
        hand.until(
                "the run asks",
                () -> w.bench().run().isPresent() && hand.now("reading").isFocusOwner());
        assertThat(Hand.see(() -> ((JLabel) hand.now("pair")).getText())).isEqualTo("Bars 1 – 2");
        Path journal = file.resolveSibling("orchard-pump-dynamo.drop.csv");
        boolean first = true;
        int n = 0;
        for (String v : values) {
            if (first) {
                hand.type("abc1.2.3\n");
                hand.until(
                        "nonsense is refused",
                        () -> ((Wrapped) hand.now("last reading")).getText().startsWith("✗"));
                assertThat(Files.readString(journal)).endsWith("from,to,reading\n");
                hand.press("ctrl A");
                hand.type(v + "1\n/");
                hand.until(
                        "it is taken back",
                        () -> ((Wrapped) hand.now("last reading")).getText().startsWith("Taken back"));
                first = false;
            }
            hand.type(v + "\n");
            n++;
            int lines = n;
            hand.until(
                    "reading " + n + " is on disk",
                    () -> Files.readAllLines(journal).size() == 5 + lines);
        }
        hand.until(
                "the fault is found",
                () -> ((Wrapped) hand.now("verdict")).getText().contains("coil 7 open"));
        assertThat(Hand.see(() -> ((Wrapped) hand.now("verdict")).getText())).startsWith("⚠ Faulty");
        JTable list = (JTable) hand.named("readings");
        hand.until("some stand out", () -> {
            for (int i = 0; i < list.getRowCount(); i++) {
                if (String.valueOf(list.getValueAt(i, 2)).startsWith("⚠")) {
                    return true;
                }
            }
            return false;
        });
        hand.click(hand.named("keep"));
        hand.until(
                "the job holds them",
                () -> w.document().text().job().orElseThrow().readings().size() == 1);
        assertThat(Hand.see(() -> w.document().text().text())).startsWith(Files.readString(file));
    }

    /** Changes a job and takes readings without saving, then waits to be killed. */
    private static void victim(Path file) throws Exception {
        MainWindow w =
                Desktop.window(Optional.of(file), JobText.read(file), new Settings(file.resolveSibling("settings")));
        var hand = new Hand();
        hand.until("it can begin", () -> w.winding().state().isPresent());
        Hand.see(() -> {
            w.document().edit("winding.turns", "77");
            w.document().edit("armature.bars", "1x");
            return true;
        });
        Path kept = Autosave.beside(file);
        hand.until("kept", () -> Files.exists(kept) && Files.readString(kept).contains("1x"));
        System.out.println("EDITED");
        Hand.see(() -> {
            w.document().undo();
            return true;
        });
        hand.until("kept again", () -> !Files.readString(kept).contains("1x"));
        hand.until(
                "the rules are through",
                () -> w.winding().state().orElseThrow().text() == w.document().text());
        Hand.see(() -> {
            w.bench().choose("resistance");
            w.bench().choose("drop");
            return true;
        });
        hand.press("F3");
        hand.until(
                "ready",
                () -> hand.now("begin").isFocusOwner()
                        && ((JTextComponent) hand.now("run out")).getText().equals("5"));
        hand.press("ENTER");
        hand.until("asks", () -> hand.now("reading").isFocusOwner());
        for (int i = 1; i <= 5; i++) {
            hand.type("17" + i + "\n");
            int n = i;
            hand.until("noted", () -> w.bench().run().orElseThrow().taken().size() == n);
            System.out.println("NOTED " + i);
        }
        hand.type("9");
        System.out.println("READY");
        Thread.sleep(60_000);
    }

    private void killed() throws Exception {
        Path file = copy("orchard-pump-dynamo");
        String original = Files.readString(file);
        Process victim = new ProcessBuilder(
                        DesktopTest.java(List.of("coilwright.desktop.Scenarios", "victim", file.toString())))
                .redirectErrorStream(true)
                .start();
        List<String> said = new ArrayList<>();
        try (var out = new BufferedReader(new InputStreamReader(victim.getInputStream(), StandardCharsets.UTF_8))) {
            String line;
            while ((line = out.readLine()) != null && !line.equals("READY")) {
                said.add(line);
            }
        } finally {
            victim.destroyForcibly().waitFor();
        }
        assertThat(said).contains("EDITED", "NOTED 5");
        assertThat(Files.readString(file)).isEqualTo(original);
        MainWindow w = open(file, "Take them up");
        hand.until(
                "the changes are back",
                () -> w.document().text().get("winding.turns").equals("77"));
        hand.until("it is drawn", () -> w.winding().table().getRowCount() > 0);
        hand.press("F3");
        hand.until("the run can be taken up", () -> hand.now("resume").isFocusOwner());
        hand.press("ENTER");
        hand.until(
                "it goes on",
                () -> w.bench().run().isPresent() && hand.now("reading").isFocusOwner());
        assertThat(Hand.see(() -> w.bench().run().orElseThrow().taken().size())).isEqualTo(5);
        assertThat(Hand.see(() -> ((JLabel) hand.now("pair")).getText())).isEqualTo("Bars 6 – 7");
        hand.press("F2");
        hand.press("ctrl Z");
        hand.until("undo gives the file", () -> w.document().text().text().equals(original));
    }

    private MainWindow open(Path file, String answer) throws Exception {
        MainWindow opened =
                Desktop.window(Optional.of(file), JobText.read(file), new Settings(folder.resolve("settings")));
        window = Optional.of(opened);
        hand.click(hand.button(answer));
        return opened;
    }

    private void sizes() throws Exception {
        MainWindow w = drawn(copy("mountain-railway-motor"));
        for (int percent : new int[] {250, 100}) {
            for (boolean dark : new boolean[] {true, false}) {
                Hand.see(() -> {
                    w.dress(dark, percent);
                    return true;
                });
                hand.until(
                        "drawn in its tones",
                        () -> w.winding().drawing().scene().orElseThrow().tones() == (dark ? Tones.DARK : Tones.LIGHT)
                                && w.winding().drawing().isPainted());
                assertThat(Hand.see(() -> cut(w.winding().form())))
                        .as(percent + " " + dark)
                        .isEmpty();
            }
        }
    }

    /** Labels, buttons and lists of words of which a part is not shown. */
    private static List<String> cut(JComponent in) {
        List<String> out = new ArrayList<>();
        for (Component c : in.getComponents()) {
            if (c.isVisible() && (c instanceof JLabel || c instanceof AbstractButton || c instanceof JComboBox<?>)) {
                if (c.getWidth() < c.getPreferredSize().width || c.getHeight() < c.getPreferredSize().height) {
                    out.add(c.getName() + " " + c.getAccessibleContext().getAccessibleName() + " " + c.getSize()
                            + " for " + c.getPreferredSize());
                }
            }
        }
        return out;
    }
}
