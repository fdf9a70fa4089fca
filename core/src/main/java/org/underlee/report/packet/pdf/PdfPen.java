package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;
import org.underlee.geom.Vec2;
import org.underlee.picture.Image;

/** Draws on one page of a PDF. */
final class PdfPen implements Pen {
  /** How far the handles of four curves stand out, that together make a circle of radius 1. */
  private static final double CIRCLE_HANDLE = 0.5522847498;

  private final PDDocument document;
  private final PDPageContentStream out;
  private final Fonts fonts;
  private final double heightMm;

  PdfPen(PDDocument document, PDPageContentStream out, Fonts fonts, double heightMm) {
    this.document = document;
    this.out = out;
    this.fonts = fonts;
    this.heightMm = heightMm;
  }

  /** Something that writes to the page. */
  private interface Act {
    void on(PDPageContentStream out) throws IOException;
  }

  private void draw(Act act) {
    try {
      act.on(out);
    } catch (IOException e) {
      throw new UncheckedIOException("writing a page in memory", e);
    }
  }

  @Override
  public void text(
      double x, double y, String text, boolean heavy, double points, int rgb, double turn) {
    double angle = Math.toRadians(turn);
    draw(
        o -> {
          o.beginText();
          o.setFont(fonts.of(heavy), (float) points);
          o.setNonStrokingColor(red(rgb), green(rgb), blue(rgb));
          o.setTextMatrix(
              new Matrix(
                  (float) StrictMath.cos(angle),
                  (float) StrictMath.sin(angle),
                  (float) -StrictMath.sin(angle),
                  (float) StrictMath.cos(angle),
                  x(x),
                  y(y)));
          o.showText(fonts.writable(text));
          o.endText();
        });
  }

  @Override
  public void line(List<Vec2> points, double widthMm, int rgb, List<Double> dashMm) {
    draw(
        o -> {
          stroke(o, widthMm, rgb, dashMm);
          path(o, points);
          o.stroke();
        });
  }

  @Override
  public void fill(double x, double y, double width, double height, int rgb) {
    draw(
        o -> {
          o.setNonStrokingColor(red(rgb), green(rgb), blue(rgb));
          o.addRect(x(x), y(y + height), (float) mm(width), (float) mm(height));
          o.fill();
        });
  }

  @Override
  public void fill(List<List<Vec2>> rings, int rgb) {
    draw(
        o -> {
          o.setNonStrokingColor(red(rgb), green(rgb), blue(rgb));
          for (List<Vec2> ring : rings) {
            path(o, ring);
            o.closePath();
          }
          o.fillEvenOdd();
        });
  }

  @Override
  public void outline(List<Vec2> ring, double widthMm, int rgb, List<Double> dashMm) {
    draw(
        o -> {
          stroke(o, widthMm, rgb, dashMm);
          path(o, ring);
          o.closePath();
          o.stroke();
        });
  }

  @Override
  public void circle(Vec2 centre, double radius, double widthMm, int rgb, List<Double> dashMm) {
    draw(
        o -> {
          stroke(o, widthMm, rgb, dashMm);
          round(o, centre, radius);
          o.stroke();
        });
  }

  @Override
  public void disc(Vec2 centre, double radius, int rgb) {
    draw(
        o -> {
          o.setNonStrokingColor(red(rgb), green(rgb), blue(rgb));
          round(o, centre, radius);
          o.fill();
        });
  }

  private void round(PDPageContentStream o, Vec2 c, double r) throws IOException {
    double h = CIRCLE_HANDLE * r;
    o.moveTo(x(c.x() + r), y(c.y()));
    curve(o, c.x() + r, c.y() + h, c.x() + h, c.y() + r, c.x(), c.y() + r);
    curve(o, c.x() - h, c.y() + r, c.x() - r, c.y() + h, c.x() - r, c.y());
    curve(o, c.x() - r, c.y() - h, c.x() - h, c.y() - r, c.x(), c.y() - r);
    curve(o, c.x() + h, c.y() - r, c.x() + r, c.y() - h, c.x() + r, c.y());
    o.closePath();
  }

  private void curve(
      PDPageContentStream o, double x1, double y1, double x2, double y2, double x3, double y3)
      throws IOException {
    o.curveTo(x(x1), y(y1), x(x2), y(y2), x(x3), y(y3));
  }

  @Override
  public void image(Image image, double x, double y, double width, double height) {
    draw(
        o ->
            o.drawImage(
                Pixels.of(document, image),
                x(x),
                y(y + height),
                (float) mm(width),
                (float) mm(height)));
  }

  @Override
  public void close() throws IOException {
    out.close();
  }

  private void stroke(PDPageContentStream o, double widthMm, int rgb, List<Double> dashMm)
      throws IOException {
    o.setStrokingColor(red(rgb), green(rgb), blue(rgb));
    o.setLineWidth((float) mm(widthMm));
    float[] dash = new float[dashMm.size()];
    for (int i = 0; i < dash.length; i++) {
      dash[i] = (float) mm(dashMm.get(i));
    }
    o.setLineDashPattern(dash, 0);
  }

  private void path(PDPageContentStream o, List<Vec2> points) throws IOException {
    for (int i = 0; i < points.size(); i++) {
      float x = x(points.get(i).x());
      float y = y(points.get(i).y());
      if (i == 0) {
        o.moveTo(x, y);
      } else {
        o.lineTo(x, y);
      }
    }
  }

  private static double mm(double mm) {
    return mm * POINTS_PER_MM;
  }

  private float x(double x) {
    return (float) mm(x);
  }

  private float y(double y) {
    return (float) mm(heightMm - y);
  }

  private static float red(int rgb) {
    return (rgb >> 16 & 0xff) / 255f;
  }

  private static float green(int rgb) {
    return (rgb >> 8 & 0xff) / 255f;
  }

  private static float blue(int rgb) {
    return (rgb & 0xff) / 255f;
  }
}
