package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.DrapeValue.MEMBRANE_WIDTH;
import static org.underlee.kit.DrapeValue.TROUGH_ABOVE_BOTTOM;
import static org.underlee.kit.DrapeValue.TROUGH_LEAST_DEPTH;
import static org.underlee.kit.DrapeValue.TROUGH_SAG;

import java.util.Arrays;
import java.util.List;
import org.underlee.bay.Bay;
import org.underlee.framing.Support;
import org.underlee.kit.Kit;

/**
 * The seat of a trough is the line along which its floor meets the joists' faces. It hangs from the
 * joist tops, so it passes over what stands in the bay and never under; beams that the joists lie
 * on are below it.
 */
record DrapeSeats(Kit kit) implements SeatRules {

  @Override
  public List<SeatLimit> framing(BayRun run, List<Support> beamsPassed) {
    Bay bay = run.bay();
    double end = run.panEnd();
    double[] stations = bay.turns(bay.stretch().from(), end);
    double lowestTop =
        Arrays.stream(stations).map(v -> bay.joistTop(v) + kit.fall() * v).min().orElseThrow();
    double highestBottom =
        Arrays.stream(stations).map(v -> bay.joistBottom(v) + kit.fall() * v).max().orElseThrow();
    DrapeShape shape = new DrapeShape(run, 0);
    double widest = (kit.get(MEMBRANE_WIDTH) - shape.edges() - shape.floor(end)) / 2;
    return List.of(
        SeatLimit.atMost(
            lowestTop - kit.get(TROUGH_LEAST_DEPTH),
            "the trough needs its least depth below the joist tops"),
        SeatLimit.atLeast(
            highestBottom + kit.get(TROUGH_SAG) + kit.get(TROUGH_ABOVE_BOTTOM),
            "the trough's middle stays above the joist bottoms"),
        SeatLimit.atLeast(
            shape.depth(end) - widest,
            "the membrane's roll is wide enough for the trough at its low end"));
  }

  @Override
  public double under(BayRun run, Obstacle o) {
    return Double.NEGATIVE_INFINITY;
  }

  @Override
  public double over(Obstacle o) {
    return o.heights().to()
        + kit.get(TROUGH_SAG)
        + kit.get(CLEARANCE_ABOVE)
        + kit.fall() * o.stretch().to();
  }

  @Override
  public String advice() {
    return "A trough passes over what stands in the bay, never under it: shorten the run, lower or"
        + " move what is in the way, or use a kit of pans or of sheets, which pass below it.";
  }
}
