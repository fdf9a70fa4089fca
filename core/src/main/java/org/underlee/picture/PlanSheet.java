package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec2;

/**
 * The paper of a plan: its scale and the part of the world on it, texts and margin included.
 *
 * @param denominator 50 for a scale of 1:50
 * @param low lower left of the paper, world metres
 * @param high upper right of the paper, world metres
 */
public record PlanSheet(double denominator, Vec2 low, Vec2 high) {
  private static final double MM_PER_METRE = 1000;

  /** Usual scales of building drawings (ISO 5455). */
  public static final List<Integer> METRIC_SCALES = List.of(5, 10, 20, 25, 50, 100, 200, 500);

  /** Usual scales in feet and inches: 3, 1 1/2, 1, 3/4, 1/2, 3/8, 1/4, 1/8 and 1/16 in a foot. */
  public static final List<Integer> INCH_SCALES = List.of(4, 8, 12, 16, 24, 32, 48, 96, 192);

  /**
   * The paper that holds a whole drawing.
   *
   * @param marginMm free paper around it
   * @throws IllegalArgumentException when there is nothing in the drawing
   */
  public static PlanSheet of(ScaledDrawing drawing, double denominator, double marginMm) {
    double metresPerMm = metresPerMm(denominator);
    List<Vec2> reach = new ArrayList<>();
    drawing.at(denominator).items().forEach(item -> PlanReach.of(item, metresPerMm, reach));
    if (reach.isEmpty()) {
      throw new IllegalArgumentException("the plan '" + drawing.title() + "' is empty");
    }
    double margin = marginMm * metresPerMm;
    return new PlanSheet(
        denominator,
        new Vec2(
            reach.stream().mapToDouble(Vec2::x).min().orElseThrow() - margin,
            reach.stream().mapToDouble(Vec2::y).min().orElseThrow() - margin),
        new Vec2(
            reach.stream().mapToDouble(Vec2::x).max().orElseThrow() + margin,
            reach.stream().mapToDouble(Vec2::y).max().orElseThrow() + margin));
  }

  /**
   * The largest of some scales at which the drawing fits on a paper, or the smallest of them when
   * it fits at none.
   *
   * @param scales denominators, in rising order
   */
  public static PlanSheet fitting(
      ScaledDrawing drawing,
      double widthMm,
      double heightMm,
      double marginMm,
      List<Integer> scales) {
    return scales.stream()
        .map(scale -> of(drawing, scale, marginMm))
        .filter(sheet -> sheet.widthMm() <= widthMm && sheet.heightMm() <= heightMm)
        .findFirst()
        .orElseGet(() -> of(drawing, scales.get(scales.size() - 1), marginMm));
  }

  /** Metres of the drawing that a millimetre of paper shows. */
  static double metresPerMm(double denominator) {
    return denominator / MM_PER_METRE;
  }

  public double widthMm() {
    return onPaper(high.x() - low.x());
  }

  public double heightMm() {
    return onPaper(high.y() - low.y());
  }

  /** A length of the world, metres, on paper, mm. */
  double onPaper(double metres) {
    return metres * MM_PER_METRE / denominator;
  }

  /** A place of the world on paper: mm right of and below the upper left corner. */
  public Vec2 onPaper(Vec2 p) {
    return new Vec2(onPaper(p.x() - low.x()), onPaper(high.y() - p.y()));
  }
}
