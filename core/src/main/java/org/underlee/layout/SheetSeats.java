package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.SheetValue.BATTEN_DEPTH;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_GRIP;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_LONGEST;

import java.util.Arrays;
import java.util.List;
import org.underlee.bay.Bay;
import org.underlee.framing.Support;
import org.underlee.kit.Kit;

/**
 * The seat of sheets is the plane of the battens' undersides, which their ribs touch from below.
 * Battens hang below the joists, no further than the longest hanger reaches.
 */
record SheetSeats(Kit kit) implements SeatRules {

  @Override
  public List<SeatLimit> framing(BayRun run, List<Support> beamsPassed) {
    Bay bay = run.bay();
    double[] stations = bay.turns(bay.stretch().from(), run.panEnd());
    double lowest =
        Arrays.stream(stations).map(v -> bottom(bay, v) + kit.fall() * v).min().orElseThrow();
    double highest =
        Arrays.stream(stations).map(v -> bay.joistBottom(v) + kit.fall() * v).max().orElseThrow();
    double reach = kit.get(BATTEN_HANGER_LONGEST) - kit.get(BATTEN_HANGER_GRIP);
    return List.of(
        SeatLimit.atMost(lowest - kit.get(BATTEN_DEPTH), "the battens hang below the joists"),
        SeatLimit.atLeast(
            highest - reach - kit.get(BATTEN_DEPTH),
            "the longest hanger reaches the battens at the low end"));
  }

  private static double bottom(Bay bay, double v) {
    return Math.min(bay.left().bottomAt(v), bay.right().bottomAt(v));
  }

  @Override
  public double under(BayRun run, Obstacle o) {
    return o.heights().from()
        - kit.get(BATTEN_DEPTH)
        - kit.get(CLEARANCE_ABOVE)
        + kit.fall() * o.stretch().from();
  }

  @Override
  public double over(Obstacle o) {
    return o.heights().to()
        + SheetProfile.highest(kit)
        + kit.get(CLEARANCE_ABOVE)
        + kit.fall() * o.stretch().to();
  }

  @Override
  public String advice() {
    return "Shorten the run, move what is in the way, or use a kit with longer hangers.";
  }
}
