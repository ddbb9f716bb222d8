package coilwright.cli;

import coilwright.job.Visible;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;

/** Reads numbers and names of files from the command line, and says in words what is wrong with one. */
final class Values {
    private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]{1,20}");
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?([0-9]{1,12}(\\.[0-9]{0,20})?|\\.[0-9]{1,20})([eE][+-]?[0-9]{1,2})?");

    private Values() {}

    static void register(CommandLine line) {
        line.registerConverter(int.class, Values::whole);
        line.registerConverter(Integer.class, Values::whole);
        line.registerConverter(Long.class, Values::wholeLong);
        line.registerConverter(double.class, Values::number);
        line.registerConverter(Double.class, Values::number);
        line.registerConverter(Path.class, Values::path);
    }

    private static int whole(String text) {
        long number = wholeLong(text);
        if (number != (int) number) {
            throw wrong(text, "a whole number from " + Integer.MIN_VALUE + " to " + Integer.MAX_VALUE);
        }
        return (int) number;
    }

    private static long wholeLong(String text) {
        if (!WHOLE.matcher(text).matches()) {
            throw wrong(text, "a whole number");
        }
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw wrong(text, "a whole number from " + Long.MIN_VALUE + " to " + Long.MAX_VALUE);
        }
    }

    private static double number(String text) {
        if (!NUMBER.matcher(text).matches()) {
            throw wrong(text, "a number such as 1.5");
        }
        return Double.parseDouble(text);
    }

    private static Path path(String text) {
        if (text.isEmpty()) {
            throw new TypeConversionException("is empty, but must be the name of a file");
        }
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            String inUnicode = StandardCharsets.UTF_8.newEncoder().canEncode(text) && text.indexOf('\0') < 0
                    ? ": set the language of the system to one in UTF-8, such as LC_ALL=C.UTF-8"
                    : "";
            throw new TypeConversionException(
                    "is \"" + Visible.cut(text) + "\", which cannot be the name of a file here" + inUnicode);
        }
    }

    private static TypeConversionException wrong(String text, String wanted) {
        return new TypeConversionException("is \"" + Visible.cut(text) + "\", but must be " + wanted);
    }
}
