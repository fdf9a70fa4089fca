package org.underlee.layout;

import java.util.OptionalDouble;
import org.underlee.framing.Field;
import org.underlee.framing.Member;

/** Height of the ground below a field, in its frame: the posts' feet, else the storey's floor. */
public final class Ground {
  /** Stands in for the ground where neither a post nor a storey tells it. */
  private static final double USUAL_STOREY = 2.4;

  /** A storey's floor counts as the ground only when a person fits between it and the joists. */
  private static final double LEAST_STOREY = 1.0;

  private Ground() {}

  static double below(Field field) {
    double origin = field.frame().origin().z();
    double[] feet =
        field.posts().stream().map(Member::box).mapToDouble(b -> b.bottom()).sorted().toArray();
    if (feet.length > 0) {
      return feet[feet.length / 2] - origin;
    }
    return field
        .storey()
        .map(s -> s.elevation() - origin)
        .filter(w -> w < -LEAST_STOREY)
        .orElse(-USUAL_STOREY);
  }

  /** What is left below the lowest part of a layout's gutter; empty when it has none. */
  public static OptionalDouble headroom(FieldLayout layout, Field field) {
    double origin = field.frame().origin().z();
    return layout.parts().stream()
        .filter(p -> p.kind() == PartKind.GUTTER)
        .mapToDouble(p -> p.bounds().min().z() - origin - below(field))
        .min();
  }
}
