package coilwright.benchmark;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingView;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Armature;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Drawings of a lap winding, laid out and written as SVG, against writing as many ready-made elements of six short
 * attributes. The first should take at most five times the second.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class DrawingBenchmark {
    private static final XMLOutputFactory FACTORY = XMLOutputFactory.newDefaultFactory();

    /** Number of bars. */
    @Param({"100", "200", "400"})
    public int bars;

    private Winding winding;
    private int developedElements;
    private int roundElements;

    /** Builds the winding and counts the elements of its drawings. */
    @Setup
    public void setUp() {
        winding = Winding.build(Armature.of(bars / 4, bars, 8), WindingSpec.lap(1, Direction.PROGRESSIVE));
        developedElements = drawing(DrawingView.DEVELOPED).size();
        roundElements = drawing(DrawingView.ROUND).size();
    }

    private Drawing drawing(DrawingView view) {
        return view.draw(winding, ViewOptions.of("Benchmark")).first();
    }

    /** From winding to SVG, rolled out flat. */
    @Benchmark
    public String developed() {
        return SvgWriter.write(drawing(DrawingView.DEVELOPED));
    }

    /** From winding to SVG, from the commutator end. */
    @Benchmark
    public String round() {
        return SvgWriter.write(drawing(DrawingView.ROUND));
    }

    /** As many elements as the developed drawing has, with nothing to work out. */
    @Benchmark
    public String readyForDeveloped() throws XMLStreamException {
        return ready(developedElements);
    }

    /** As many elements as the round drawing has, with nothing to work out. */
    @Benchmark
    public String readyForRound() throws XMLStreamException {
        return ready(roundElements);
    }

    private static String ready(int elements) throws XMLStreamException {
        var text = new StringWriter(1 << 16);
        XMLStreamWriter out = FACTORY.createXMLStreamWriter(text);
        out.writeStartElement("svg");
        for (int i = 0; i < elements; i++) {
            out.writeEmptyElement("line");
            out.writeAttribute("class", "coil-top");
            out.writeAttribute("x1", "123.45");
            out.writeAttribute("y1", "67.89");
            out.writeAttribute("x2", "234.56");
            out.writeAttribute("y2", "78.9");
            out.writeAttribute("data-coil", "123");
            out.writeCharacters("\n");
        }
        out.writeEndElement();
        out.close();
        return text.toString();
    }
}
