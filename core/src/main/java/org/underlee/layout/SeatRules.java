package org.underlee.layout;

import java.util.List;
import org.underlee.framing.Support;
import org.underlee.kit.Kit;

/** How a family of kits bounds the seat: the height of the line that its parts follow. */
interface SeatRules {
  static SeatRules of(Kit kit) {
    return switch (kit.family()) {
      case PANS -> new PanSeats(kit);
      case DRAPE -> new DrapeSeats(kit);
      case SHEET -> new SheetSeats(kit);
    };
  }

  Kit kit();

  /** What the framing of a bay alone asks, at least one limit from below and one from above. */
  List<SeatLimit> framing(BayRun run, List<Support> beamsPassed);

  /** The highest seat at the high end that passes under what stands in the bay. */
  double under(BayRun run, Obstacle o);

  /** The lowest seat at the high end that passes over it. */
  double over(Obstacle o);

  /** The heights at and below which one more part is cut less. */
  default List<SeatRange> cutFree(BayRun run) {
    return List.of();
  }

  /** What is cut out of parts at a seat. */
  default List<SeatRanges.Notch> notches(BayRun run, double seatHigh) {
    return List.of();
  }

  /** What to do for a bay that no seat serves. */
  String advice();
}
