package org.underlee.framing;

import java.util.List;
import org.underlee.geom.Vec3;

/** Judges whether a field is an outside deck: an inside floor has walls standing around it. */
final class Outside {
  /** How far above the joists a wall must rise to enclose the floor. */
  private static final double WALL_RISE = 1.0;

  /** A wall this near to a side of the field lines that side. */
  private static final double BESIDE = 0.3;

  private Outside() {}

  static Deck.Judgement of(Field field, HouseWalls walls) {
    double along = field.lines().get(0).stretch().to();
    JoistLine last = field.lines().get(field.lines().size() - 1);
    double across = last.right().at(0);
    double w = field.lines().get(0).depth();
    long lined = 0;
    for (List<Vec3> side :
        List.of(
            side(field, 0, 0, across, 0, w),
            side(field, 0, along, across, along, w),
            side(field, 0, 0, 0, along, w),
            side(field, across, 0, across, along, w))) {
      lined += walls.wallsAbove(side, field.top() + WALL_RISE, BESIDE) == 3 ? 1 : 0;
    }
    return lined >= 3
        ? new Deck.Judgement(false, "walls rise along " + lined + " of its 4 sides: a floor inside")
        : new Deck.Judgement(
            true, "walls rise along " + lined + " of its 4 sides: taken to be outside");
  }

  /** Three places along a side, a metre above the joist tops where walls would be. */
  private static List<Vec3> side(
      Field field, double u0, double v0, double u1, double v1, double w) {
    return List.of(0.15, 0.5, 0.85).stream()
        .map(t -> new Vec3(u0 + (u1 - u0) * t, v0 + (v1 - v0) * t, w + WALL_RISE))
        .map(field.frame()::apply)
        .toList();
  }
}
