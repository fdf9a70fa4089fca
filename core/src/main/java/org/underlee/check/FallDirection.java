package org.underlee.check;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Water goes away from the house: the pans' low end is not the end at a wall. */
public final class FallDirection implements Check {
  static final Rule TOWARD_HOUSE =
      new Rule(
          "falls-toward-wall",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": high at the house, no fall back to it",
          "The pans' low end lies at a wall and their high end does not.");

  static final Set<String> WALLS = Set.of("IfcWall", "IfcWallStandardCase");

  /** A wall this near to an end of the field is the one that it stands at. */
  private static final double AT = 0.6;

  @Override
  public List<Rule> rules() {
    return List.of(TOWARD_HOUSE);
  }

  @Override
  public Answer of(CheckInput input) {
    return Answer.found(input.fields().stream().flatMap(f -> judge(f, input).stream()).toList());
  }

  private static Optional<Finding> judge(Assembled f, CheckInput input) {
    List<Box> walls =
        input.ofClass(WALLS).stream().map(f::boxOf).filter(w -> isBeside(f, w)).toList();
    double low = walls.stream().mapToDouble(w -> gap(w, f.field().along().to())).min().orElse(AT);
    double high =
        walls.stream().mapToDouble(w -> gap(w, f.field().along().from())).min().orElse(AT);
    return low < AT && high >= AT ? Optional.of(finding(f, low)) : Optional.empty();
  }

  private static boolean isBeside(Assembled f, Box wall) {
    return wall.max().x() > f.field().across().from()
        && wall.min().x() < f.field().across().to()
        && wall.max().z() > f.layout().seatHigh() - Limits.HEADROOM;
  }

  private static double gap(Box wall, double station) {
    return Math.max(0, Math.max(wall.min().y() - station, station - wall.max().y()));
  }

  private static Finding finding(Assembled f, double gap) {
    return f.found(
        TOWARD_HOUSE,
        Words.of(
            "a wall stands %s from the low end of the joists, where the water goes.",
            Quantity.length(gap)),
        Measure.lengths(gap, AT),
        Fix.of(
            "Call the member on the house side a ledger in the model or in the overrides file, so"
                + " that the fall goes the other way."));
  }

  /** The nearest element of some classes to a box in plan, and how far it is. */
  static Optional<Near> nearest(Assembled f, List<BuildingElement> elements, Box to) {
    return elements.stream()
        .map(e -> new Near(e, apart(f.boxOf(e), to)))
        .min(java.util.Comparator.comparingDouble(Near::distance));
  }

  record Near(BuildingElement element, double distance) {}

  private static double apart(Box a, Box b) {
    double x = Math.max(0, Math.max(a.min().x() - b.max().x(), b.min().x() - a.max().x()));
    double y = Math.max(0, Math.max(a.min().y() - b.max().y(), b.min().y() - a.max().y()));
    return Math.hypot(x, y);
  }
}
