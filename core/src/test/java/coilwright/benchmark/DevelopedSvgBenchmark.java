package coilwright.benchmark;

import coilwright.drawing.Drawing;
import coilwright.drawing.DrawingView;
import coilwright.drawing.SampleWindings;
import coilwright.drawing.SvgWriter;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Winding;
import java.io.StringWriter;
import java.util.Collection;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/**
 * The developed drawing of a 400-bar lap winding, laid out and written as SVG, against writing as many ready-made
 * elements of six short attributes. The first should take at most five times the second.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class DevelopedSvgBenchmark {
    private static final XMLOutputFactory FACTORY = XMLOutputFactory.newDefaultFactory();

    private Winding winding;
    private int elements;

    /** Builds the winding and counts the elements of its drawing. */
    @Setup
    public void setUp() {
        winding = SampleWindings.bars400();
        elements = drawing().size();
    }

    private Drawing drawing() {
        return DrawingView.DEVELOPED.draw(winding, ViewOptions.of("Benchmark")).first();
    }

    /** From winding to SVG. */
    @Benchmark
    public String layOutAndWrite() {
        return SvgWriter.write(drawing());
    }

    /** The same number of elements with nothing to work out. */
    @Benchmark
    public String writeReadyElements() throws XMLStreamException {
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

    /** Runs both and prints the ratio. */
    public static void main(String[] args) throws RunnerException {
        System.setProperty("java.class.path", NetworkBenchmark.classPath());
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(DevelopedSvgBenchmark.class.getSimpleName())
                        .forks(1)
                        .warmupIterations(10)
                        .warmupTime(TimeValue.seconds(3))
                        .measurementIterations(8)
                        .measurementTime(TimeValue.seconds(2))
                        .build())
                .run();
        double drawing = score(results, "layOutAndWrite");
        double plain = score(results, "writeReadyElements");
        System.out.printf(
                Locale.ROOT,
                "400-bar developed SVG %.2f ms, as many ready elements %.2f ms, ratio %.2f%n",
                drawing,
                plain,
                drawing / plain);
    }

    private static double score(Collection<RunResult> results, String name) {
        return results.stream()
                .filter(r -> r.getParams().getBenchmark().endsWith("." + name))
                .mapToDouble(r -> r.getPrimaryResult().getScore())
                .findFirst()
                .orElseThrow();
    }
}
