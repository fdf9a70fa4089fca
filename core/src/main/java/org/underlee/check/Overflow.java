package org.underlee.check;

import java.util.HashSet;
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
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** A gutter that runs over does so where it is seen and harms nothing: not at a wall or a door. */
public final class Overflow implements Check {
  static final Rule NEAR_HOUSE =
      new Rule(
          "overflow-near-house",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": spills at the outer edge, never toward house or door",
          "When the gutter runs over, the water falls close to a wall or a door.");

  /** As far as a downspout must discharge from a foundation. */
  private static final double LEAST = 5 * Lengths.FOOT;

  private static final Set<String> HARMED = harmed();

  private static Set<String> harmed() {
    Set<String> all = new HashSet<>(FallDirection.WALLS);
    all.add("IfcDoor");
    return Set.copyOf(all);
  }

  @Override
  public List<Rule> rules() {
    return List.of(NEAR_HOUSE);
  }

  @Override
  public Answer of(CheckInput input) {
    List<BuildingElement> harmed = input.ofClass(HARMED);
    return Answer.found(input.fields().stream().flatMap(f -> judge(f, harmed).stream()).toList());
  }

  private static Optional<Finding> judge(Assembled f, List<BuildingElement> harmed) {
    Box gutter = f.all(PartKind.GUTTER).map(Placed::box).reduce(Box.EMPTY, Box::union);
    if (gutter.isEmpty()) {
      return Optional.empty();
    }
    return FallDirection.nearest(f, harmed, gutter)
        .filter(n -> n.distance() < LEAST)
        .map(n -> finding(f, n));
  }

  private static Finding finding(Assembled f, FallDirection.Near near) {
    return f.found(
        NEAR_HOUSE,
        Words.of(
            "the gutter runs %s from %s #%s; when it runs over, the water falls there.",
            Quantity.length(near.distance()), near.element().ifcClass(), near.element().instance()),
        Measure.lengths(near.distance(), LEAST),
        Fix.of("Cut an overflow into the gutter's rim at the end away from the house."));
  }
}
