package org.underlee.framing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.StopSign;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.Box;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Vec3;

/** The walls and slabs of the house, to tell the house side of a deck. */
final class HouseWalls {
  static final Set<String> CLASSES =
      Set.of(
          "IfcWall",
          "IfcWallStandardCase",
          "IfcWallElementedCase",
          "IfcCurtainWall",
          "IfcSlab",
          "IfcSlabStandardCase",
          "IfcSlabElementedCase");

  /** A ledger may stand off the wall on spacers or over cladding by this much. */
  private static final double STAND_OFF = 0.06;

  private final List<Member> walls;
  private final MemberIndex index;

  HouseWalls(List<BuildingElement> elements) {
    StopSign stop = StopSign.here();
    walls =
        elements.parallelStream()
            .peek(e -> stop.obey())
            .filter(e -> CLASSES.contains(e.ifcClass()))
            .flatMap(
                e -> BarMeasure.of(e.shape()).map(b -> new Member(e, b, Optional.empty())).stream())
            .toList();
    index = new MemberIndex(walls);
  }

  /**
   * The wall or slab that a level bar is fixed to on the side that {@code outward} points to.
   *
   * @param outward level, away from the joists
   */
  Optional<BuildingElement> behind(Member bar, Vec3 outward) {
    OrientedBox b = bar.box();
    double out = Math.signum(b.side().dot(outward)) * b.width() / 2;
    for (double along : new double[] {0, -0.35, 0.35}) {
      Vec3 face = b.centre().plus(b.side().times(out)).plus(b.axis().times(along * b.length()));
      for (Member wall : index.near(new Box(face, face).grown(2 * STAND_OFF))) {
        if (Contact.isAt(face, wall.box(), STAND_OFF)) {
          return Optional.of(wall.element());
        }
      }
    }
    return Optional.empty();
  }

  /**
   * How many of the given places stand within {@code reach} of a wall that rises past {@code z}.
   */
  long wallsAbove(List<Vec3> places, double z, double reach) {
    return places.stream()
        .filter(
            p ->
                walls.stream()
                    .filter(w -> w.element().ifcClass().contains("Wall"))
                    .filter(w -> w.box().top() > z)
                    .anyMatch(w -> Contact.isAt(p, w.box(), reach)))
        .count();
  }
}
