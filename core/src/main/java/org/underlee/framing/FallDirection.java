package org.underlee.framing;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Which way the water goes: away from the house. Evidence in order of weight: the user says that it
 * is a ledger; what holds one end is fixed to a wall; it is the low end of a field on the house
 * side; it is called a ledger; the other end is carried by posts or lies on a beam.
 *
 * @param tipIsHigh whether the end with the greater station is the high end
 * @param assumed when nothing in the model decides
 */
record FallDirection(boolean tipIsHigh, boolean assumed, String why) {

  /** What stands at the two ends of the joists: index 0 the tail, 1 the tip. */
  record Ends(
      List<Set<Member>> bounds,
      List<Set<Member>> beams,
      double beamShareFromTail,
      boolean hasBeam) {
    /** Whether one end is where a field on the house side ends: at its rim, or on its beam. */
    boolean follows(int end, Set<Member> lowEnds) {
      return bounds.get(end).stream().anyMatch(lowEnds::contains)
          || beams.get(end).stream().anyMatch(lowEnds::contains);
    }
  }

  /** Whether a wall, or a field that falls from a wall, tells the direction. */
  static boolean isKnown(Ends ends, HouseWalls walls, Set<Member> lowEnds, Transform frame) {
    return wall(ends.bounds().get(0), walls, frame.y().negated()).isPresent()
            != wall(ends.bounds().get(1), walls, frame.y()).isPresent()
        || ends.follows(0, lowEnds) != ends.follows(1, lowEnds);
  }

  static FallDirection decide(
      Ends ends, HouseWalls walls, Set<Member> lowEnds, Posts posts, Transform frame) {
    boolean tailTold = ends.bounds().get(0).stream().anyMatch(m -> m.isTold(Role.LEDGER));
    boolean tipTold = ends.bounds().get(1).stream().anyMatch(m -> m.isTold(Role.LEDGER));
    if (tailTold != tipTold) {
      return new FallDirection(tipTold, false, "away from the ledger; " + Told.WHY);
    }
    Vec3 v = frame.y();
    Optional<BuildingElement> tailWall = wall(ends.bounds().get(0), walls, v.negated());
    Optional<BuildingElement> tipWall = wall(ends.bounds().get(1), walls, v);
    if (tailWall.isPresent() != tipWall.isPresent()) {
      BuildingElement house = tailWall.or(() -> tipWall).orElseThrow();
      return new FallDirection(
          tipWall.isPresent(), false, "away from the house: one end is fixed to " + name(house));
    }
    boolean tailFollows = ends.follows(0, lowEnds);
    if (tailFollows != ends.follows(1, lowEnds)) {
      return new FallDirection(
          !tailFollows, false, "away from the house, on from the field on its house side");
    }
    boolean tailNamed = ends.bounds().get(0).stream().anyMatch(m -> m.isCalled("ledger"));
    boolean tipNamed = ends.bounds().get(1).stream().anyMatch(m -> m.isCalled("ledger"));
    if (tailNamed != tipNamed) {
      return new FallDirection(tipNamed, false, "away from the member that is called a ledger");
    }
    boolean tailPosts = ends.bounds().get(0).stream().anyMatch(posts::carry);
    boolean tipPosts = ends.bounds().get(1).stream().anyMatch(posts::carry);
    if (tailPosts != tipPosts) {
      return new FallDirection(tailPosts, false, "toward the end that stands on posts");
    }
    if (ends.hasBeam() && Math.abs(ends.beamShareFromTail() - 0.5) > 0.1) {
      return new FallDirection(
          ends.beamShareFromTail() < 0.5, false, "toward the end that lies on a beam");
    }
    return new FallDirection(false, true, "assumed: nothing in the model tells the house side");
  }

  private static Optional<BuildingElement> wall(
      Collection<Member> bounds, HouseWalls walls, Vec3 outward) {
    return bounds.stream().flatMap(m -> walls.behind(m, outward).stream()).findFirst();
  }

  private static String name(BuildingElement element) {
    return element.ifcClass() + (element.name().isEmpty() ? "" : " \"" + element.name() + "\"");
  }
}
