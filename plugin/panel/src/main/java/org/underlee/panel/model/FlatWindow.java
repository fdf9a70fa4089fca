package org.underlee.panel.model;

import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanSheet;
import org.underlee.picture.ScaledDrawing;

/**
 * The part of a flat drawing that is seen.
 *
 * @param width of the window, pixels; likewise height
 * @param pixelsPerMm of paper: how large letters are
 */
record FlatWindow(Vec2 centre, double metresPerPixel, int width, int height, double pixelsPerMm) {
  private static final double MARGIN_MM = 8;
  private static final double MM = 1000;

  /** What is brought near has some room around it. */
  private static final double ROOM = 1.25;

  /** Metres a pixel; a small part is not brought nearer than this. */
  private static final double NEAREST = 0.0005;

  private static final int MOST_TRIES = 60;
  private static final double LEAST_STEP = 1.02;

  /** One that shows a whole drawing. */
  static FlatWindow fitting(ScaledDrawing drawing, int width, int height, double pixelsPerMm) {
    // letters keep their size, so that they need more room the smaller the drawing is
    double denominator = 1;
    PlanSheet sheet = PlanSheet.of(drawing, denominator, MARGIN_MM);
    for (int i = 0; i < MOST_TRIES; i++) {
      double over =
          Math.max(sheet.widthMm() * pixelsPerMm / width, sheet.heightMm() * pixelsPerMm / height);
      if (over <= 1) {
        break;
      }
      denominator *= Math.max(LEAST_STEP, Math.sqrt(over));
      sheet = PlanSheet.of(drawing, denominator, MARGIN_MM);
    }
    Vec2 centre = sheet.low().plus(sheet.high()).times(0.5);
    return new FlatWindow(centre, denominator / MM / pixelsPerMm, width, height, pixelsPerMm);
  }

  /** {@code 50} for a scale of 1:50. */
  double denominator() {
    return metresPerPixel * pixelsPerMm * MM;
  }

  PlanSheet sheet() {
    Vec2 reach = new Vec2(width, height).times(metresPerPixel / 2);
    return new PlanSheet(denominator(), centre.minus(reach), centre.plus(reach));
  }

  /** Whether all of a drawing is seen. */
  boolean shows(ScaledDrawing drawing) {
    PlanSheet all = PlanSheet.of(drawing, denominator(), 0);
    PlanSheet seen = sheet();
    return all.low().x() >= seen.low().x()
        && all.low().y() >= seen.low().y()
        && all.high().x() <= seen.high().x()
        && all.high().y() <= seen.high().y();
  }

  /** The same place at the same scale, in another window or with other letters. */
  FlatWindow resized(int wide, int high, double perMm) {
    return new FlatWindow(centre, metresPerPixel, wide, high, perMm);
  }

  /** The drawing moved under the hand, in pixels. */
  FlatWindow moved(double right, double down) {
    return at(centre.plus(new Vec2(-right, down).times(metresPerPixel)), metresPerPixel);
  }

  /** Nearer or further; what is at the pixel stays there. */
  FlatWindow zoomed(double factor, double x, double y) {
    FlatWindow other = at(centre, metresPerPixel * factor);
    return at(centre.plus(place(x, y).minus(other.place(x, y))), other.metresPerPixel);
  }

  /** One that some places fill, with room around. */
  FlatWindow near(List<Vec2> places) {
    return at(middle(places), Math.max(leastFor(places), NEAREST));
  }

  /** The same where it shows some places, else moved there, and further away if they need it. */
  FlatWindow holding(List<Vec2> places) {
    PlanSheet seen = sheet();
    boolean isSeen =
        places.stream()
            .allMatch(
                p ->
                    p.x() >= seen.low().x()
                        && p.y() >= seen.low().y()
                        && p.x() <= seen.high().x()
                        && p.y() <= seen.high().y());
    return isSeen ? this : at(middle(places), Math.max(leastFor(places), metresPerPixel));
  }

  private double leastFor(List<Vec2> places) {
    Vec2 size = high(places).minus(low(places));
    return Math.max(size.x() / width, size.y() / height) * ROOM;
  }

  private static Vec2 middle(List<Vec2> places) {
    return low(places).plus(high(places)).times(0.5);
  }

  private static Vec2 low(List<Vec2> places) {
    return places.stream()
        .reduce((a, b) -> new Vec2(Math.min(a.x(), b.x()), Math.min(a.y(), b.y())))
        .orElseThrow();
  }

  private static Vec2 high(List<Vec2> places) {
    return places.stream()
        .reduce((a, b) -> new Vec2(Math.max(a.x(), b.x()), Math.max(a.y(), b.y())))
        .orElseThrow();
  }

  private FlatWindow at(Vec2 middle, double scale) {
    return new FlatWindow(middle, scale, width, height, pixelsPerMm);
  }

  /** The place of the drawing that a pixel shows. */
  Vec2 place(double x, double y) {
    return centre.plus(new Vec2(x - width / 2.0, height / 2.0 - y).times(metresPerPixel));
  }

  /** The pixel that shows a place of the drawing. */
  Vec2 pixel(Vec2 place) {
    Vec2 beside = place.minus(centre).times(1 / metresPerPixel);
    return new Vec2(width / 2.0 + beside.x(), height / 2.0 - beside.y());
  }
}
