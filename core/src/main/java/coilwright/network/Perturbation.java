package coilwright.network;

import java.util.Arrays;

/**
 * Solves a factorised network with a few branches changed, from the factor of the unchanged one.
 *
 * <p>Each changed branch is a branch put in parallel with the old one: of conductance g' − g for a change from g to g',
 * of −g for a branch taken away, of zero ohms for a link. With u<sub>e</sub> the pair of its ends, w<sub>e</sub> the
 * voltages per ampere through that pair and H<sub>ef</sub> = u<sub>e</sub>·w<sub>f</sub>, its current j<sub>e</sub>
 * follows from
 *
 * <pre>  Σ (H_ef + r_e δ_ef) j_f − (t_a − t_b) = u_e·x + emf_e        x: the unchanged network's voltages</pre>
 *
 * <p>and the voltages are then x − Σ w<sub>e</sub> j<sub>e</sub> + t. This is the Sherman–Morrison–Woodbury formula
 * (Golub and Van Loan, Matrix Computations, section 2.1.4) written in currents, so that a resistance of exactly zero is
 * as good as any. A voltage feed is one more such branch. The t are the shifts of parts that the new branches join to
 * others, each with the equation that as much current leaves the part through them as the feeds bring in.
 *
 * <p>Where taking branches away parts the network, one of them is left in place for each new part. It carries no
 * current once each part's feeds balance, so that the voltages within the parts come out exactly as if it were gone; and
 * between the parts no voltage is given.
 *
 * <p>Not for use by several threads.
 */
final class Perturbation {
    enum Outcome {
        SOLVED,
        /** The result would lose digits, or the change is not of the kind handled here: factorise anew. */
        ILL_CONDITIONED,
        UNSOLVABLE
    }

    /** Least pivot of the scaled small matrix: rounding of 1e-14 or so then stays below 1e-10. */
    private static final double LEAST_PIVOT = 1e-4;

    /** Greatest loss by cancellation, shared with the loss by small pivots. */
    private static final double MOST_CANCELLATION = 1e5;

    private final Factorisation base;

    private int alteredCount;
    private int[] altered = new int[4];
    private Branch[] alteredTo = new Branch[4];
    private int addedCount;
    private Branch[] added = new Branch[4];

    private boolean built;
    private boolean beyond;
    private int count;
    private int[] a = new int[4];
    private int[] b = new int[4];
    private double[] r = new double[4];
    private double[] emf = new double[4];
    private double[][] w = new double[4][];
    /** Branch that the element takes away, or −1. */
    private int[] takes = new int[4];
    /** Branch whose column the element uses, or −1. */
    private int[] along = new int[4];

    private int knownCount;
    private double[] known = new double[4];
    private double[][] knownColumn = new double[4][];
    private int[] knownAlong = new int[4];
    private int removals;
    private boolean crossing;

    private Parts parts;
    private boolean partsWithoutHeld;
    private boolean[] tie = new boolean[4];
    private boolean[] redundant = new boolean[4];
    private int[] groupNode = new int[8];
    private int[] groupParent = new int[8];
    private int groupSize;

    private int unknowns;
    private int rows;
    private double[][] column = new double[4][];
    private int[] columnAlong = new int[4];
    private int[] columnA = new int[4];
    private int[] columnB = new int[4];
    private double[] current = new double[4];
    private double[] matrix = new double[20];
    private double[] scale = new double[4];
    private int[] shiftOf;
    private boolean shifted;
    private double[] heldCurrent = new double[2];
    private double leastPivot = 1;
    private String trouble = "";

    Perturbation(Factorisation base) {
        this.base = base;
    }

    void clear() {
        alteredCount = 0;
        addedCount = 0;
        built = false;
    }

    /** What the branch has become by the changes so far. */
    Branch now(int branch) {
        for (int i = 0; i < alteredCount; i++) {
            if (altered[i] == branch) {
                return alteredTo[i];
            }
        }
        return base.branch(branch);
    }

    void alter(int branch, Branch to) {
        built = false;
        for (int i = 0; i < alteredCount; i++) {
            if (altered[i] == branch) {
                alteredTo[i] = to;
                return;
            }
        }
        if (alteredCount == altered.length) {
            altered = Arrays.copyOf(altered, 2 * alteredCount);
            alteredTo = Arrays.copyOf(alteredTo, 2 * alteredCount);
        }
        altered[alteredCount] = branch;
        alteredTo[alteredCount++] = to;
    }

    void add(Branch branch) {
        built = false;
        if (addedCount == added.length) {
            added = Arrays.copyOf(added, 2 * addedCount);
        }
        added[addedCount++] = branch;
    }

    int alteredCount() {
        return alteredCount;
    }

    int altered(int i) {
        return altered[i];
    }

    Branch alteredTo(int i) {
        return alteredTo[i];
    }

    int addedCount() {
        return addedCount;
    }

    Branch added(int i) {
        return added[i];
    }

    /** Why the last feeds could not be satisfied. */
    String trouble() {
        return trouble;
    }

    // ---- the changes as elements

    private void build() {
        count = 0;
        knownCount = 0;
        removals = 0;
        crossing = false;
        beyond = false;
        partsWithoutHeld = false;
        int linksOpened = 0;
        for (int i = 0; i < alteredCount; i++) {
            int e = altered[i];
            Branch old = base.branch(e);
            Branch now = alteredTo[i];
            if (old.isLink()) {
                if (!now.isLink()) {
                    linksOpened++;
                    beyond |= linksOpened > 1 || base.linkBridges()[e];
                }
                continue;
            }
            if (base.from(e) == base.to(e)) {
                continue;
            }
            double g = base.conductance(e);
            if (now.isLink()) {
                element(e, 0, 0, -1);
            } else if (now.isOpen()) {
                if (g != 0) {
                    element(e, -1 / g, old.emf(), e);
                    removals++;
                }
            } else {
                double h = now.conductance();
                double more = h - g;
                if (g == 0) {
                    element(e, now.resistance(), now.emf(), -1);
                } else if (more != 0) {
                    element(e, 1 / more, (h * now.emf() - g * old.emf()) / more, -1);
                } else if (now.emf() != old.emf()) {
                    known(h * (now.emf() - old.emf()), e);
                }
            }
        }
        for (int i = 0; i < addedCount; i++) {
            Branch branch = added[i];
            int p = base.joined(branch.from());
            int q = base.joined(branch.to());
            if (!branch.isOpen() && p != q) {
                element(p, q, base.pairColumn(p, q), -1, branch.resistance(), branch.emf(), -1);
            }
        }
        built = true;
    }

    private void element(int branch, double ohms, double volts, int taken) {
        element(base.from(branch), base.to(branch), base.column(branch), branch, ohms, volts, taken);
    }

    private void element(int p, int q, double[] perAmpere, int branch, double ohms, double volts, int taken) {
        if (count == a.length) {
            int more = 2 * count;
            a = Arrays.copyOf(a, more);
            b = Arrays.copyOf(b, more);
            r = Arrays.copyOf(r, more);
            emf = Arrays.copyOf(emf, more);
            w = Arrays.copyOf(w, more);
            takes = Arrays.copyOf(takes, more);
            along = Arrays.copyOf(along, more);
            tie = Arrays.copyOf(tie, more);
            redundant = Arrays.copyOf(redundant, more);
        }
        a[count] = p;
        b[count] = q;
        r[count] = ohms;
        emf[count] = volts;
        w[count] = perAmpere;
        takes[count] = taken;
        along[count] = branch;
        tie[count] = false;
        redundant[count] = false;
        count++;
        crossing |= base.part(p) != base.part(q);
    }

    private void known(double amperes, int branch) {
        if (knownCount == known.length) {
            known = Arrays.copyOf(known, 2 * knownCount);
            knownColumn = Arrays.copyOf(knownColumn, 2 * knownCount);
            knownAlong = Arrays.copyOf(knownAlong, 2 * knownCount);
        }
        known[knownCount] = amperes;
        knownAlong[knownCount] = branch;
        knownColumn[knownCount++] = base.column(branch);
    }

    // ---- which nodes hang together

    /** Joins what the links and voltage feeds join; says false if a voltage feed closes a ring of these. */
    private boolean group(Fed fed) {
        groupSize = 0;
        for (int e = 0; e < count; e++) {
            redundant[e] = r[e] == 0 && !groupJoin(a[e], b[e]);
        }
        // Groups of nodes at one voltage end here: those that voltage feeds join stand apart by their volts.
        int size = groupSize;
        int[] parents = fed.held == 0 ? groupParent : groupParent.clone();
        for (int h = 0; h < fed.held; h++) {
            if (fed.heldIn[h] == fed.heldOut[h] || !groupJoin(fed.heldIn[h], fed.heldOut[h])) {
                Feed feed = fed.feeds.stream()
                        .filter(Feed.Voltage.class::isInstance)
                        .skip(h)
                        .findFirst()
                        .orElseThrow();
                trouble = Fed.words(feed) + ": links or other voltage feeds already tie these nodes; "
                        + "take one of the ties away or feed a current";
                return false;
            }
        }
        groupSize = size;
        System.arraycopy(parents, 0, groupParent, 0, size);
        return true;
    }

    private boolean groupJoin(int p, int q) {
        int i = groupRoot(groupIndex(p, true));
        int j = groupRoot(groupIndex(q, true));
        groupParent[Math.max(i, j)] = Math.min(i, j);
        return i != j;
    }

    private int groupIndex(int node, boolean enter) {
        for (int i = 0; i < groupSize; i++) {
            if (groupNode[i] == node) {
                return i;
            }
        }
        if (!enter) {
            return -1;
        }
        if (groupSize == groupNode.length) {
            groupNode = Arrays.copyOf(groupNode, 2 * groupSize);
            groupParent = Arrays.copyOf(groupParent, 2 * groupSize);
        }
        groupNode[groupSize] = node;
        groupParent[groupSize] = groupSize;
        return groupSize++;
    }

    private int groupRoot(int i) {
        int root = i;
        while (groupParent[root] != root) {
            root = groupParent[root];
        }
        return root;
    }

    /** A contracted node that stands for all that new links join to this one. */
    int standsFor(int joinedNode) {
        if (groupSize == 0) {
            return joinedNode;
        }
        int i = groupIndex(joinedNode, false);
        return i < 0 ? joinedNode : groupNode[groupRoot(i)];
    }

    private void findParts(Fed fed) {
        if (partsWithoutHeld && fed.held == 0) {
            return;
        }
        Parts joint = new Parts(base.joinedCount());
        for (int e = 0; e < base.branchCount(); e++) {
            if (base.conductance(e) != 0 && !taken(e)) {
                joint.join(base.from(e), base.to(e));
            }
        }
        for (int e = 0; e < count; e++) {
            if (takes[e] < 0) {
                joint.join(a[e], b[e]);
            }
        }
        for (int h = 0; h < fed.held; h++) {
            joint.join(fed.heldIn[h], fed.heldOut[h]);
        }
        parts = joint.copy();
        for (int e = 0; e < count; e++) {
            tie[e] = takes[e] >= 0 && joint.join(a[e], b[e]);
        }
        partsWithoutHeld = fed.held == 0;
    }

    private boolean taken(int branch) {
        for (int e = 0; e < count; e++) {
            if (takes[e] == branch) {
                return true;
            }
        }
        return false;
    }

    private boolean feedsBalance(Fed fed) {
        if (fed.injectedSize == 0) {
            return true;
        }
        double[] into = new double[base.joinedCount()];
        for (int v = 0; v < into.length; v++) {
            into[parts.find(v)] += fed.injected[v];
        }
        for (int v = 0; v < into.length; v++) {
            if (!fed.isZero(into[v])) {
                for (Feed feed : fed.feeds) {
                    int p = base.joined(feed.in());
                    int q = base.joined(feed.out());
                    if (feed instanceof Feed.Current && parts.find(p) != parts.find(q)) {
                        trouble = Fed.words(feed) + ": nothing joins these nodes; feed two nodes of one part";
                        return false;
                    }
                }
            }
        }
        return true;
    }

    // ---- solving

    /**
     * Solves under some feeds.
     *
     * @param guarded whether to refuse a result that would lose digits
     */
    Outcome solve(Fed fed, boolean guarded) {
        if (!built) {
            build();
        }
        if (beyond) {
            return Outcome.ILL_CONDITIONED;
        }
        trouble = "";
        if (!group(fed)) {
            return Outcome.UNSOLVABLE;
        }
        shifted = false;
        boolean plain = !crossing && fed.balanced && (removals == 0 || (removals == 1 && !takesBridge()));
        if (plain) {
            parts = null;
            partsWithoutHeld = false;
            Arrays.fill(tie, 0, count, false);
        } else {
            findParts(fed);
            if (!feedsBalance(fed)) {
                return Outcome.UNSOLVABLE;
            }
        }
        gather(fed);
        rows = unknowns;
        if (!plain) {
            shifts();
        }
        fill(fed);
        return eliminate(guarded, fed);
    }

    private boolean takesBridge() {
        for (int e = 0; e < count; e++) {
            if (takes[e] >= 0 && base.bridges()[takes[e]]) {
                return true;
            }
        }
        return false;
    }

    private void gather(Fed fed) {
        int most = count + fed.held;
        if (most > column.length) {
            column = new double[2 * most][];
            columnAlong = new int[2 * most];
            columnA = new int[2 * most];
            columnB = new int[2 * most];
        }
        unknowns = 0;
        for (int e = 0; e < count; e++) {
            if (!tie[e] && !redundant[e]) {
                column[unknowns] = w[e];
                columnAlong[unknowns] = along[e];
                columnA[unknowns] = a[e];
                columnB[unknowns++] = b[e];
            }
        }
        for (int h = 0; h < fed.held; h++) {
            column[unknowns] = fed.heldColumns[h];
            columnAlong[unknowns] = -1;
            columnA[unknowns] = fed.heldIn[h];
            columnB[unknowns++] = fed.heldOut[h];
        }
    }

    /** Gives a row to each part of the unchanged network that the new branches join to another. */
    private void shifts() {
        Parts ofParts = new Parts(base.partCount());
        boolean any = false;
        for (int k = 0; k < unknowns; k++) {
            any |= ofParts.join(base.part(columnA[k]), base.part(columnB[k]));
        }
        if (!any) {
            return;
        }
        shifted = true;
        shiftOf = new int[base.partCount()];
        for (int p = 0; p < shiftOf.length; p++) {
            shiftOf[p] = ofParts.find(p) == p ? -1 : rows++;
        }
    }

    private void fill(Fed fed) {
        int width = rows + 1;
        if (matrix.length < rows * width) {
            matrix = new double[2 * rows * width];
        }
        if (current.length < rows) {
            current = new double[2 * rows];
            scale = new double[2 * rows];
        }
        Arrays.fill(matrix, 0, rows * width, 0);
        double[] x = fed.voltages;
        int k = 0;
        for (int e = 0; e < count; e++) {
            if (!tie[e] && !redundant[e]) {
                row(k, x, r[e], fed.sources ? emf[e] : 0, fed.sources, width);
                k++;
            }
        }
        for (int h = 0; h < fed.held; h++) {
            row(k, x, 0, -fed.volts[h], fed.sources, width);
            k++;
        }
        if (shifted) {
            for (int p = 0; p < shiftOf.length; p++) {
                if (shiftOf[p] >= 0) {
                    matrix[shiftOf[p] * width + rows] = fed.intoPart[p];
                }
            }
        }
    }

    private void row(int k, double[] x, double ohms, double volts, boolean sources, int width) {
        int p = columnA[k];
        int q = columnB[k];
        int at = k * width;
        for (int f = 0; f < unknowns; f++) {
            matrix[at + f] = column[f][p] - column[f][q];
        }
        double own = matrix[at + k];
        matrix[at + k] += ohms;
        double right = x[p] - x[q] + volts;
        if (sources) {
            for (int i = 0; i < knownCount; i++) {
                right -= known[i] * (knownColumn[i][p] - knownColumn[i][q]);
            }
        }
        matrix[at + rows] = right;
        double size = own + Math.abs(ohms);
        scale[k] = 1 / Math.sqrt(size > 0 ? size : base.typicalResistance());
        if (shifted) {
            int sp = shiftOf[base.part(p)];
            int sq = shiftOf[base.part(q)];
            if (sp != sq) {
                if (sp >= 0) {
                    matrix[at + sp] = -1;
                    matrix[sp * width + k] = 1;
                }
                if (sq >= 0) {
                    matrix[at + sq] = 1;
                    matrix[sq * width + k] = -1;
                }
            }
        }
    }

    private Outcome eliminate(boolean guarded, Fed fed) {
        int n = rows;
        int width = n + 1;
        double[] m = matrix;
        for (int s = unknowns; s < n; s++) {
            double most = 0;
            for (int k = 0; k < unknowns; k++) {
                if (m[s * width + k] != 0) {
                    most = Math.max(most, scale[k]);
                }
            }
            scale[s] = 1 / most;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                m[i * width + j] *= scale[i] * scale[j];
            }
            m[i * width + n] *= scale[i];
        }
        leastPivot = 1;
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int i = c + 1; i < n; i++) {
                if (Math.abs(m[i * width + c]) > Math.abs(m[best * width + c])) {
                    best = i;
                }
            }
            double pivot = m[best * width + c];
            if (pivot == 0 || (guarded && Math.abs(pivot) < LEAST_PIVOT)) {
                trouble = "the changed network's equations are singular";
                return guarded ? Outcome.ILL_CONDITIONED : Outcome.UNSOLVABLE;
            }
            leastPivot = Math.min(leastPivot, Math.abs(pivot));
            if (best != c) {
                for (int j = c; j <= n; j++) {
                    double swap = m[c * width + j];
                    m[c * width + j] = m[best * width + j];
                    m[best * width + j] = swap;
                }
            }
            for (int i = c + 1; i < n; i++) {
                double factor = m[i * width + c] / pivot;
                if (factor != 0) {
                    for (int j = c + 1; j <= n; j++) {
                        m[i * width + j] -= factor * m[c * width + j];
                    }
                }
            }
        }
        for (int c = n - 1; c >= 0; c--) {
            double sum = m[c * width + n];
            for (int j = c + 1; j < n; j++) {
                sum -= m[c * width + j] * current[j];
            }
            current[c] = sum / m[c * width + c];
        }
        for (int i = 0; i < n; i++) {
            current[i] *= scale[i];
        }
        if (heldCurrent.length < fed.held) {
            heldCurrent = new double[fed.held];
        }
        for (int h = 0; h < fed.held; h++) {
            heldCurrent[h] = -current[unknowns - fed.held + h];
        }
        return Outcome.SOLVED;
    }

    // ---- after solving

    /** Whether a voltage between two contracted nodes is defined. */
    boolean together(int p, int q) {
        return parts == null ? base.part(p) == base.part(q) : parts.find(p) == parts.find(q);
    }

    /** Voltage of contracted node p over q, which must be {@linkplain #together together}. */
    double difference(Fed fed, int p, int q) {
        double v = fed.voltages[p] - fed.voltages[q];
        for (int k = 0; k < unknowns; k++) {
            double[] c = column[k];
            v -= current[k] * (c[p] - c[q]);
        }
        if (fed.sources) {
            for (int i = 0; i < knownCount; i++) {
                v -= known[i] * (knownColumn[i][p] - knownColumn[i][q]);
            }
        }
        return shifted ? v + shift(p) - shift(q) : v;
    }

    /** Sum of the sizes of the terms that {@link #difference} adds up. */
    double effort(Fed fed, int p, int q) {
        double v = Math.abs(fed.voltages[p] - fed.voltages[q]);
        for (int k = 0; k < unknowns; k++) {
            double[] c = column[k];
            v += Math.abs(current[k] * (c[p] - c[q]));
        }
        return v;
    }

    private double shift(int p) {
        int s = shiftOf[base.part(p)];
        return s < 0 ? 0 : current[s];
    }

    /** Whether voltages are defined between the same nodes as in the unchanged network, and no part is shifted. */
    boolean partsUnchanged() {
        return parts == null;
    }

    /** Whether new links make one node of several. */
    boolean linksAdded() {
        return groupSize > 0;
    }

    /** Number of currents that, each times its column, make up the difference from the unchanged network. */
    int terms(Fed fed) {
        return unknowns + (fed.sources ? knownCount : 0);
    }

    double termCurrent(int k) {
        return k < unknowns ? current[k] : known[k - unknowns];
    }

    double[] termColumn(int k) {
        return k < unknowns ? column[k] : knownColumn[k - unknowns];
    }

    /** The branch whose column the term uses, or −1. */
    int termBranch(int k) {
        return k < unknowns ? columnAlong[k] : knownAlong[k - unknowns];
    }

    /** All voltages and currents of the changed network. */
    Solution solution(Network changed, Fed fed) {
        int n = changed.nodeCount();
        int[] joined = base.joined();
        int[] lowest = new int[base.joinedCount()];
        Arrays.fill(lowest, -1);
        int[] reference = new int[n];
        double[] voltage = new double[n];
        for (int node = 0; node < n; node++) {
            int p = standsFor(joined[node]);
            int root = parts == null ? base.part(p) : parts.find(p);
            if (lowest[root] < 0) {
                lowest[root] = node;
            }
            reference[node] = lowest[root];
            voltage[node] = difference(fed, p, standsFor(joined[lowest[root]]));
        }
        double[] feedCurrents = new double[fed.feeds.size()];
        int h = 0;
        for (int f = 0; f < feedCurrents.length; f++) {
            feedCurrents[f] = fed.feeds.get(f) instanceof Feed.Current given ? given.amperes() : heldCurrent[h++];
        }
        return new Solution(changed, fed.feeds, feedCurrents, voltage, reference);
    }

    /**
     * Whether the last digits of a result are in doubt: the currents are known to a unit in the last place over the least
     * pivot, and the voltages met on the way are cancelled down to the result.
     */
    boolean inDoubt(double effort, double result) {
        return effort > MOST_CANCELLATION * leastPivot * Math.abs(result);
    }

    /** Whether digits of the voltages as a whole are in doubt. */
    boolean inDoubt(Fed fed) {
        double most = 0;
        double effort = 0;
        int[] first = new int[base.joinedCount()];
        Arrays.fill(first, -1);
        for (int p = 0; p < first.length; p++) {
            int root = parts == null ? base.part(p) : parts.find(p);
            if (first[root] < 0) {
                first[root] = p;
            }
            most = Math.max(most, Math.abs(difference(fed, p, first[root])));
            effort = Math.max(effort, effort(fed, p, first[root]));
        }
        return inDoubt(effort, most);
    }
}
