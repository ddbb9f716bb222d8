package coilwright.desktop;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingPages;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Element;
import coilwright.drawing.GrowlerBench;
import coilwright.drawing.PageFormat;
import coilwright.drawing.Palette;
import coilwright.drawing.ViewOptions;
import coilwright.job.Job;
import coilwright.winding.Winding;
import coilwright.winding.WindingType;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;

/** The form, the drawing and the table of coils, tied to each other. */
final class WindingPanel extends JPanel {
    private static final long serialVersionUID = 1L;

    /** The property told of when the rules have looked at a text. */
    static final String STATE = "state";

    /** Width wished for, before letters are made larger. */
    private static final int TABLE_WIDTH = 320;

    private static final Pattern WANTED = Pattern.compile("\\s*(?:([a-z]+)\\s*)?(\\d{1,5})\\s*");

    private final transient JobDocument document;
    private final JobForm form;
    private final JScrollPane formSide;
    private final DrawingPane drawing = new DrawingPane("drawing");
    private final CoilTable table = new CoilTable();
    private final JScrollPane tableSide = new JScrollPane(table);
    private final JSplitPane right;
    private final JSplitPane all;
    private final JTextField find = new JTextField(10);
    private final Map<DrawingView, JToggleButton> buttons = new EnumMap<>(DrawingView.class);
    private final transient Background worker;
    private final transient Background drawer;
    private final transient Consumer<String> say;
    private transient Optional<JobState> state = Optional.empty();
    private transient Optional<Winding> shown = Optional.empty();
    private transient Optional<Job> shownJob = Optional.empty();
    private transient Optional<Ties> ties = Optional.empty();
    private transient Optional<Element> chosen = Optional.empty();
    private DrawingView view = DrawingView.DEVELOPED;
    private boolean grey;

    WindingPanel(JobDocument document, Consumer<String> say, Consumer<Throwable> trouble) {
        super(new BorderLayout());
        this.document = document;
        this.say = say;
        this.worker = new Background("rules", trouble);
        this.drawer = new Background("layout", trouble);
        this.form = new JobForm(document, say);
        formSide =
                new JScrollPane(form, JScrollPane.VERTICAL_SCROLLBAR_AS_NEEDED, JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        formSide.getVerticalScrollBar().setUnitIncrement(16);
        formSide.setBorder(null);
        right = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, middle(), tableSide);
        right.setResizeWeight(1);
        right.setBorder(null);
        all = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, formSide, right);
        all.setResizeWeight(0);
        all.setBorder(null);
        tableSide.setBorder(null);
        fitSides();
        add(all);
        drawing.onHover(e -> {
            drawing.hover(tie(e));
            table.light(drawing.lit().map(Ties.Tied::lit).orElse(Set.of()), false);
            say.accept(drawing.lit().map(Ties.Tied::words).orElse(""));
        });
        drawing.onClick(e -> choose(e, false));
        table.onChoose(e -> choose(e, true));
        table.onEdit(this::editCell);
        document.onChange(this::work);
    }

    /** Asks the rules and draws for the first time, once the window shows. */
    void begin() {
        work();
    }

    private JPanel middle() {
        var bar = new JPanel(new Rows());
        var group = new ButtonGroup();
        int key = 0;
        for (DrawingView v : DrawingView.values()) {
            key++;
            var button = new JToggleButton(name(v), v == view);
            button.setName("view " + v.word());
            button.putClientProperty("JButton.buttonType", "toolBarButton");
            button.setToolTipText(name(v) + " (Ctrl+" + key + ")");
            button.addActionListener(e -> view(v));
            group.add(button);
            buttons.put(v, button);
            bar.add(button);
        }
        bar.add(button("−", "Zoom out", drawing::zoomOut));
        bar.add(button("+", "Zoom in", drawing::zoomIn));
        bar.add(button("Fit", "Show the whole page", drawing::fit));
        find.setName("find");
        find.putClientProperty("JTextField.placeholderText", "bar 17, coil 3, slot 9");
        find.setToolTipText("Light up a bar, coil or slot (Ctrl+F)");
        JLabel label = Ui.label("Find", find);
        bar.add(label);
        bar.add(find);
        find.addActionListener(e -> find(find.getText()));
        var panel = new JPanel(new BorderLayout());
        panel.add(bar, BorderLayout.NORTH);
        panel.add(drawing);
        panel.setMinimumSize(new Dimension(80, 80));
        panel.addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                bar.revalidate();
            }
        });
        return panel;
    }

    private static JButton button(String words, String name, Runnable run) {
        var button = new JButton(words);
        button.putClientProperty("JButton.buttonType", "toolBarButton");
        button.setToolTipText(name);
        button.getAccessibleContext().setAccessibleName(name);
        button.addActionListener(e -> run.run());
        return button;
    }

    /** Gives form and table the width they need, after a change of size. */
    void fitSides() {
        tableSide.setPreferredSize(new Dimension(Ui.px(TABLE_WIDTH), Ui.px(300)));
        int formWidth =
                form.getPreferredSize().width + formSide.getVerticalScrollBar().getPreferredSize().width;
        all.setDividerLocation(formWidth);
        if (right.getWidth() > 0) {
            right.setDividerLocation(Math.max(Ui.px(160), getWidth() - formWidth - Ui.px(TABLE_WIDTH + 10)));
        }
    }

    static String name(DrawingView v) {
        return Ui.capital(v.word());
    }

    JobForm form() {
        return form;
    }

    DrawingPane drawing() {
        return drawing;
    }

    CoilTable table() {
        return table;
    }

    JTextField findField() {
        return find;
    }

    Optional<JobState> state() {
        return state;
    }

    /** What is joined to what in the winding last built. */
    Optional<Ties> ties() {
        return ties;
    }

    DrawingView view() {
        return view;
    }

    boolean grey() {
        return grey;
    }

    void grey(boolean monochrome) {
        grey = monochrome;
        draw();
    }

    private Optional<Ties.Tied> tie(Optional<Element> e) {
        return ties.flatMap(t -> e.map(t::of));
    }

    private void choose(Optional<Element> e, boolean reveal) {
        chosen = e;
        Optional<Ties.Tied> tied = tie(e);
        drawing.hover(Optional.empty());
        drawing.pin(tied);
        table.light(tied.map(Ties.Tied::lit).orElse(Set.of()), !reveal);
        say.accept(tied.map(Ties.Tied::words).orElse(""));
        if (view == DrawingView.COIL
                && e.filter(x -> x.kind() == Element.Kind.COIL).isPresent()) {
            draw();
        } else if (reveal) {
            e.ifPresent(drawing::reveal);
        }
    }

    /** Lights up what is asked for, such as "bar 17"; a number alone is a coil. */
    void find(String words) {
        Matcher m = WANTED.matcher(words.toLowerCase(Locale.ROOT));
        if (ties.isEmpty() || words.isBlank()) {
            choose(Optional.empty(), false);
            return;
        }
        Optional<Element.Kind> kind = m.matches()
                ? m.group(1) == null
                        ? Optional.of(Element.Kind.COIL)
                        : List.of(Element.Kind.COIL, Element.Kind.BAR, Element.Kind.SLOT).stream()
                                .filter(k -> k.word().startsWith(m.group(1))
                                        || m.group(1).equals(k.word() + "s"))
                                .findFirst()
                : Optional.empty();
        if (kind.isEmpty()) {
            say.accept("\"" + words.strip() + "\" names nothing here: write bar 17, coil 3 or slot 9");
            return;
        }
        var e = new Element(kind.get(), Integer.parseInt(m.group(2)));
        if (!ties.get().has(e)) {
            say.accept("There is no " + e.kind().word() + " " + e.number() + ": " + range(e.kind()));
            return;
        }
        choose(Optional.of(e), true);
        table.light(ties.get().of(e).lit(), true);
    }

    private String range(Element.Kind kind) {
        Winding w = ties.orElseThrow().winding();
        int most = switch (kind) {
            case BAR -> w.armature().bars();
            case SLOT -> w.armature().slots();
            default -> w.coils().get(w.coils().size() - 1).number();
        };
        return kind.word() + "s run from 1 to " + most;
    }

    void view(DrawingView next) {
        view = next;
        buttons.get(next).setSelected(true);
        draw();
    }

    private void editCell(String cell, String value) {
        int dot = cell.indexOf('.');
        String number = cell.substring(0, dot);
        for (int i = 1; i <= document.text().size("winding.coils"); i++) {
            String path = "winding.coils[" + i + "]";
            if (document.text().get(path + ".coil").equals(number)) {
                try {
                    document.change(document.text().with(path + cell.substring(dot), value), "coil " + number);
                } catch (IllegalArgumentException e) {
                    say.accept(e.getMessage());
                }
                return;
            }
        }
    }

    /** Asks the rules again, and draws again where the winding is another. */
    private void work() {
        var text = document.text();
        if (!text.problems().isEmpty()) {
            drawing.notice(shown.isPresent() ? "As it was before: a field is not right yet" : "");
        }
        worker.replace(() -> JobState.of(text), this::show);
    }

    private void show(JobState next) {
        state = Optional.of(next);
        form.show(next);
        firePropertyChange(STATE, null, next);
        if (next.winding().isEmpty()) {
            drawing.notice(
                    shown.isEmpty()
                            ? ""
                            : next.job().isEmpty()
                                    ? "As it was before: a field is not right yet"
                                    : "As it was before: what the fields say cannot be wound");
            return;
        }
        drawing.notice("");
        boolean sameWinding = shown.isPresent()
                && shown.get().armature().equals(next.winding().get().armature())
                && shown.get().spec().equals(next.winding().get().spec());
        boolean same = sameWinding
                && shownJob.map(Job::title).equals(next.job().map(Job::title))
                && shownJob.map(Job::growler).equals(next.job().map(Job::growler))
                && shownJob.flatMap(Job::equalizers).equals(next.job().flatMap(Job::equalizers));
        shownJob = next.job();
        if (!sameWinding) {
            shown = next.winding();
            drawer.queue(() -> new Ties(next.winding().get()), t -> {
                ties = Optional.of(t);
                chosen = chosen.filter(t::has);
                table.show(ties, t.winding().type() == WindingType.LISTED);
                Optional<Ties.Tied> tied = tie(chosen);
                drawing.hover(Optional.empty());
                drawing.pin(tied);
                firePropertyChange("ties", null, t);
            });
        }
        if (!same) {
            draw();
        }
    }

    /** How the view is drawn; coil is the one whose card is shown. */
    static ViewOptions options(Job job, Winding winding, Optional<Element> chosen, boolean grey) {
        List<List<Integer>> rings =
                job.equalizers().map(e -> ringsOf(job, winding)).orElse(List.of());
        ViewOptions options = ViewOptions.of(job.title())
                .withPalette(grey ? Palette.MONOCHROME : Palette.COLOUR)
                .withBench(GrowlerBench.of(job.growler()).withEqualizers(rings));
        return chosen.filter(e -> e.kind() == Element.Kind.COIL && winding.hasCoil(e.number()))
                .map(e -> options.withCoil(e.number()))
                .orElse(options);
    }

    private static List<List<Integer>> ringsOf(Job job, Winding winding) {
        try {
            return job.equalizers().orElseThrow().rings(winding);
        } catch (IllegalArgumentException e) {
            // The form says so already.
            return List.of();
        }
    }

    void draw() {
        if (shown.isEmpty() || shownJob.isEmpty()) {
            return;
        }
        Winding winding = shown.get();
        ViewOptions options = options(shownJob.get(), winding, chosen, grey);
        DrawingView wanted = view;
        Tones tones = Ui.tones();
        drawer.replace(
                () -> {
                    Drawing page = wanted.draw(winding, options).first();
                    return new Scene(page, tones);
                },
                s -> drawing.show(Optional.of(s)));
    }

    /** What makes the pages of the view shown, for print or files; empty while there is no winding. */
    Optional<Callable<DrawingPages>> pages(PageFormat format) {
        if (shown.isEmpty() || shownJob.isEmpty()) {
            return Optional.empty();
        }
        Winding winding = shown.get();
        ViewOptions options = options(shownJob.get(), winding, chosen, grey).withFormat(format);
        DrawingView wanted = view;
        return Optional.of(() -> wanted.draw(winding, options));
    }
}
