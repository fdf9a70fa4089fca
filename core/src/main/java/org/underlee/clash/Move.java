package org.underlee.clash;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Moves a thing out of the way: the least of the six ways of the field, each tried on the model
 * until nothing of the assembly and no other thing is in its way.
 *
 * @param by in the world, metres
 */
record Move(Vec3 by, String way) {
  /** Nobody moves a pipe further than this for a drain pan. */
  private static final double FURTHEST = 0.6;

  /** Parts that are met on the way, one after the other. */
  private static final int STEPS = 24;

  /** A step is at least this, so that rounding cannot stop it. */
  private static final double LEAST_STEP = 0.0005;

  private record Way(Vec3 direction, String words) {}

  /** The least move, where one of at most 0.6 m helps. */
  static Optional<Move> of(
      List<Theirs> things, List<Ours> parts, List<Theirs> others, Transform field) {
    List<Way> ways =
        List.of(
            new Way(Vec3.Z, "up"),
            new Way(Vec3.Z.negated(), "down"),
            new Way(field.x(), "to the right, seen along the fall"),
            new Way(field.x().negated(), "to the left, seen along the fall"),
            new Way(field.y(), "down the fall"),
            new Way(field.y().negated(), "up the fall"));
    Optional<Move> best = Optional.empty();
    for (Way way : ways) {
      double furthest = best.map(m -> m.by.length()).orElse(FURTHEST);
      double far = shift(things, parts, way.direction, furthest);
      if (far < furthest && !isBlocked(things, others, way.direction.times(far))) {
        best = Optional.of(new Move(way.direction.times(far), way.words));
      }
    }
    return best;
  }

  Words words() {
    return Words.of("move it %s %s", Quantity.length(by.length()).atLeast(), way);
  }

  private static double shift(
      List<Theirs> things, List<Ours> parts, Vec3 direction, double furthest) {
    double far = 0;
    for (int step = 0; step < STEPS && far < furthest; step++) {
      double more = 0;
      for (Theirs thing : things) {
        more = Math.max(more, more(thing, parts, direction, far));
      }
      if (more == 0) {
        return far;
      }
      far += Math.max(more, LEAST_STEP);
    }
    return Double.POSITIVE_INFINITY;
  }

  /** How much further one thing must go to be free of what it meets after a move. */
  private static double more(Theirs thing, List<Ours> parts, Vec3 direction, double far) {
    double more = 0;
    Box reach = thing.reach().moved(Transform.translation(direction.times(far)));
    for (Ours part : parts) {
      if (!part.bounds().meets(reach)) {
        continue;
      }
      double clearance = part.isInBay() ? thing.kind().inBay() : thing.kind().clearance();
      ContactTest test = new ContactTest(thing.kind().tolerance(), clearance);
      for (Solid body : thing.pieces()) {
        Solid moved = moved(body, direction.times(far));
        for (Solid piece : part.pieces()) {
          if (test.of(piece, moved).filter(c -> isInTheWay(c, clearance)).isPresent()) {
            double needed = top(piece, direction) + clearance - bottom(moved, direction);
            more = Math.max(more, Math.max(needed, LEAST_STEP));
          }
        }
      }
    }
    return more;
  }

  private static boolean isInTheWay(Contact c, double clearance) {
    return c.kind() != ClashKind.TOUCH || clearance > 0;
  }

  private static boolean isBlocked(List<Theirs> things, List<Theirs> others, Vec3 by) {
    List<Theirs> rest = new ArrayList<>(others);
    rest.removeAll(things);
    for (Theirs thing : things) {
      for (Theirs other : rest) {
        if (!runsInto(thing, other, Vec3.ZERO) && runsInto(thing, other, by)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean runsInto(Theirs thing, Theirs other, Vec3 by) {
    Box own = thing.element().shape().bounds().moved(Transform.translation(by));
    if (!own.meets(other.element().shape().bounds())) {
      return false;
    }
    ContactTest test = new ContactTest(other.kind().tolerance(), 0);
    return thing.pieces().stream()
        .map(b -> moved(b, by))
        .anyMatch(
            b ->
                other.pieces().stream()
                    .anyMatch(
                        o ->
                            test.of(b, o)
                                .filter(c -> c.kind() == ClashKind.INTERSECT)
                                .isPresent()));
  }

  private static Solid moved(Solid body, Vec3 by) {
    return by.equals(Vec3.ZERO)
        ? body
        : Solid.of(body.mesh().transformed(Transform.translation(by)));
  }

  private static double top(Solid body, Vec3 direction) {
    return -bottom(body, direction.negated());
  }

  private static double bottom(Solid body, Vec3 direction) {
    double least = Double.POSITIVE_INFINITY;
    for (int v = 0; v < body.mesh().vertexCount(); v++) {
      least = Math.min(least, body.mesh().vertex(v).dot(direction));
    }
    return least;
  }
}
