package coilwright.samples;

import coilwright.drawing.DrawingFiles;
import coilwright.drawing.DrawingView;
import coilwright.drawing.Highlight;
import coilwright.drawing.ViewOptions;
import coilwright.winding.Armature;
import coilwright.winding.CoilSpan;
import coilwright.winding.Direction;
import coilwright.winding.Winding;
import coilwright.winding.WindingSpec;
import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalDouble;

/** Builds a winding without a job file and writes it as a drawing, coil 1 drawn heavily. */
public final class DrawAWinding {
    private DrawAWinding() {}

    public static void main(String[] args) throws IOException {
        Path file = Path.of(args.length > 0 ? args[0] : "wave-winding.svg");
        Winding winding = Winding.build(
                Armature.of(17, 17, 4),
                WindingSpec.wave(1, Direction.PROGRESSIVE).withSpan(CoilSpan.ofThrow(4)));
        ViewOptions options = ViewOptions.of("A wave winding of 17 coils").withHighlight(Highlight.ofCoils(1));
        DrawingFiles.write(DrawingView.DEVELOPED.draw(winding, options), file, OptionalDouble.empty())
                .forEach(System.out::println);
    }
}
