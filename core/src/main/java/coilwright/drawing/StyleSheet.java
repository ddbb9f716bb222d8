package coilwright.drawing;

/**
 * The embedded style sheet. Kept to plain hex colours, opacity and class, compound and child selectors, which every
 * SVG reader takes.
 */
final class StyleSheet {
    private static final String RULES = """
            text{font-family:"DejaVu Sans",sans-serif;fill:%ink;stroke:none}
            line,polyline,path,polygon,rect,circle{fill:none;stroke:%ink;stroke-width:.25;stroke-linecap:round;stroke-linejoin:round}
            .paper{fill:#ffffff;stroke:none}
            .core{fill:%core;stroke:none}
            .opening{fill:#ffffff;stroke:none}
            .shaft{fill:%core;stroke:%grey;stroke-width:.3}
            .coil-top{stroke:%top;stroke-width:.42}
            .coil-bottom{stroke:%bottom;stroke-width:.42;stroke-dasharray:1.5 1}
            .fine .coil-top{stroke-width:.14}
            .fine .coil-bottom{stroke-width:.14;stroke-dasharray:.9 .6}
            .fine circle.coil-top{fill:%top;stroke:none}
            .fine circle.coil-bottom{fill:#ffffff;stroke-dasharray:none}
            .dense .coil-top{stroke-width:.3}
            .dense .coil-bottom{stroke-width:.3;stroke-dasharray:1.2 .8}
            .second-set .coil-top{stroke:%second;stroke-dasharray:6 .8}
            .second-set .coil-bottom{stroke:%third;stroke-dasharray:2.6 .9 .3 .9}
            .second-set text.coil-top{fill:%second;stroke:none}
            .second-set text.coil-bottom{fill:%third;stroke:none}
            .second-set circle.coil-top{fill:%second;stroke:none}
            .second-set circle.coil-bottom{stroke:%third}
            .dead .coil-top,.dead .coil-bottom{stroke:%grey}
            text.coil-top{fill:%top;stroke:none}
            text.coil-bottom{fill:%bottom;stroke:none}
            .dead text.coil-top{fill:%grey;stroke:none}
            .cap{stroke:%fault;stroke-width:.7}
            .dead .cap{stroke:%grey}
            circle.coil-top,.dense circle.coil-top{fill:%top;stroke:none}
            circle.coil-bottom,.dense circle.coil-bottom{fill:#ffffff;stroke:%bottom;stroke-width:.35;stroke-dasharray:none}
            .dead circle.coil-top{fill:%grey}
            .dead circle.coil-bottom{stroke:%grey}
            .bar>rect,.bar>path{fill:%bar;stroke:%edge;stroke-width:.25}
            .bar.fine>path{stroke-width:.1}
            .bar>circle{fill:#ffffff;stroke:%edge;stroke-width:.25}
            .slot>rect,.slot>path{stroke:%grey;stroke-width:.2}
            .slot>.plate{fill:#ffffff;stroke:%grey;stroke-width:.2}
            .plate{fill:#ffffff;stroke:none}
            .north{fill:%north;stroke:%edge;stroke-width:.3}
            .south{fill:%south;stroke:%edge;stroke-width:.3;stroke-dasharray:2.4 1.2}
            .brush>rect,.brush>path,.brush>circle{fill:%carbon;stroke:%carbon}
            .brush>text{fill:#ffffff}
            .wire{stroke:%ink;stroke-width:.45}
            circle.wire{fill:%ink;stroke:none}
            .leader{stroke:%grey;stroke-width:.15}
            .guide{stroke:%grey;stroke-width:.2;stroke-dasharray:3 1 .4 1}
            .box>rect{fill:#ffffff;stroke-width:.5}
            .path-1{stroke:%p1}
            .path-2{stroke:%p2}
            .path-3{stroke:%p3}
            .path-4{stroke:%p4}
            .path-5{stroke:%p5}
            .path-6{stroke:%p6}
            .path-7{stroke:%p7}
            .path-8{stroke:%p8}
            .shorted>rect{stroke:%fault;stroke-width:.5;stroke-dasharray:.8 .8}
            .dead>rect{stroke:%grey;stroke-width:.4;stroke-dasharray:3 1 .4 1}
            .bar.dense>path{stroke-width:.1}
            .growler{fill:%core;stroke:%grey;stroke-width:.3}
            .face{stroke:%ink;stroke-width:1.1}
            .flux{stroke:%p3;stroke-width:.35;stroke-dasharray:2.4 .9}
            polygon.flux{fill:%p3;stroke-dasharray:none}
            .probe{stroke:%mark;stroke-width:.6}
            circle.probe{fill:%mark;stroke:none}
            text.probe{fill:%mark;stroke:none}
            .instrument{fill:#ffffff;stroke:%ink;stroke-width:.5}
            .axis{stroke:%ink;stroke-width:.35}
            .grid{stroke:%grey;stroke-width:.12}
            .expected{fill:%south;stroke:%top;stroke-width:.25}
            .read{fill:%ink;stroke:none}
            .explained{stroke:%mark;stroke-width:.4}
            .rule{stroke:%grey;stroke-width:.2}
            .head{fill:%core;stroke:none}
            .caution{stroke:%fault;stroke-width:.7}
            text.caution{fill:%fault;stroke:none}
            .tick{stroke:%ink;stroke-width:.3}
            .note,.legend{fill:%soft}
            .halo{stroke:#ffffff;stroke-width:2.2}
            .highlight .coil-top{stroke:%mark;stroke-width:1.1}
            .highlight .coil-bottom{stroke:%mark;stroke-width:1.1;stroke-dasharray:2.6 2}
            .highlight text.coil-top,.highlight text.coil-bottom{fill:%mark;stroke:none}
            .highlight>rect,.highlight>path,.highlight>circle{stroke:%mark;stroke-width:.9}
            .highlight>.halo{stroke:#ffffff;stroke-width:2.2}
            .highlight>.plate{stroke:%mark;stroke-width:.6}
            .highlight>text{fill:%mark}
            .highlight circle.coil-top{fill:%mark;stroke:%mark}
            .highlight circle.coil-bottom{stroke:%mark;stroke-dasharray:none}
            .quiet .coil-top{stroke:%grey;stroke-width:.18}
            .quiet .coil-bottom{stroke:%grey;stroke-width:.18;stroke-dasharray:.5 .5}
            .quiet circle.coil-top{fill:%grey;stroke:none}
            .quiet circle.coil-bottom{fill:#ffffff;stroke:%grey;stroke-dasharray:none}
            .quiet text.coil-top{fill:%grey;stroke:none}
            line.quiet{stroke:%grey;stroke-width:.18}
            .changed .coil-top,.changed .coil-bottom{stroke:%ink;stroke-width:.35;stroke-dasharray:none}
            .changed circle.coil-top{fill:%ink;stroke:none}
            .changed circle.coil-bottom{fill:#ffffff;stroke:%ink}
            .changed text.coil-top{fill:%ink;stroke:none}
            line.changed{stroke:%ink;stroke-width:.35}
            .planned-lead{stroke:%top;stroke-width:.55;stroke-dasharray:2.2 1.3}
            circle.planned-lead{fill:#ffffff;stroke:%top;stroke-width:.35;stroke-dasharray:none}
            text.planned-lead{fill:%top;stroke:none}
            .found-lead{stroke:%mark;stroke-width:1}
            circle.found-lead{fill:%mark;stroke:none}
            text.found-lead{fill:%mark;stroke:none}
            .planned-side .coil-top,.planned-side .coil-bottom{stroke:%top;stroke-width:.55;stroke-dasharray:2.2 1.3}
            .planned-side circle.coil-top,.planned-side circle.coil-bottom{fill:#ffffff;stroke:%top;stroke-width:.35;stroke-dasharray:none}
            .planned-side text.coil-top{fill:%top;stroke:none}
            .found-side .coil-top,.found-side .coil-bottom{stroke:%mark;stroke-width:1;stroke-dasharray:none}
            .found-side circle.coil-top,.found-side circle.coil-bottom{fill:%mark;stroke:none}
            .found-side text.coil-top{fill:%mark;stroke:none}
            .lifted .coil-top,.lifted .coil-bottom{stroke:%fault;stroke-width:1;stroke-dasharray:none}
            .lifted circle.coil-top,.lifted circle.coil-bottom{fill:%fault;stroke:none}
            .lifted text.coil-top{fill:%fault;stroke:none}
            .lifted .lifted,line.lifted{stroke:%fault;stroke-width:1}
            text.lifted{fill:%fault;stroke:none}
            .idle .coil-top,.idle .coil-bottom{stroke:%second;stroke-width:.6;stroke-dasharray:4 1 .6 1}
            .idle circle.coil-top,.idle circle.coil-bottom{fill:#ffffff;stroke:%second;stroke-dasharray:none}
            .idle text.coil-top{fill:%second;stroke:none}
            line.idle{stroke:%second;stroke-width:.6;stroke-dasharray:4 1 .6 1}
            .bridge{stroke:%mark;stroke-width:1.7}
            circle.bridge{fill:%mark;stroke:none}
            text.bridge{fill:%mark;stroke:none}
            .dense .planned-lead{stroke-width:.4}
            .dense .found-lead{stroke-width:.75}
            .liner{fill:%lining;stroke:%ink;stroke-width:.15}
            .separator{fill:%grey;stroke:%ink;stroke-width:.3}
            .wedge{fill:%north;stroke:%ink;stroke-width:.3}
            .covering{fill:#ffffff;stroke:%ink;stroke-width:.12}
            .copper-top{fill:%bar;stroke:%ink;stroke-width:.15}
            .copper-bottom{fill:%bottomfill;stroke:%ink;stroke-width:.15}
            .fine .covering,.fine .copper-top,.fine .copper-bottom{stroke-width:.06}
            .dimension{stroke:%grey;stroke-width:.2}
            .trace{stroke:%top;stroke-width:.3}
            .fit{stroke:%bottom;stroke-width:.45;stroke-dasharray:2.4 1}
            .tool{stroke:%mark;stroke-width:.8}
            .after{fill:#ffffff;stroke:%mark;stroke-width:.25}
            .standout{stroke:%fault;stroke-width:.35}
            text.standout{fill:%fault;stroke:none}
            .fault{stroke:%fault;stroke-width:.9;stroke-dasharray:.6 1.2}
            text.fault{fill:%fault;stroke:none}
            """;

    private static final String[] COLOURS = {
        "ink",
        "#1b2733",
        "core",
        "#e6e9ed",
        "grey",
        "#75808b",
        "top",
        "#15539e",
        "bottom",
        "#b3480f",
        "fault",
        "#a3123a",
        "bar",
        "#f6e7d3",
        "edge",
        "#6f4e2f",
        "north",
        "#f4d3bf",
        "south",
        "#d3e2f2",
        "carbon",
        "#30363c",
        "soft",
        "#4a5560",
        "second",
        "#17694c",
        "third",
        "#6d3a93",
        "mark",
        "#b0106b",
        "p1",
        "#15539e",
        "p2",
        "#b3480f",
        "bottomfill",
        "#b06a32",
        "lining",
        "#bcd6ef",
        "p3",
        "#1c7152",
        "p4",
        "#6d3a93",
        "p5",
        "#7c6200",
        "p6",
        "#0d6f7f",
        "p7",
        "#a12d5b",
        "p8",
        "#444a52"
    };

    private static final String[] GREYS = {
        "ink",
        "#000000",
        "core",
        "#e8e8e8",
        "grey",
        "#777777",
        "top",
        "#000000",
        "bottom",
        "#000000",
        "fault",
        "#000000",
        "bar",
        "#f2f2f2",
        "edge",
        "#444444",
        "north",
        "#dcdcdc",
        "south",
        "#ffffff",
        "carbon",
        "#333333",
        "soft",
        "#333333",
        "bottomfill",
        "#6a6a6a",
        "lining",
        "#c4c4c4",
        "second",
        "#000000",
        "third",
        "#000000",
        "mark",
        "#000000",
        "p1",
        "#000000",
        "p2",
        "#000000",
        "p3",
        "#000000",
        "p4",
        "#000000",
        "p5",
        "#000000",
        "p6",
        "#000000",
        "p7",
        "#000000",
        "p8",
        "#000000"
    };

    private static final String IN_COLOUR = fill(COLOURS);
    private static final String IN_GREY = fill(GREYS);

    private StyleSheet() {}

    private static String fill(String[] values) {
        String css = RULES;
        for (int i = 0; i < values.length; i += 2) {
            css = css.replaceAll("%" + values[i] + "\\b", values[i + 1]);
        }
        return css;
    }

    static String of(Palette palette) {
        return palette == Palette.COLOUR ? IN_COLOUR : IN_GREY;
    }
}
