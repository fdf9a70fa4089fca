package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;
import org.underlee.kit.SheetValue;

/**
 * Served bays side by side, with one plane of sheets below them all.
 *
 * @param runs in order of u
 */
record SheetGroup(FieldPlan plan, List<BayRun> runs) {

  /** How far the sheets' heads reach under the ledger: rain on its face falls on them. */
  private static final double UNDER_HEAD = 0.02;

  /** A narrower sheet has too few ribs to lie flat on the battens, and is lost in the cutting. */
  private static final int LEAST_PITCHES = 2;

  static List<SheetGroup> of(FieldPlan plan) {
    List<List<BayRun>> groups = new ArrayList<>();
    for (BayRun run : plan.served()) {
      List<BayRun> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
      if (!last.isEmpty() && last.get(last.size() - 1).bay().right().equals(run.bay().left())) {
        last.add(run);
      } else {
        groups.add(new ArrayList<>(List.of(run)));
      }
    }
    return groups.stream().map(g -> new SheetGroup(plan, List.copyOf(g))).toList();
  }

  /** The joist lines above, in order of u. */
  List<JoistLine> lines() {
    List<JoistLine> lines = new ArrayList<>(List.of(runs.get(0).bay().left()));
    runs.forEach(r -> lines.add(r.bay().right()));
    return lines;
  }

  /** Stations from the sheets' heads to their low ends. */
  Interval along() {
    boolean under = runs.stream().allMatch(r -> isAtLine(r) || passesUnderHead(r));
    return new Interval(
        runs.stream().mapToDouble(r -> head(r, under)).max().orElseThrow(),
        runs.stream().mapToDouble(BayRun::panEnd).min().orElseThrow());
  }

  private double head(BayRun run, boolean under) {
    if (isAtLine(run)) {
      return Ends.of(plan.kit()).head();
    }
    return under ? run.bay().stretch().from() - UNDER_HEAD : run.start();
  }

  /** The sheets are below blocking that stands on a high line. */
  private boolean isAtLine(BayRun run) {
    return run.beginsAtHighLine(plan.bays().field());
  }

  /** Whether what bounds the high end leaves room for the sheets' heads below it. */
  private boolean passesUnderHead(BayRun run) {
    double from = run.bay().stretch().from();
    return run.bay()
        .high()
        .filter(h -> h.shape().heights().from() > plan.seat(from - UNDER_HEAD))
        .isPresent();
  }

  /** Length of the sheets' plane along the slope. */
  double length() {
    return along().length() * Math.hypot(1, plan.fall());
  }

  /** Out to the far faces of the outer joists. */
  Interval across() {
    JoistLine first = lines().get(0);
    JoistLine last = lines().get(lines().size() - 1);
    Interval v = along();
    return new Interval(
        Math.min(first.left().at(v.from()), first.left().at(v.to())),
        Math.max(last.right().at(v.from()), last.right().at(v.to())));
  }

  /** The pieces along the slope, without their laps, high end first. */
  List<Interval> rows() {
    return new Laps(plan.kit().get(SheetValue.SHEET_LONGEST), plan.kit().get(SheetValue.SHEET_LAP))
        .split(new Interval(0, length()), false);
  }

  /**
   * Where the sheets lie side by side, from the first joist's outer face; each overlaps the next by
   * a rib. Where the last would be a sliver, it and the one before it share what is left.
   */
  List<Interval> columns() {
    Kit kit = plan.kit();
    double width = across().length();
    double crest = kit.get(SheetValue.SHEET_CREST);
    List<Double> starts = new ArrayList<>();
    for (double x = 0; x < width - crest; x += kit.get(SheetValue.SHEET_COVER)) {
      starts.add(x);
    }
    int last = starts.size() - 1;
    double pitch = kit.get(SheetValue.SHEET_PITCH);
    if (last > 0 && width - starts.get(last) < LEAST_PITCHES * pitch + crest) {
      double before = starts.get(last - 1);
      starts.set(last, before + pitch * Math.ceil((width - before) / 2 / pitch));
    }
    List<Interval> columns = new ArrayList<>();
    for (int i = 0; i <= last; i++) {
      columns.add(new Interval(starts.get(i), i < last ? starts.get(i + 1) + crest : width));
    }
    return columns;
  }

  SheetProfile profile() {
    return new SheetProfile(plan.kit(), rows().size());
  }

  /** Height of the underside of the lowest sheet's troughs. */
  double underside(double v) {
    return plan.seat(v) - profile().height() * Math.hypot(1, plan.fall());
  }
}
