package coilwright.drawing;

/** The one number format of drawings: at most two decimals (0.01 mm), no trailing zeros. */
final class Decimal {
    private Decimal() {}

    static String of(double x) {
        long hundredths = Math.round(x * 100);
        if (hundredths % 100 == 0) {
            return Long.toString(hundredths / 100);
        }
        var out = new StringBuilder(8);
        if (hundredths < 0) {
            out.append('-');
        }
        long size = Math.abs(hundredths);
        out.append(size / 100).append('.').append((char) ('0' + size / 10 % 10));
        if (size % 10 != 0) {
            out.append((char) ('0' + size % 10));
        }
        return out.toString();
    }
}
