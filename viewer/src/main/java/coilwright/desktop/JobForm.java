package coilwright.desktop;

import coilwright.job.Job;
import coilwright.job.JobReader;
import coilwright.job.JobText;
import coilwright.job.Problem;
import coilwright.winding.Direction;
import coilwright.winding.Finding;
import coilwright.winding.Severity;
import coilwright.winding.SlotAlignment;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import coilwright.winding.WindingType;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.awt.Rectangle;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.DefaultComboBoxModel;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.UIManager;
import javax.swing.border.EmptyBorder;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** The fields of a job, each with what is wrong with it beneath, and the ways out as buttons. */
final class JobForm extends ColumnPanel {
    private static final long serialVersionUID = 1L;

    /** Where the finding of a rule is shown; with the type of winding where it is not told here. */
    private static final Map<String, String> PLACE = new LinkedHashMap<>();

    static {
        PLACE.put("coil-sides-fit-slots", "armature.bars");
        PLACE.put("commutator-pitch-whole", "armature.bars");
        PLACE.put("frog-leg-fits", "armature.bars");
        PLACE.put("leads-apart", "winding.plex");
        PLACE.put("span-in-range", "winding.throw");
        PLACE.put("throw-against-pole-pitch", "winding.throw");
        PLACE.put("stepped-coils", "winding.backSpan");
        PLACE.put("dead-coils-exist", "winding.deadCoils");
        PLACE.put("dead-coil-use", "winding.deadCoils");
    }

    private final transient JobDocument document;
    private final transient Map<String, Row> rows = new LinkedHashMap<>();
    private final transient Consumer<String> complain;
    private final Wrapped elsewhere = new Wrapped(260);
    private final JPanel rules = new JPanel(new GridBagLayout());
    private transient Optional<Winding> winding = Optional.empty();
    private transient boolean quiet;
    private int line;

    /** One field: what it is called, where it is typed, and what is said of it. */
    private static final class Row {
        final String path;
        final JComponent input;
        final Wrapped reason = new Wrapped(260);
        final JPanel ways = new JPanel(new GridBagLayout());
        final JLabel label;

        Row(String path, String name, JComponent input) {
            this.path = path;
            this.input = input;
            this.label = Ui.label(name, input);
            input.setName(path);
            reason.setName(path + " reason");
            reason.setVisible(false);
            ways.setVisible(false);
            ways.setOpaque(false);
        }

        void say(String words, String outline, String sign) {
            reason.setText(words.isEmpty() ? "" : sign + " " + words.replace("\n", "\n" + sign + " "));
            reason.setVisible(!words.isEmpty());
            input.putClientProperty("JComponent.outline", outline.isEmpty() ? null : outline);
            reason.setForeground(outline.equals("error") ? Ui.error() : UIManager.getColor("Label.foreground"));
            input.getAccessibleContext().setAccessibleDescription(words);
            input.repaint();
        }
    }

    JobForm(JobDocument document, Consumer<String> complain) {
        super(new GridBagLayout());
        this.document = document;
        this.complain = complain;
        setName("form");
        setBorder(new EmptyBorder(8, 10, 8, 10));
        text("title", "&Title", "");
        heading("Core and commutator");
        text("armature.slots", "&Slots", "");
        text("armature.bars", "B&ars", "");
        text("armature.poles", "&Poles", "");
        choice(
                "armature.slotOneInLineWith",
                "Slot 1 in &line with",
                Arrays.stream(SlotAlignment.values()).map(SlotAlignment::word).toList());
        heading("Winding");
        choice(
                "winding.type",
                "T&ype",
                Arrays.stream(WindingType.values()).map(WindingType::word).toList());
        text("winding.plex", "Ple&x", "1 simplex, 2 duplex, …");
        choice(
                "winding.direction",
                "Di&rection",
                Arrays.stream(Direction.values()).map(Direction::word).toList());
        text("winding.throw", "Co&il throw, slots", "slots spanned at the back");
        text("winding.backSpan", "or bac&k span, positions", "for stepped coils");
        text("winding.deadCoils", "&Dead coils", "numbers, commas between");
        text("winding.leadOffset", "Lead &offset, bars", "bars from slot 1's own bar");
        text("winding.turns", "T&urns per coil", "");
        text("winding.coilResistance", "Coil resista&nce", "such as 0.08 ohm");
        heading("Growler and equalizers");
        text("growler.halfGap", "Half &gap, degrees", "from straight down to a face's middle");
        text("growler.face", "Fa&ce, degrees", "width of a face");
        text("equalizers.every", "Equali&zer on every", "1 each set of equal bars, 2 every other");
        heading("What the rules say");
        elsewhere.setName("elsewhere");
        add(elsewhere, at(2, 0));
        add(rules, at(2, 0));
        rules.setOpaque(false);
        GridBagConstraints rest = at(2, 0);
        rest.weighty = 1;
        add(new JLabel(), rest);
        document.onChange(this::showText);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                revalidate();
            }
        });
        showText();
    }

    private GridBagConstraints at(int width, int x) {
        var c = new GridBagConstraints();
        c.gridx = x;
        c.gridy = line;
        c.gridwidth = width;
        c.fill = GridBagConstraints.HORIZONTAL;
        c.weightx = x == 1 || width == 2 ? 1 : 0;
        c.anchor = GridBagConstraints.NORTHWEST;
        c.insets = new Insets(1, 0, 1, x == 0 && width == 1 ? 8 : 0);
        if (x + width == 2) {
            line++;
        }
        return c;
    }

    private void heading(String words) {
        var label = new JLabel(words) {
            private static final long serialVersionUID = 1L;

            @Override
            public void updateUI() {
                super.updateUI();
                setFont(UIManager.getFont("Label.font").deriveFont(Font.BOLD));
            }
        };
        GridBagConstraints c = at(2, 0);
        c.insets = new Insets(10, 0, 2, 0);
        add(label, c);
    }

    private void add(Row row) {
        rows.put(row.path, row);
        boolean wide = row.path.equals("title");
        GridBagConstraints c = at(wide ? 2 : 1, 0);
        c.fill = GridBagConstraints.BOTH;
        add(row.label, c);
        add(row.input, at(wide ? 2 : 1, wide ? 0 : 1));
        add(row.reason, at(2, 0));
        add(row.ways, at(2, 0));
        row.input.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                Rectangle seen = row.input.getBounds();
                seen.grow(0, Ui.px(12));
                scrollRectToVisible(seen);
            }

            @Override
            public void focusLost(FocusEvent e) {
                document.seal();
            }
        });
    }

    private void text(String path, String name, String hint) {
        var field = new JTextField(9);
        field.putClientProperty("JTextField.placeholderText", hint);
        if (!hint.isEmpty()) {
            field.setToolTipText(hint);
        }
        field.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent e) {
                typed(path, field.getText());
            }

            @Override
            public void removeUpdate(DocumentEvent e) {
                typed(path, field.getText());
            }

            @Override
            public void changedUpdate(DocumentEvent e) {}
        });
        add(new Row(path, name, field));
    }

    private void choice(String path, String name, List<String> words) {
        JComboBox<String> box = new JComboBox<>(words.toArray(String[]::new));
        box.addActionListener(e -> {
            if (!quiet && box.getSelectedItem() != null) {
                chosen(path, (String) box.getSelectedItem());
            }
        });
        add(new Row(path, name, box));
    }

    private void typed(String path, String value) {
        if (!quiet) {
            attempt(() -> document.edit(path, value));
        }
    }

    private void chosen(String path, String value) {
        Optional<WindingType> type = Arrays.stream(WindingType.values())
                .filter(t -> path.equals("winding.type") && t.word().equals(value))
                .findFirst();
        attempt(() -> {
            if (type.isPresent()) {
                document.change(document.text().withType(type.get(), winding), "type of winding");
            } else {
                document.edit(path, value);
                document.seal();
            }
        });
    }

    private void attempt(Runnable change) {
        try {
            change.run();
        } catch (IllegalArgumentException e) {
            complain.accept(e.getMessage());
        }
    }

    /** The field of a path as problems name it. */
    Optional<JComponent> input(String path) {
        return Optional.ofNullable(rows.get(path)).map(r -> r.input);
    }

    private void showText() {
        JobText text = document.text();
        quiet = true;
        Optional<Job> job = text.job();
        for (Row row : rows.values()) {
            String value = text.get(row.path);
            if (row.input instanceof JTextField field) {
                if (!field.getText().strip().equals(value)) {
                    field.setText(value);
                }
                field.setEditable(text.editable());
            } else if (row.input instanceof JComboBox<?> box) {
                choose(box, value.isEmpty() ? usual(row.path, job) : value);
                box.setEnabled(text.editable());
            }
        }
        quiet = false;
        List<Problem> left = new ArrayList<>(text.problems());
        for (Row row : rows.values()) {
            List<String> said = new ArrayList<>();
            left.removeIf(p -> {
                boolean here = p.field().equals(row.path) || p.field().startsWith(row.path + "[");
                if (here) {
                    said.add(p.message());
                }
                return here;
            });
            if (!said.isEmpty()) {
                row.say(String.join("\n", said), "error", "✗");
            } else if (!text.problems().isEmpty() || row.reason.getText().startsWith("✗")) {
                row.say("", "", "");
            }
        }
        showUse(text);
        List<String> others = new ArrayList<>();
        left.forEach(p -> others.add("✗ " + (p.line() > 0 ? "line " + p.line() + ": " : "")
                + (p.field().isEmpty() ? "" : p.field() + ": ") + p.message()));
        elsewhere.setText(String.join("\n", others));
        elsewhere.setVisible(!others.isEmpty());
        if (!text.problems().isEmpty()) {
            rules.removeAll();
            rows.values().forEach(r -> r.ways.setVisible(false));
        }
        revalidate();
        repaint();
    }

    /** Fields that the type of winding has no use for are hidden, unless something stands in them. */
    private void showUse(JobText text) {
        Set<String> unused = Arrays.stream(WindingType.values())
                .filter(t -> t.word().equals(text.get("winding.type")))
                .findFirst()
                .map(JobReader::unused)
                .orElse(Set.of());
        for (String key : List.of("plex", "direction", "throw", "backSpan", "deadCoils", "leadOffset")) {
            String path = "winding." + key;
            boolean shown = !unused.contains(key) || !text.get(path).isEmpty();
            Row row = rows.get(path);
            row.label.setVisible(shown);
            row.input.setVisible(shown);
        }
    }

    private static String usual(String path, Optional<Job> job) {
        return job.map(j -> switch (path) {
                    case "armature.slotOneInLineWith" ->
                        j.armature().slotOneInLineWith().word();
                    case "winding.direction" ->
                        j.winding() instanceof WindingSpec.Regular r
                                ? r.direction().word()
                                : j.winding() instanceof WindingSpec.FrogLeg f
                                        ? f.direction().word()
                                        : "";
                    default -> "";
                })
                .orElse("");
    }

    @SuppressWarnings("unchecked")
    private static void choose(JComboBox<?> any, String value) {
        JComboBox<String> box = (JComboBox<String>) any;
        var model = (DefaultComboBoxModel<String>) box.getModel();
        if (value.isEmpty()) {
            return;
        }
        if (model.getIndexOf(value) < 0) {
            model.addElement(value);
        }
        if (!value.equals(box.getSelectedItem())) {
            box.setSelectedItem(value);
        }
    }

    /** Shows what the rules say; comes a moment after the text. */
    void show(JobState state) {
        winding = state.winding().or(() -> winding);
        if (state.text() != document.text() || !state.text().problems().isEmpty()) {
            return;
        }
        Map<String, List<Finding>> byRow = new LinkedHashMap<>();
        for (Finding f : state.findings()) {
            if (f.severity() != Severity.NOTE) {
                String path = PLACE.getOrDefault(f.rule(), "winding.type");
                String shown = rows.get(path).input.isVisible() ? path : "winding.type";
                byRow.computeIfAbsent(shown, p -> new ArrayList<>()).add(f);
            }
        }
        boolean waysShown = false;
        for (Row row : rows.values()) {
            List<Finding> said = byRow.getOrDefault(row.path, List.of());
            boolean error = said.stream().anyMatch(f -> f.severity() == Severity.ERROR);
            row.say(
                    String.join("\n", said.stream().map(Finding::message).toList()),
                    said.isEmpty() ? "" : error ? "error" : "warning",
                    error ? "✗" : "!");
            row.ways.removeAll();
            row.ways.setVisible(false);
            if (!said.isEmpty() && !waysShown && !state.waysOut().isEmpty()) {
                waysShown = true;
                ways(row, state.waysOut());
            }
        }
        rules.removeAll();
        var c = new GridBagConstraints();
        c.gridx = 0;
        c.weightx = 1;
        c.fill = GridBagConstraints.HORIZONTAL;
        c.insets = new Insets(2, 0, 4, 0);
        for (Finding f : state.findings()) {
            if (f.severity() == Severity.NOTE) {
                var note = new Wrapped(260);
                note.setText("· " + f.message());
                note.setToolTipText(f.source().title());
                rules.add(note, c);
            }
        }
        revalidate();
        repaint();
    }

    private void ways(Row row, List<WayOut> ways) {
        var c = new GridBagConstraints();
        c.gridx = 0;
        c.weightx = 1;
        c.fill = GridBagConstraints.HORIZONTAL;
        c.insets = new Insets(1, 0, 1, 0);
        for (WayOut way : ways) {
            var button = new JButton(Ui.html(way.words(), Ui.px(230)));
            button.getAccessibleContext().setAccessibleName(way.words());
            button.setName("way out");
            button.addActionListener(e -> attempt(() -> {
                document.change(way.in(document.text()), "way out");
                row.input.requestFocusInWindow();
            }));
            row.ways.add(button, c);
        }
        row.ways.setVisible(true);
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return new Dimension(Ui.px(300), getPreferredSize().height);
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() != null && getParent().getHeight() > getPreferredSize().height;
    }
}
