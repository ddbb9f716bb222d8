package coilwright.winding;

/** The published sources that rules, formulas and limits cite. */
public enum References {
    /** A rule of the trade, written in no one place. */
    COMMON_PRACTICE("common practice"),
    /** Follows by arithmetic from the definitions. */
    ARITHMETIC("by arithmetic from the definitions"),
    /** Lessons on DC armature winding with printed tables of slots and bars. */
    NIMI("NIMI (Government of India, DGT), Electrician (CITS) Trade Theory, vol. 2, lessons 86-92"),
    /** Notes on wave, lap and uniform-pitch windings, 1916 to 1921. */
    ROLLS_ROYCE_NOTES(
            "Rolls-Royce experimental archive, notes on armature windings, 1916-1921 (Sir Henry Royce Memorial Foundation)"),
    /** Solved examples on lap and wave windings. */
    BAKSHI("U. A. Bakshi and M. V. Bakshi, Electrical Machines I / DC Machines, solved examples"),
    /** Coil span and back pitch for several sides in a slot. */
    NAGRATH_KOTHARI("I. J. Nagrath and D. P. Kothari, Electric Machines, ch. 7"),
    /** Rules of lap and wave windings. */
    THERAJA("B. L. Theraja and A. K. Theraja, A Textbook of Electrical Technology, vol. II, ch. 26"),
    /** Drum windings and their faults. */
    HAWKINS("N. Hawkins, Hawkins Electrical Guide, vols. 2 and 3 (1914)"),
    /** Multiplex and mixed windings. */
    ARNOLD("E. Arnold, Die Theorie der Gleichstrommaschine, vol. 1"),
    /** Windings by fields. */
    ARNOLD_ARMATURES("E. Arnold, Die Ankerwicklungen und Ankerkonstruktionen, 2nd ed., pp. 74-81"),
    /** Tests and feed points by winding type. */
    TRAINING_MODULE("Identification and Testing of DC Armatures, training module JQR 251.36/.37/.41, pp. 3-5"),
    /** Combined lap and wave winding. */
    PATENT_CH124206("Swiss patent CH 124206 (1926), combined lap and wave winding"),
    /** Wave windings, coils between neighbouring bars. */
    KHARAGPUR_NOTES("T. K. Bhattacharya, lecture notes on DC machines (IIT Kharagpur)"),
    /** Duplex windings, brush width and pitch. */
    POLISH_LECTURE_NOTES("lecture notes on commutator windings (lap and duplex lap)"),
    /** Russian textbook, windings in elementary slots. */
    KULIK("Yu. A. Kulik, Elektricheskie mashiny, ch. 2"),
    /** Dummy coils. */
    DUMMY_COIL_NOTES("notes on dummy coils in wave windings after Theraja, vol. II"),
    /** Choice of coil span. */
    EGYCON("EGYCON lesson 3, slides on coil span"),
    /** Chording and winding factors, from memory. */
    CLAYTON("A. E. Clayton and N. N. Hancock, The Performance and Design of Direct Current Machines (from memory)");

    private final String title;

    References(String title) {
        this.title = title;
    }

    /** {@return title as printed beside a value} */
    public String title() {
        return title;
    }
}
