package coilwright.drawing;

/**
 * How large the bands of a ring are, from the middle outwards.
 *
 * @param middle of the ring
 * @param scale of its bands, 1 at full size
 * @param shaft radius of the shaft, mm
 * @param barIn inner radius of the bars, mm
 * @param barOut outer radius of the bars, mm
 * @param coreIn inner radius of the slots, mm
 * @param coreOut outer radius of the slots, mm
 * @param apexOut where the longest coil turns round at the back, mm
 * @param poleIn inner radius of the poles, mm
 * @param poleOut outer radius of the poles, mm
 * @param rotorAngle of slot 1's centre line, degrees
 */
record RingSizes(
        Point middle,
        double scale,
        double shaft,
        double barIn,
        double barOut,
        double coreIn,
        double coreOut,
        double apexOut,
        double poleIn,
        double poleOut,
        double rotorAngle) {
    Point at(double radius, double degrees) {
        return Point.polar(middle.x(), middle.y(), radius, degrees);
    }
}
