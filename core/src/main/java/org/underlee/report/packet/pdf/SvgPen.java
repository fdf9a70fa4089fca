package org.underlee.report.packet.pdf;

import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import org.underlee.geom.Vec2;
import org.underlee.picture.Image;
import org.underlee.picture.Png;
import org.underlee.picture.SvgText;

/**
 * Draws on one page as SVG, in millimetres. Each text says how long it is, so that it takes no more
 * room in other letters than in those it was set with.
 */
final class SvgPen implements Pen {
  private final Fonts fonts;
  private final StringBuilder out = new StringBuilder();

  SvgPen(Fonts fonts, double widthMm, double heightMm, String title) {
    this.fonts = fonts;
    String size = SvgText.number(widthMm) + " " + SvgText.number(heightMm);
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + SvgText.number(widthMm))
        .append("mm\" height=\"" + SvgText.number(heightMm) + "mm\" viewBox=\"0 0 " + size)
        .append("\">\n<title>" + SvgText.escaped(title) + "</title>\n<style>")
        .append("text{font-family:'Open Sans',Arial,sans-serif;white-space:pre}")
        .append(".b{font-weight:700}path,circle{fill:none}</style>\n")
        .append("<path style=\"fill:#ffffff\" d=\"M0,0H" + SvgText.number(widthMm))
        .append("V" + SvgText.number(heightMm) + "H0Z\"/>\n");
  }

  /** The page as it is now, as a file. */
  String file() {
    return out + "</svg>\n";
  }

  @Override
  public void text(
      double x, double y, String text, boolean heavy, double points, int rgb, double turn) {
    String safe = fonts.writable(text);
    if (safe.isBlank()) {
      return;
    }
    Vec2 at = new Vec2(x, y);
    out.append(heavy ? "<text class=\"b\" " : "<text ")
        .append("x=\"" + SvgText.number(x) + "\" y=\"" + SvgText.number(y))
        .append("\" font-size=\"" + SvgText.number(points / POINTS_PER_MM))
        .append("\" textLength=\"" + SvgText.number(fonts.width(safe, heavy, points)))
        .append("\" lengthAdjust=\"spacingAndGlyphs\" fill=\"" + SvgText.colour(rgb) + "\"")
        .append(
            turn == 0
                ? ""
                : " transform=\"rotate(" + SvgText.number(-turn) + "," + SvgText.pair(at) + ")\"")
        .append(">" + SvgText.escaped(safe) + "</text>\n");
  }

  @Override
  public void line(List<Vec2> points, double widthMm, int rgb, List<Double> dashMm) {
    path(way(points), stroke(widthMm, rgb, dashMm));
  }

  @Override
  public void fill(double x, double y, double width, double height, int rgb) {
    String right = SvgText.number(x + width);
    String way = "M" + SvgText.pair(new Vec2(x, y)) + "H" + right + "V";
    path(way + SvgText.number(y + height) + "H" + SvgText.number(x) + "Z", filled(rgb));
  }

  @Override
  public void fill(List<List<Vec2>> rings, int rgb) {
    String way = rings.stream().map(r -> way(r) + "Z").collect(Collectors.joining());
    path(way, " fill-rule=\"evenodd\"" + filled(rgb));
  }

  @Override
  public void outline(List<Vec2> ring, double widthMm, int rgb, List<Double> dashMm) {
    path(way(ring) + "Z", stroke(widthMm, rgb, dashMm));
  }

  @Override
  public void circle(Vec2 centre, double radius, double widthMm, int rgb, List<Double> dashMm) {
    round(centre, radius, stroke(widthMm, rgb, dashMm));
  }

  @Override
  public void disc(Vec2 centre, double radius, int rgb) {
    round(centre, radius, filled(rgb));
  }

  @Override
  public void image(Image image, double x, double y, double width, double height) {
    out.append("<image x=\"" + SvgText.number(x) + "\" y=\"" + SvgText.number(y))
        .append("\" width=\"" + SvgText.number(width) + "\" height=\"" + SvgText.number(height))
        .append("\" href=\"data:image/png;base64,")
        .append(Base64.getEncoder().encodeToString(Png.encode(image)) + "\"/>\n");
  }

  private void round(Vec2 centre, double radius, String look) {
    out.append("<circle cx=\"" + SvgText.number(centre.x()))
        .append("\" cy=\"" + SvgText.number(centre.y()) + "\" r=\"" + SvgText.number(radius))
        .append("\"" + look + "/>\n");
  }

  private void path(String way, String look) {
    out.append("<path d=\"" + way + "\"" + look + "/>\n");
  }

  private static String way(List<Vec2> points) {
    return points.stream().map(SvgText::pair).collect(Collectors.joining("L", "M", ""));
  }

  private static String filled(int rgb) {
    return " style=\"fill:" + SvgText.colour(rgb) + "\"";
  }

  private static String stroke(double widthMm, int rgb, List<Double> dashMm) {
    String dash = dashMm.stream().map(SvgText::number).collect(Collectors.joining(" "));
    return " stroke=\""
        + SvgText.colour(rgb)
        + "\" stroke-width=\""
        + SvgText.number(widthMm)
        + (dash.isEmpty() ? "\"" : "\" stroke-dasharray=\"" + dash + "\"");
  }

  @Override
  public void close() {}
}
