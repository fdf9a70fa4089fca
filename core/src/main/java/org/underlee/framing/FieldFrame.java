package org.underlee.framing;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** The level frame that a field is told in: y along the joists, x to the right, z up. */
final class FieldFrame {
  /** Sine of 8°: a fanned field's joists turn by about this much from its middle. */
  private static final double NEARLY_SQUARE = 0.14;

  /** The face of what bounds the high end is this near to where the lines start. */
  private static final double AT_HIGH_END = 0.2;

  private FieldFrame() {}

  /** A level frame at the first joist: y along the joists, x to the right, z up. */
  static Transform along(List<Member> joists) {
    Vec3 first = joists.get(0).box().axis().horizontal();
    Vec3 sum = Vec3.ZERO;
    for (Member joist : joists) {
      Vec3 axis = joist.box().axis().horizontal();
      sum = sum.plus(axis.dot(first) < 0 ? axis.negated() : axis);
    }
    return frame(joists.get(0).box().centre(), sum.unit());
  }

  private static Transform frame(Vec3 origin, Vec3 v) {
    return new Transform(origin, v.cross(Vec3.Z), v, Vec3.Z);
  }

  static Transform turnedRound(Transform frame) {
    return new Transform(frame.origin(), frame.x().negated(), frame.y().negated(), frame.z());
  }

  /**
   * The frame turned square to the longest member that holds the joists, when it is nearly square
   * already: joists may fan out from a ledger, and the water's way is square to the ledger.
   */
  static Transform squaredTo(Set<Member> holding, Transform frame) {
    return holding.stream()
        .filter(m -> Math.abs(m.box().axis().dot(frame.y())) <= NEARLY_SQUARE && !m.isBent())
        .max(Comparator.comparingDouble(m -> m.box().length()))
        .map(m -> m.box().axis().cross(Vec3.Z).horizontal().unit())
        .map(v -> v.dot(frame.y()) < 0 ? v.negated() : v)
        .map(v -> frame(frame.origin(), v))
        .orElse(frame);
  }

  /** The frame moved to the left face of the first line, the high face and the joist bottom. */
  static Transform placed(
      Transform frame, List<Member> joists, Set<Member> high, Tolerance tolerance) {
    List<JoistLine> lines = new JoistLines(frame, tolerance).of(joists);
    JoistLine first = lines.get(0);
    double start = lines.stream().mapToDouble(l -> l.stretch().from()).min().orElseThrow();
    double face =
        high.stream()
            .map(m -> PlanShape.of(m.element().shape(), frame))
            .filter(s -> Math.abs(s.along().to() - start) <= AT_HIGH_END)
            .mapToDouble(s -> s.along().to())
            .max()
            .orElse(start);
    double bottom =
        lines.stream().mapToDouble(l -> l.bottomAt(face)).sorted().toArray()[lines.size() / 2];
    Vec3 origin = frame.apply(new Vec3(first.left().at(face), face, bottom));
    return new Transform(origin, frame.x(), frame.y(), frame.z());
  }

  static Interval across(List<Member> joists, Transform frame) {
    return spread(joists, frame, PlanShape::across);
  }

  static Interval stretch(List<Member> joists, Transform frame) {
    return spread(joists, frame, PlanShape::along);
  }

  private static Interval spread(
      List<Member> joists, Transform frame, Function<PlanShape, Interval> way) {
    return joists.stream()
        .map(joist -> way.apply(PlanShape.of(joist.element().shape(), frame)))
        .reduce(Interval::join)
        .orElseThrow();
  }
}
