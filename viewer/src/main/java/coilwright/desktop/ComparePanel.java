package coilwright.desktop;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.drawing.ViewOptions;
import coilwright.fault.ConnectionCheck;
import coilwright.job.BadInputException;
import coilwright.job.ConnectionList;
import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.winding.ImpossibleWindingException;
import coilwright.winding.ListedCoil;
import coilwright.winding.Rules;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.filechooser.FileNameExtensionFilter;

/**
 * The winding as planned beside another as found: a connection list, or another job. What differs is marked in both by
 * the dotted lines of a fault and told in words. Both drawings move together.
 */
final class ComparePanel extends JPanel {
    private static final long serialVersionUID = 1L;

    /** Width of the list. */
    private static final int LIST = 320;

    private final transient WindingPanel plan;
    private final transient Consumer<String> say;
    private final transient Background worker;
    private final DrawingPane before = new DrawingPane("planned");
    private final DrawingPane after = new DrawingPane("found");
    private final DefaultListModel<String> lines = new DefaultListModel<>();
    private final JList<String> list = new JList<>(lines);
    private final JCheckBox free = Ui.named(new JCheckBox(), "The list may count &otherwise");
    private final JCheckBox round = Ui.named(new JCheckBox(), "&Round view");
    private final Wrapped summary = new Wrapped(500);
    private transient Optional<Path> other = Optional.empty();
    private transient Optional<Compared> shown = Optional.empty();
    private boolean following;

    /** What was compared, ready to be shown. */
    private record Compared(
            ConnectionCheck.Result result,
            Scene planned,
            Scene found,
            Ties plannedTies,
            Ties foundTies,
            String words) {}

    ComparePanel(WindingPanel plan, Consumer<String> say, Consumer<Throwable> trouble) {
        super(new BorderLayout());
        this.plan = plan;
        this.say = say;
        this.worker = new Background("comparison", trouble);
        var bar = new JPanel(new Rows());
        var choose = Ui.named(new JButton(), "Compare &with…");
        choose.setName("compare with");
        choose.addActionListener(e -> choose());
        free.setToolTipText("Whatever slot and bar the list calls 1, and whichever way round it counts");
        free.addActionListener(e -> compare());
        round.addActionListener(e -> compare());
        bar.add(choose);
        bar.add(free);
        bar.add(round);
        var top = new JPanel(new BorderLayout());
        top.add(bar, BorderLayout.NORTH);
        var words = new JPanel(new BorderLayout());
        words.setBorder(BorderFactory.createEmptyBorder(0, 10, 6, 10));
        words.add(summary);
        top.add(words);
        summary.setName("summary");
        summary.setText("Choose a connection list (CSV) taken down from the armature, or another job, to see it beside"
                + " this one.");
        add(top, BorderLayout.NORTH);
        var both = new JSplitPane(JSplitPane.VERTICAL_SPLIT, titled("As planned", before), titled("As found", after));
        both.setResizeWeight(0.5);
        both.setBorder(null);
        list.setName("differences");
        list.getAccessibleContext().setAccessibleName("Differences");
        list.addListSelectionListener(e -> light());
        var side = new JScrollPane(list);
        side.setPreferredSize(new Dimension(Ui.px(LIST), Ui.px(200)));
        var all = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, both, side);
        all.setResizeWeight(1);
        all.setBorder(null);
        add(all);
        together(before, after);
        together(after, before);
        hover(before);
        hover(after);
        plan.addPropertyChangeListener("ties", e -> compare());
    }

    private static JPanel titled(String words, DrawingPane pane) {
        var panel = new JPanel(new BorderLayout());
        var label = new JLabel(words);
        label.setBorder(BorderFactory.createEmptyBorder(2, 10, 2, 10));
        panel.add(label, BorderLayout.NORTH);
        panel.add(pane);
        return panel;
    }

    private void together(DrawingPane leader, DrawingPane follower) {
        leader.onMove(() -> {
            if (!following) {
                following = true;
                follower.follow(leader);
                following = false;
            }
        });
    }

    /** The same thing lights up in both. */
    private void hover(DrawingPane pane) {
        Consumer<Optional<Element>> light = e -> shown.ifPresent(c -> {
            Optional<Ties.Tied> was = e.filter(c.plannedTies()::has).map(c.plannedTies()::of);
            Optional<Ties.Tied> is = e.filter(c.foundTies()::has).map(c.foundTies()::of);
            before.hover(was);
            after.hover(is);
            say.accept(was.map(t -> "Planned: " + t.words()).orElse("")
                    + is.map(t -> " Found: " + t.words()).orElse(""));
        });
        pane.onHover(light);
        pane.onClick(light);
    }

    private void choose() {
        var chooser = new JFileChooser(
                other.map(Path::toFile).orElse(Path.of("").toAbsolutePath().toFile()));
        chooser.setDialogTitle("Compare with");
        chooser.setFileFilter(new FileNameExtensionFilter(
                "Connection lists and jobs (*.csv, *.yaml, *.json)", "csv", "yaml", "yml", "json"));
        if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
            with(chooser.getSelectedFile().toPath());
        }
    }

    /** Compares with a file. */
    void with(Path file) {
        other = Optional.of(file);
        compare();
    }

    void compare() {
        Optional<Winding> winding = plan.ties().map(Ties::winding);
        Optional<Job> job = plan.state().flatMap(JobState::job);
        if (other.isEmpty() || winding.isEmpty() || job.isEmpty()) {
            return;
        }
        Path file = other.get();
        String title = job.get().title();
        boolean anyCount = free.isSelected();
        DrawingView view = round.isSelected() ? DrawingView.ROUND : DrawingView.DEVELOPED;
        Tones tones = Ui.tones();
        worker.replace(
                () -> {
                    try {
                        return compared(title, winding.get(), file, anyCount, view, tones);
                    } catch (BadInputException e) {
                        throw new IllegalArgumentException(e.problems().get(0).toString(), e);
                    }
                },
                this::show);
    }

    private static List<ListedCoil> list(Path file) throws BadInputException {
        try {
            return file.toString().toLowerCase(Locale.ROOT).endsWith(".csv")
                    ? ConnectionList.readAsFound(file)
                    : JobReader.read(file).build().asListed().coils();
        } catch (ImpossibleWindingException e) {
            throw new IllegalArgumentException(file + " cannot be wound: " + e.getMessage(), e);
        }
    }

    private static Compared compared(
            String title, Winding plan, Path file, boolean anyCount, DrawingView view, Tones tones)
            throws BadInputException {
        List<ListedCoil> found = new ArrayList<>(list(file));
        ConnectionCheck.Result result = anyCount ? ConnectionCheck.free(plan, found) : ConnectionCheck.of(plan, found);
        result.differences().stream()
                .filter(d -> d.kind() == ConnectionCheck.Kind.DOUBLED)
                .forEach(d -> d.found().ifPresent(found::remove));
        boolean drawable = !found.isEmpty()
                && Rules.blocking(plan.armature(), new WindingSpec.Listed(found))
                        .isEmpty();
        Winding other = drawable ? Winding.build(plan.armature(), new WindingSpec.Listed(found)) : plan;
        int n = result.coils().size();
        String words = result.same()
                ? "✓ The connections are as planned."
                : "⚠ " + result.whole().map(w -> w.words() + "\n").orElse("")
                        + (n == 0 ? "" : n == 1 ? "1 coil differs." : n + " coils differ.")
                        + (drawable ? "" : " What was found cannot be drawn on this core, so the plan is shown twice.");
        Drawing planned =
                view.draw(plan, ViewOptions.of(title + ", as planned")).first();
        Drawing drawn = view.draw(other, ViewOptions.of(title + ", as found")).first();
        return new Compared(
                result, new Scene(planned, tones), new Scene(drawn, tones), new Ties(plan), new Ties(other), words);
    }

    private void show(Compared next) {
        shown = Optional.of(next);
        summary.setText(other.map(f -> f.getFileName() + ": ").orElse("") + next.words());
        lines.clear();
        next.result()
                .differences()
                .forEach(d -> lines.addElement(Ui.html("Coil " + d.coil() + ": " + d.words(), Ui.px(LIST - 40))));
        Set<Element> marked = new LinkedHashSet<>();
        next.result().coils().forEach(c -> marked.add(Element.coil(c)));
        before.show(Optional.of(next.planned()));
        after.show(Optional.of(next.found()));
        before.mark(marked);
        after.mark(marked);
        revalidate();
    }

    private void light() {
        int at = list.getSelectedIndex();
        shown.filter(c -> at >= 0 && at < c.result().differences().size()).ifPresent(c -> {
            Element e = Element.coil(c.result().differences().get(at).coil());
            before.pin(Optional.of(e).filter(c.plannedTies()::has).map(c.plannedTies()::of));
            after.pin(Optional.of(e).filter(c.foundTies()::has).map(c.foundTies()::of));
            before.reveal(e);
        });
    }

    DrawingPane found() {
        return after;
    }
}
