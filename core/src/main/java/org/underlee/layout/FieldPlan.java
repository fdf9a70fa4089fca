package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Kit;
import org.underlee.units.Words;

/**
 * The decisions for one field: where the low end is, how high the seat, which bays are served.
 *
 * @param seatHigh seat height at the high end of the field's frame
 * @param served the bays that get pans
 * @param cuts rail legs that are notched
 * @param binding the limit that fixed the seat
 * @param findings why a bay is left open
 * @param beyond what is on the other side of the field's high line, where it has one
 */
record FieldPlan(
    FieldBays bays,
    Kit kit,
    LowEnd lowEnd,
    double seatHigh,
    List<BayRun> served,
    int cuts,
    Words binding,
    List<Finding> findings,
    Optional<FieldPlan> beyond) {

  FieldPlan with(List<BayRun> runs, List<Finding> all) {
    return new FieldPlan(bays, kit, lowEnd, seatHigh, runs, cuts, binding, all, beyond);
  }

  FieldPlan facing(FieldPlan other) {
    return new FieldPlan(
        bays, kit, lowEnd, seatHigh, served, cuts, binding, findings, Optional.of(other));
  }

  /** Whether a served bay goes on, served too, on the other side of the high line. */
  boolean goesOnBeyond(BayRun run) {
    return run.beginsAtHighLine(bays.field())
        && beyond.stream()
            .flatMap(b -> b.served.stream())
            .anyMatch(r -> r.bay().id().equals(run.bay().id()));
  }

  /** Whether no blocking parts it from what it goes on as. */
  boolean meetsAtHighLine(BayRun run) {
    return run.bay().high().isEmpty() && goesOnBeyond(run);
  }

  /** Whether what lies over the high line is counted with this field. */
  boolean hasWhatLiesOverHighLine() {
    return bays.field().isFirstHalf();
  }

  FieldPlan noting(List<Finding> all) {
    return with(served, all);
  }

  double fall() {
    return kit.fall();
  }

  /** Height of the seat at a station of the field's frame. */
  double seat(double v) {
    return seatHigh - fall() * v;
  }

  Transform frame() {
    return bays.field().frame();
  }

  /** A world frame on a slope through a place in the field: x across, y down the fall, z up. */
  Transform sloped(double u, double v, double w) {
    double cosine = 1 / Math.hypot(1, fall());
    Vec3 down = new Vec3(0, cosine, -fall() * cosine);
    Vec3 up = Vec3.X.cross(down);
    return frame().after(new Transform(new Vec3(u, v, w), Vec3.X, down, up));
  }

  /** Height of the seat at the lowest pan end; infinite when no bay is served. */
  double lowestSeat() {
    return served.stream()
        .mapToDouble(r -> seat(r.panEnd()))
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Level plan area under the pans, the measure of what is kept dry. */
  double area() {
    return area(served);
  }

  static double area(List<BayRun> runs) {
    return runs.stream()
        .mapToDouble(
            r -> r.run() * (r.bay().clearWidthHigh() + r.bay().clearWidthAt(r.lowFace())) / 2)
        .sum();
  }
}
