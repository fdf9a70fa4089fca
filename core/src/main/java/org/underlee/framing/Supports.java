package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Tells what the members that hold joists are: ledger, rim, beam or header.
 *
 * @param allJoists of every field: one of them may hold the joists of another field
 * @param joists the same by place
 */
record Supports(
    MemberIndex level,
    Posts posts,
    HouseWalls walls,
    Set<Member> allJoists,
    MemberIndex joists,
    Tolerance tolerance) {
  /** A section this much larger than the joists' carries more than its own edge. */
  private static final double STRONGER = 1.05;

  /** A hip lies at 45° or near it: cosines of 60° and 30°. */
  private static final Interval SLANT = new Interval(0.5, 0.87);

  /** What bounds one end of the joists, each with its role. */
  List<Support> bounding(Set<Member> bounds, boolean high, List<Member> joists, Transform frame) {
    MemberIndex own = new MemberIndex(joists);
    Member joist =
        joists.stream()
            .max(Comparator.comparingDouble(j -> j.box().depth() * j.box().width()))
            .orElseThrow();
    List<Support> supports = new ArrayList<>();
    for (Member m : bounds) {
      supports.add(support(m, high, Contact.heldAtBothEnds(m, own, tolerance), joist, frame));
    }
    return supports;
  }

  private Support support(
      Member m, boolean high, boolean betweenJoists, Member joist, Transform frame) {
    PlanShape shape = PlanShape.of(m.element().shape(), frame);
    Vec3 outward = high ? frame.y().negated() : frame.y();
    Optional<BuildingElement> wall = walls.behind(m, outward);
    if (m.told().isPresent()) {
      return new Support(m, m.told().get(), shape, Told.WHY);
    }
    if (allJoists.contains(m)) {
      return new Support(m, Role.JOIST, shape, "a joist of another field, on which joists end");
    }
    if (isHip(m, frame)) {
      return new Support(
          m, Role.JOIST, shape, "a hip joist: joists end on both its sides at a slant");
    }
    if (betweenJoists) {
      return new Support(m, Role.HEADER, shape, "joists end on it and it ends on joists");
    }
    if (high && wall.isPresent()) {
      return new Support(
          m, Role.LEDGER, shape, "joists end on it and it is fixed to " + wall.get().ifcClass());
    }
    if (posts.carry(m) && (high || isStrongerThan(joist, m, shape))) {
      return new Support(m, Role.FLUSH_BEAM, shape, "joists end on it and it stands on posts");
    }
    return high
        ? new Support(m, Role.LEDGER, shape, "joists end on it at the high end")
        : new Support(m, Role.RIM, shape, "it closes the joists at the low end");
  }

  /** Whether a bar lies across the corner of two fields, and joists of both end on it. */
  private boolean isHip(Member m, Transform frame) {
    double slant = Math.abs(m.box().axis().dot(frame.y()));
    return SLANT.contains(slant)
        && Contact.holdsEndsOf(m, joists, -1) >= 1
        && Contact.holdsEndsOf(m, joists, 1) >= 1;
  }

  /** A rim on posts is of the joists' own stock; a flush beam is deeper, wider or doubled. */
  private boolean isStrongerThan(Member joist, Member bar, PlanShape shape) {
    if (!shape.bent().isEmpty()) {
      // a bent bar's box is as wide as its bow
      return shape.heights().length() > joist.box().depth() * STRONGER;
    }
    return bar.box().depth() > joist.box().depth() * STRONGER
        || bar.box().width() > joist.box().width() * STRONGER
        || bounds(joist).hasPlies(bar);
  }

  private Bounds bounds(Member joist) {
    return new Bounds(level, Set.of(joist), tolerance);
  }

  /** The beams that joists lie on. */
  static List<Support> drops(Set<Member> beams, Transform frame) {
    return beams.stream()
        .map(
            b ->
                new Support(
                    b,
                    Role.DROP_BEAM,
                    PlanShape.of(b.element().shape(), frame),
                    "the joists lie on it"))
        .toList();
  }
}
