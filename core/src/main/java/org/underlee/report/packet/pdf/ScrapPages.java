package org.underlee.report.packet.pdf;

import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.picture.Image;

/** Pages that are only counted: nothing is drawn on them. */
final class ScrapPages extends Pages {
  ScrapPages(Pages like) {
    super(like.fonts(), like.packet(), like.paper());
  }

  @Override
  Pen turn(boolean wide) {
    return new DryPen();
  }

  @Override
  Pen again(int page) {
    return new DryPen();
  }

  private static final class DryPen implements Pen {
    @Override
    public void text(
        double x, double y, String text, boolean heavy, double points, int rgb, double turn) {}

    @Override
    public void line(List<Vec2> points, double widthMm, int rgb, List<Double> dashMm) {}

    @Override
    public void fill(double x, double y, double width, double height, int rgb) {}

    @Override
    public void fill(List<List<Vec2>> rings, int rgb) {}

    @Override
    public void outline(List<Vec2> ring, double widthMm, int rgb, List<Double> dashMm) {}

    @Override
    public void circle(Vec2 centre, double radius, double widthMm, int rgb, List<Double> dashMm) {}

    @Override
    public void disc(Vec2 centre, double radius, int rgb) {}

    @Override
    public void image(Image image, double x, double y, double width, double height) {}

    @Override
    public void close() {}
  }
}
