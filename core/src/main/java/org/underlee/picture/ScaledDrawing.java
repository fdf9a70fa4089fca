package org.underlee.picture;

/**
 * A drawing that knows at each scale where its texts have room: they keep their size on paper, and
 * what is drawn does not.
 */
public interface ScaledDrawing {
  String title();

  /**
   * As it is on paper or on a screen.
   *
   * @param denominator 50 for a scale of 1:50
   */
  PlanDrawing at(double denominator);
}
