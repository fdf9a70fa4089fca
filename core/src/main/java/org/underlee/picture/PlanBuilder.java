package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;

/** Collects the items of a {@link PlanDrawing} in order. Not for several threads at once. */
public final class PlanBuilder {
  /** Text heights of technical drawings (ISO 3098): for dimensions and for notes. */
  public static final double SMALL_TEXT_MM = 1.8;

  public static final double TEXT_MM = 2.5;

  /** Where a dimension's side lines end beyond it, as a share of their length. */
  private static final double OVERSHOOT = 1.15;

  /** Degrees: rounding does not turn a text round. */
  private static final double LEVEL = 1e-6;

  /** Of a circle, where it is taken hold of or marked. */
  private static final int PICKED_SIDES = 24;

  private static final PlanStyle SCALE_FIELD = PlanStyle.lined("scale-field", Palette.INK, 1.2);

  private final List<PlanItem> items = new ArrayList<>();
  private final List<PlanThings.Thing> things = new ArrayList<>();

  public PlanBuilder area(List<Vec2> points, PlanStyle style) {
    return area(Outline.of(points), style);
  }

  public PlanBuilder area(Outline outline, PlanStyle style) {
    return add(new PlanItem.Area(outline, style));
  }

  /**
   * An area that stands for something.
   *
   * @param id of a part, or the GlobalId of an element
   */
  PlanBuilder thing(String id, Outline outline, PlanStyle style) {
    things.add(new PlanThings.Thing(id, outline));
    return area(outline, style);
  }

  /** As {@link #thing}, a circle. */
  PlanBuilder round(String id, Vec2 centre, double radius, PlanStyle style) {
    List<Vec2> ring = Outline.circle(centre.x(), centre.y(), radius, PICKED_SIDES);
    things.add(new PlanThings.Thing(id, Outline.of(ring)));
    return circle(centre, radius, style);
  }

  /** A line around each thing so far that is chosen. */
  PlanBuilder mark(Set<String> chosen) {
    things.stream()
        .filter(t -> chosen.contains(t.id()))
        .forEach(t -> area(t.outline(), PlanStyle.CHOSEN_LINE));
    return this;
  }

  public PlanBuilder line(List<Vec2> points, PlanStyle style) {
    return add(new PlanItem.Line(points, style));
  }

  public PlanBuilder arrow(Vec2 from, Vec2 to, PlanStyle style) {
    return add(new PlanItem.Arrow(from, to, false, style));
  }

  public PlanBuilder circle(Vec2 centre, double radius, PlanStyle style) {
    return add(new PlanItem.Circle(centre, radius, style));
  }

  /**
   * A short text.
   *
   * @param sizeMm height of capitals on paper
   * @param turn degrees counter-clockwise
   */
  public PlanBuilder label(
      Vec2 at, String text, double sizeMm, PlanItem.Anchor anchor, double turn, PlanStyle style) {
    return add(new PlanItem.Label(at, text, sizeMm, anchor, turn, style));
  }

  /**
   * A dimension from one place to another.
   *
   * @param offset metres from the places to the dimension line; positive to the left on the way
   */
  public PlanBuilder dimension(Vec2 from, Vec2 to, double offset, String text) {
    Vec2 middle = dimensionLine(from, to, offset);
    double turn = upright(to.minus(from));
    return label(middle, text, SMALL_TEXT_MM, PlanItem.Anchor.ABOVE, turn, PlanStyle.DIMENSION);
  }

  /** As {@link #dimension}, without its text: for where that stands elsewhere. Gives its middle. */
  Vec2 dimensionLine(Vec2 from, Vec2 to, double offset) {
    Vec2 along = to.minus(from);
    Vec2 side = new Vec2(-along.y(), along.x()).times(offset / along.length());
    PlanStyle style = PlanStyle.DIMENSION;
    line(List.of(from, from.plus(side.times(OVERSHOOT))), style);
    line(List.of(to, to.plus(side.times(OVERSHOOT))), style);
    Vec2 start = from.plus(side);
    Vec2 end = to.plus(side);
    add(new PlanItem.Arrow(start, end, true, style));
    return start.plus(end).times(0.5);
  }

  /** A text with a line from it to what it speaks of. */
  public PlanBuilder leader(Vec2 to, Vec2 textAt, String text) {
    PlanItem.Anchor anchor = textAt.x() >= to.x() ? PlanItem.Anchor.START : PlanItem.Anchor.END;
    arrow(textAt, to, PlanStyle.DIMENSION);
    return label(textAt, text, SMALL_TEXT_MM, anchor, 0, PlanStyle.TAG);
  }

  /**
   * A bar of heavy and thin fields with the length at each joint.
   *
   * @param at its left end
   * @param unit metres a field: 1, or 0.3048 for feet
   * @param count of fields
   * @param unitName written after the last length: {@code m}, {@code ft}
   */
  public PlanBuilder scaleBar(Vec2 at, double unit, int count, String unitName) {
    Vec2 end = at.plus(new Vec2(unit * count, 0));
    line(List.of(at, end), PlanStyle.NOTE);
    for (int i = 0; i <= count; i++) {
      Vec2 joint = at.plus(new Vec2(unit * i, 0));
      if (i % 2 == 0 && i < count) {
        line(List.of(joint, joint.plus(new Vec2(unit, 0))), SCALE_FIELD);
      }
      String text = i == count ? i + " " + unitName : Integer.toString(i);
      label(joint, text, SMALL_TEXT_MM, PlanItem.Anchor.BELOW, 0, PlanStyle.NOTE);
    }
    return this;
  }

  /**
   * An arrow to the north.
   *
   * @param at its foot
   * @param turn degrees counter-clockwise from up the sheet
   * @param length metres
   */
  public PlanBuilder north(Vec2 at, double turn, double length) {
    double angle = Math.toRadians(turn);
    Vec2 up = new Vec2(-StrictMath.sin(angle), StrictMath.cos(angle)).times(length);
    arrow(at, at.plus(up), PlanStyle.NOTE);
    return label(at.plus(up.times(1.35)), "N", TEXT_MM, PlanItem.Anchor.MIDDLE, 0, PlanStyle.NOTE);
  }

  public PlanDrawing build(String title) {
    return new PlanDrawing(title, items);
  }

  /** What its areas stand for so far. */
  List<PlanThings.Thing> things() {
    return List.copyOf(things);
  }

  PlanBuilder add(PlanItem item) {
    items.add(item);
    return this;
  }

  /** All that another drawing has. */
  PlanBuilder add(PlanDrawing drawing) {
    items.addAll(drawing.items());
    return this;
  }

  /** Degrees of a text along a line, so that it is read from below or from the right. */
  static double upright(Vec2 along) {
    double angle = Math.toDegrees(StrictMath.atan2(along.y(), along.x()));
    if (angle > 90 + LEVEL) {
      return angle - 180;
    }
    return angle <= -90 + LEVEL ? angle + 180 : angle;
  }
}
