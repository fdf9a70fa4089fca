package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec2;

/**
 * An arrow brought to paper, mm, y down.
 *
 * @param shaft two points, ending inside the heads
 * @param heads three points each
 */
record ArrowOnPaper(List<Vec2> shaft, List<List<Vec2>> heads) {
  private static final double HEAD_MM = 2.2;

  /** Half the width of a head over its length: an angle of 25° or so. */
  private static final double SLENDER = 0.22;

  /** Of the head. */
  static final double HALF_WIDTH_MM = SLENDER * HEAD_MM;

  /** A head takes no more than this share of a short arrow. */
  private static final double MOST = 0.45;

  static ArrowOnPaper of(PlanItem.Arrow arrow, PlanSheet sheet) {
    Vec2 from = sheet.onPaper(arrow.from());
    Vec2 to = sheet.onPaper(arrow.to());
    double length = to.minus(from).length();
    if (!(length > 0)) {
      return new ArrowOnPaper(List.of(from, to), List.of());
    }
    Vec2 head = to.minus(from).times(Math.min(HEAD_MM, MOST * length) / length);
    List<List<Vec2>> heads = new ArrayList<>();
    heads.add(head(to, head));
    if (arrow.bothEnds()) {
      heads.add(head(from, head.times(-1)));
    }
    Vec2 start = arrow.bothEnds() ? from.plus(head.times(0.5)) : from;
    return new ArrowOnPaper(List.of(start, to.minus(head.times(0.5))), heads);
  }

  private static List<Vec2> head(Vec2 tip, Vec2 head) {
    Vec2 side = new Vec2(-head.y(), head.x()).times(SLENDER);
    Vec2 back = tip.minus(head);
    return List.of(tip, back.plus(side), back.minus(side));
  }
}
