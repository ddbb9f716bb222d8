package coilwright.samples;

import coilwright.winding.Severity;
import coilwright.winding.WindingSearch;

/** Asks which windings fit a core of 14 slots on 4 poles, and prints those that no rule warns of. */
public final class ListWindingsThatFit {
    private ListWindingsThatFit() {}

    public static void main(String[] args) {
        int slots = args.length > 0 ? Integer.parseInt(args[0]) : 14;
        int poles = args.length > 1 ? Integer.parseInt(args[1]) : 4;
        WindingSearch.Result result = WindingSearch.find(WindingSearch.Query.of(slots, poles));
        for (WindingSearch.Candidate c : result.possible()) {
            if (c.findings().stream().noneMatch(f -> f.severity() == Severity.WARNING)) {
                System.out.println(c.winding().type().word() + " of plex " + c.plex() + ", "
                        + c.direction().word() + ": "
                        + c.winding().armature().bars() + " bars, "
                        + c.winding().deadCoils().size() + " dead coils, throw 1-" + (1 + c.throwSlots()) + ", "
                        + c.winding().parallelPaths().orElseThrow() + " paths");
            }
        }
        System.out.println(result.refused().size() + " others do not fit; the first because "
                + result.refused().stream().findFirst().map(r -> r.reason()).orElse("(none)"));
    }
}
