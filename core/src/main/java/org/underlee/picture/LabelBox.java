package org.underlee.picture;

import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanItem.Anchor;

/**
 * Where a label's letters stand, in paper mm from its place, x along the text and y up.
 *
 * @param start of the base line, along the text
 * @param base height of the base line
 * @param width of the text in the built-in letters; other letters differ a little
 * @param height of capitals
 * @param along the way the text runs on paper with y up, of length one
 */
record LabelBox(double start, double base, double width, double height, Vec2 along) {
  /** Free paper between a place and a text above or below it, for capitals 1 high. */
  private static final double GAP = 0.6;

  /** Free paper about a text on a plate, for capitals 1 high. */
  private static final double PLATE_SPACE = 0.35;

  static LabelBox of(PlanItem.Label label) {
    double height = label.sizeMm();
    double width = StrokeFont.BUILT_IN.width(label.text()) * height;
    Anchor anchor = label.anchor();
    double start = anchor == Anchor.START ? 0 : anchor == Anchor.END ? -width : -width / 2;
    double base =
        switch (anchor) {
          case ABOVE -> GAP * height;
          case BELOW -> -(1 + GAP) * height;
          case START, MIDDLE, END -> -height / 2;
        };
    double turn = Math.toRadians(label.turn());
    Vec2 along = new Vec2(StrictMath.cos(turn), StrictMath.sin(turn));
    return new LabelBox(start, base, width, height, along);
  }

  /** The corners of a label's plate on a sheet, mm from its upper left, y down. */
  static List<Vec2> plate(PlanItem.Label label, PlanSheet sheet) {
    Vec2 at = sheet.onPaper(label.at());
    return of(label).corners().stream().map(c -> new Vec2(at.x() + c.x(), at.y() - c.y())).toList();
  }

  double space() {
    return PLATE_SPACE * height;
  }

  /** The corners of its plate, from its place, on paper with y up. */
  List<Vec2> corners() {
    double left = start - space();
    double right = start + width + space();
    double low = base - space();
    double high = base + height + space();
    return List.of(turned(left, low), turned(right, low), turned(right, high), turned(left, high));
  }

  /** Start of the base line, from its place, on paper with y up. */
  Vec2 origin() {
    return turned(start, base);
  }

  private Vec2 turned(double x, double y) {
    return new Vec2(x * along.x() - y * along.y(), x * along.y() + y * along.x());
  }
}
