package org.underlee.framing;

import java.util.List;
import java.util.Optional;
import org.underlee.geom.Interval;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** Upright members, and what they carry. */
record Posts(List<Member> upright, MemberIndex index) {
  /** Between a post's top and what it carries: a cap plate, a bearing pad, drawing accuracy. */
  private static final double SEAT_GAP = 0.04;

  /** A post bolted to the side of a beam touches it within this. */
  private static final double SIDE_GAP = 0.012;

  /** A bolted post reaches at least this far below what it carries. */
  private static final double BELOW = 0.3;

  /** A guard post stands at least this far above the joists that it is fixed to. */
  private static final double GUARD_HEIGHT = 0.5;

  /** What rises further carries a roof or a floor above. */
  private static final double HIGHEST_GUARD = 1.6;

  static Posts of(List<Member> upright) {
    return new Posts(upright, new MemberIndex(upright));
  }

  boolean carry(Member level) {
    return !carrying(level).isEmpty();
  }

  /** Posts that a level member stands on or is bolted to. */
  List<Member> carrying(Member level) {
    return index.near(level, SEAT_GAP).stream()
        .filter(p -> standsUnder(p.box(), level) || isBoltedTo(p.box(), level))
        .toList();
  }

  /** Posts fixed to a member that rise above it to carry a guard. */
  List<Member> guardsOn(Member level, double joistTop) {
    return index.near(level, SIDE_GAP).stream().filter(p -> isGuardOn(p, level, joistTop)).toList();
  }

  /** A post fixed to a member's side that rises above it to carry a guard. */
  boolean isGuardOn(Member post, Member level, double joistTop) {
    return post.box().top() > joistTop + GUARD_HEIGHT
        && post.box().top() < joistTop + HIGHEST_GUARD
        && post.box().bottom() > level.box().bottom() - BELOW
        && touchesInPlan(post.box(), level);
  }

  private static boolean standsUnder(OrientedBox post, Member level) {
    double underside =
        level.isBent() ? level.box().bottom() : undersideAt(level.box(), post.centre());
    return Math.abs(post.top() - underside) <= SEAT_GAP && touchesInPlan(post, level);
  }

  private static boolean isBoltedTo(OrientedBox post, Member level) {
    return post.bottom() < level.box().bottom() - BELOW
        && post.top() > level.box().bottom() + SEAT_GAP
        && touchesInPlan(post, level);
  }

  private static double undersideAt(OrientedBox level, Vec3 place) {
    Vec3 d = place.minus(level.centre());
    double along = d.horizontal().dot(level.axis().horizontal());
    return level.centre().z() + along * level.axis().z() - level.depth() / 2;
  }

  /** Whether the post's plan meets the member's, within a bolted joint's gap. */
  private static boolean touchesInPlan(OrientedBox post, Member member) {
    return member.isBent() ? touchesBent(post, member) : touchesInPlan(post, member.box());
  }

  private static boolean touchesBent(OrientedBox post, Member bent) {
    PlanShape plan = PlanShape.of(bent.element().shape(), Transform.IDENTITY);
    double reach = Math.min(post.width(), post.depth()) / 2 + SIDE_GAP;
    Vec3 p = post.centre();
    Interval own = new Interval(p.y() - reach, p.y() + reach);
    Interval across = new Interval(p.x() - reach, p.x() + reach);
    return !plan.alongAt(p.x()).meet(own).isEmpty() || !plan.acrossAt(p.y()).meet(across).isEmpty();
  }

  private static boolean touchesInPlan(OrientedBox post, OrientedBox level) {
    Vec3 d = post.centre().minus(level.centre()).horizontal();
    Vec3 axis = level.axis().horizontal().unit();
    double halfPost = Math.min(post.width(), post.depth()) / 2;
    double along = Math.abs(d.dot(axis)) - level.length() / 2;
    double across = Math.abs(d.minus(axis.times(d.dot(axis))).length()) - level.width() / 2;
    return along <= halfPost + SIDE_GAP && across <= halfPost + SIDE_GAP;
  }

  /** The height of the lowest foot, where there are posts: what stands in for the ground. */
  static Optional<Double> foot(List<Member> posts) {
    return posts.stream().map(p -> p.box().bottom()).min(Double::compare);
  }
}
