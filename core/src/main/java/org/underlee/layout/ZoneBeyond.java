package org.underlee.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.finding.Place;
import org.underlee.geom.PlanGeometry;
import org.underlee.geom.Vec2;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Says where what must stay dry goes on beyond the gutter, below deck that drips. */
record ZoneBeyond(FieldPlan plan, DryZone zone) {
  /** A zone that ends this near beyond the gutter's line ends at it. */
  private static final double ENDS_THERE = 0.005;

  Optional<Finding> finding() {
    Geometry dry = zone.in(plan.frame());
    List<Subject> subjects = new ArrayList<>();
    for (BayRun run : plan.served()) {
      double reach = reach(run, dry);
      if (reach > ENDS_THERE) {
        Place place = run.bay().left().plies().get(0).element().place();
        Optional<Quantity> measured = Optional.of(Quantity.length(reach));
        subjects.add(new Subject(plan.bays().field().id(), run.bay().id(), place, measured));
      }
    }
    return subjects.stream()
        .flatMap(s -> s.measured().stream())
        .map(Quantity::si)
        .max(Comparator.naturalOrder())
        .map(most -> finding(subjects, most));
  }

  private Finding finding(List<Subject> subjects, double most) {
    return new Finding(
        LayoutRules.ZONE_BEYOND,
        subjects,
        Words.of(
            "the dry zone goes on so far beyond %s, where the gutter runs: what is below the deck"
                + " there gets wet.",
            plan.lowEnd().words()),
        subjects.get(0).place(),
        Optional.of(Measure.lengths(most, ENDS_THERE)),
        Optional.of(
            Fix.of(
                "Keep what must stay dry on the house side of the gutter, or run compare to see"
                    + " whether the field can end further out with --low-end.")));
  }

  /** How far down the fall the zone reaches below the part of a bay that nothing hangs in. */
  private static double reach(BayRun run, Geometry dry) {
    Bay bay = run.bay();
    double from = run.lowFace();
    double to = bay.stretch().to();
    if (to - from <= ENDS_THERE) {
      return 0;
    }
    Geometry open =
        PlanGeometry.polygon(
            List.of(
                new Vec2(bay.leftFace().at(from), from),
                new Vec2(bay.rightFace().at(from), from),
                new Vec2(bay.rightFace().at(to), to),
                new Vec2(bay.leftFace().at(to), to)));
    return Stream.of(open.intersection(dry).getCoordinates())
        .mapToDouble((Coordinate c) -> c.y - from)
        .max()
        .orElse(0);
  }
}
