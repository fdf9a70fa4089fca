package org.underlee.picture;

import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;

/** One thing in a plan. Places are world metres, y up the sheet; sizes of text are paper mm. */
public sealed interface PlanItem {
  PlanStyle style();

  /** A region, filled where its style says so. */
  record Area(Outline outline, PlanStyle style) implements PlanItem {}

  /** An open line through at least two points. */
  record Line(List<Vec2> points, PlanStyle style) implements PlanItem {
    public Line {
      points = List.copyOf(points);
    }
  }

  /** A line with a head at {@code to}, and at {@code from} too when {@code bothEnds}. */
  record Arrow(Vec2 from, Vec2 to, boolean bothEnds, PlanStyle style) implements PlanItem {}

  record Circle(Vec2 centre, double radius, PlanStyle style) implements PlanItem {}

  /**
   * A short text.
   *
   * @param sizeMm height of capitals on paper
   * @param turn degrees counter-clockwise about {@code at}
   */
  record Label(Vec2 at, String text, double sizeMm, Anchor anchor, double turn, PlanStyle style)
      implements PlanItem {}

  /** Where a text stands to its place. */
  enum Anchor {
    /** It starts there, at half its height. */
    START,
    /** Its middle is there. */
    MIDDLE,
    /** It ends there, at half its height. */
    END,
    /** Centred, a little above. */
    ABOVE,
    /** Centred, a little below. */
    BELOW
  }
}
