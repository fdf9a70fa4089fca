package org.underlee.framing;

import java.util.LinkedHashSet;
import java.util.Set;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Vec3;

/** Finds the hangers and angles that join joist ends to what carries them, of any class. */
final class Hangers {
  /** A hanger reaches at most this far along the joist from its end. */
  private static final double ALONG = 0.2;

  /** Its back lies on the supporting member's face, which the joist's end comes near. */
  private static final double AT_END = 0.05;

  /** Its sides lie on the joist's faces to within this: sheet and drawing accuracy. */
  private static final double FIT = 0.006;

  /** Bent sheet fills at most this share of the box around it; a block or a packer fills it. */
  private static final double THIN = 0.4;

  private Hangers() {}

  static Set<Member> at(Field field, MemberIndex small) {
    Set<Member> found = new LinkedHashSet<>();
    for (JoistLine line : field.lines()) {
      for (Ply ply : line.pieces()) {
        for (double end : new double[] {ply.stretch().from(), ply.stretch().to()}) {
          Vec3 place =
              new Vec3(ply.centre(end), end, ply.shape().bottom().at(end) + line.depth() / 2);
          Vec3 world = field.frame().apply(place);
          for (Member m : small.near(new Box(world, world).grown(ALONG))) {
            if (wraps(field.shapeOf(m), ply, end) && isThin(m)) {
              found.add(m);
            }
          }
        }
      }
    }
    return found;
  }

  private static boolean isThin(Member m) {
    double box = m.box().length() * m.box().width() * m.box().depth();
    return Math.abs(m.element().shape().volume()) <= THIN * box;
  }

  /** Whether it lies at the end of the joist, on one of its faces or round both. */
  private static boolean wraps(PlanShape shape, Ply ply, double end) {
    Interval across = shape.across();
    Interval along = shape.along();
    double left = ply.shape().left().at(end);
    double right = ply.shape().right().at(end);
    boolean round = across.from() <= left + FIT && across.to() >= right - FIT;
    boolean beside = Math.abs(across.to() - left) <= FIT || Math.abs(across.from() - right) <= FIT;
    Interval heights =
        new Interval(ply.shape().bottom().at(end) - ALONG, ply.shape().top().at(end) + AT_END);
    return (round || beside)
        && along.length() <= ALONG
        && Math.min(Math.abs(along.from() - end), Math.abs(along.to() - end)) <= AT_END
        && shape.heights().from() >= heights.from()
        && shape.heights().to() <= heights.to();
  }
}
