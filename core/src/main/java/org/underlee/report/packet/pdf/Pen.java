package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.picture.Image;

/**
 * Draws on one page in millimetres, from its upper left corner, y down. Sizes of letters are
 * points, colours are 0xRRGGBB.
 */
interface Pen extends AutoCloseable {
  double POINTS_PER_MM = 72 / 25.4;

  /**
   * A text with its base line at y.
   *
   * @param turn degrees counter-clockwise about its start
   */
  void text(double x, double y, String text, boolean heavy, double points, int rgb, double turn);

  default void text(double x, double y, String text, boolean heavy, double points, int rgb) {
    text(x, y, text, heavy, points, rgb, 0);
  }

  void line(List<Vec2> points, double widthMm, int rgb, List<Double> dashMm);

  default void line(double x0, double y0, double x1, double y1, double widthMm, int rgb) {
    line(List.of(new Vec2(x0, y0), new Vec2(x1, y1)), widthMm, rgb, List.of());
  }

  void fill(double x, double y, double width, double height, int rgb);

  /** Filled rings: the first is the outside, the rest are holes. */
  void fill(List<List<Vec2>> rings, int rgb);

  void outline(List<Vec2> ring, double widthMm, int rgb, List<Double> dashMm);

  default void box(double x, double y, double width, double height, double lineMm, int rgb) {
    outline(
        List.of(
            new Vec2(x, y),
            new Vec2(x + width, y),
            new Vec2(x + width, y + height),
            new Vec2(x, y + height)),
        lineMm,
        rgb,
        List.of());
  }

  /** A circle, stroked. */
  void circle(Vec2 centre, double radius, double widthMm, int rgb, List<Double> dashMm);

  void disc(Vec2 centre, double radius, int rgb);

  void image(Image image, double x, double y, double width, double height);

  /** Lays the page aside. */
  @Override
  void close() throws IOException;
}
