package org.underlee.layout;

import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;

/** What every family asks of a bay: its ends square, its width and its run within limits. */
record BayFit(FieldBays bays, Kit kit) {
  /**
   * What closes the high end is straight across: more than its gap takes up needs another piece.
   */
  static final double MOST_SLANT = 0.01;

  Optional<Finding> unfit(BayRun run, KitNumber narrowest, KitNumber widest) {
    OpenBay open = new OpenBay(bays.field().id(), kit);
    Bay bay = run.bay();
    double high = bay.straightWidthAt(bay.stretch().from());
    double low = bay.straightWidthAt(run.lowFace());
    double slant = slant(bay);
    if (slant > MOST_SLANT) {
      return Optional.of(open.onASlant(bay, slant));
    }
    if (Math.max(high, low) > kit.get(widest) + SeatRange.SAME) {
      return Optional.of(open.width(bay, Math.max(high, low), widest, true));
    }
    if (Math.min(high, low) < kit.get(narrowest) - SeatRange.SAME) {
      return Optional.of(open.width(bay, Math.min(high, low), narrowest, false));
    }
    return run.run() < Bay.SHORTEST_RUN ? Optional.of(open.runTooShort(run)) : Optional.empty();
  }

  /** How much further one side of a bay's high end lies than its middle, as at a hip. */
  private double slant(Bay bay) {
    double start = bay.stretch().from();
    return bays.field().high().stream()
        .flatMap(
            s ->
                Stream.of(bay.leftFace().at(start), bay.rightFace().at(start))
                    .map(u -> s.shape().alongAt(u).to()))
        .filter(v -> v > start && v < bay.stretch().middle())
        .mapToDouble(v -> v - start)
        .max()
        .orElse(0);
  }
}
