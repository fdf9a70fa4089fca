package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.underlee.finding.InputException;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.ifc.shape.Fillets.Corner;
import org.underlee.step.StepInstance;

/**
 * Sections of rolled or cold-formed steel by their parameters, about the centre of their bounding
 * box as IFC4 defines them, with fillets and edge radii. Slopes of flanges and legs are left out:
 * the thickness given is that in the middle, so the area stays.
 */
final class RolledSections {
  private RolledSections() {}

  /**
   * The ring of a section.
   *
   * @param sag how far a polyline may leave its arc, in file units
   */
  static List<Vec2> ring(StepInstance p, double sag) {
    List<Corner> corners =
        switch (p.keyword()) {
          case "IFCISHAPEPROFILEDEF" -> i(p, length(p, 3), length(p, 6), radius(p, 7));
          case "IFCASYMMETRICISHAPEPROFILEDEF" ->
              i(
                  p,
                  length(p, 8),
                  p.optionalNumber(9).orElse(length(p, 6)),
                  p.isOmitted(10) ? radius(p, 7) : radius(p, 10));
          case "IFCLSHAPEPROFILEDEF" -> l(p);
          case "IFCTSHAPEPROFILEDEF" -> t(p);
          case "IFCUSHAPEPROFILEDEF" -> u(p);
          case "IFCCSHAPEPROFILEDEF" -> c(p);
          case "IFCZSHAPEPROFILEDEF" -> z(p);
          case "IFCTRAPEZIUMPROFILEDEF" -> trapezium(p);
          default -> throw Unreadable.unsupported(p, " as a profile");
        };
    List<Vec2> ring = Rings.ring(p, Fillets.ring(corners, sag));
    if (!(Outline.signedArea(ring) > 0)) {
      throw misfit(p);
    }
    return ring;
  }

  private static double length(StepInstance p, int attribute) {
    return Curves.positive(p, attribute);
  }

  private static double radius(StepInstance p, int attribute) {
    OptionalDouble r = p.optionalNumber(attribute);
    return r.isPresent() ? Math.max(0, r.getAsDouble()) : 0;
  }

  /** Corners as x, y and radius each. */
  private static List<Corner> corners(double... xyr) {
    List<Corner> corners = new ArrayList<>();
    for (int i = 0; i < xyr.length; i += 3) {
      corners.add(new Corner(xyr[i], xyr[i + 1], xyr[i + 2]));
    }
    return corners;
  }

  private static List<Corner> i(
      StepInstance p, double topWidth, double topThickness, double topFillet) {
    double b = length(p, 3) / 2;
    double h = length(p, 4) / 2;
    double w = length(p, 5) / 2;
    double low = length(p, 6) - h;
    double high = h - topThickness;
    double t = topWidth / 2;
    double r = radius(p, 7);
    double e = p.keyword().equals("IFCISHAPEPROFILEDEF") ? radius(p, 8) : 0;
    double s = topFillet;
    requireOrder(p, -h, low + r, high - s, h);
    requireOrder(p, 0, w + Math.max(r + e, s + e), Math.min(b, t));
    return corners(
        -b, -h, 0, b, -h, 0, b, low, e, w, low, r, w, high, s, t, high, e, t, h, 0, -t, h, 0, -t,
        high, e, -w, high, s, -w, low, r, -b, low, e);
  }

  private static List<Corner> l(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = p.optionalNumber(4).orElse(2 * h) / 2;
    double t = length(p, 5);
    double r = radius(p, 6);
    double e = radius(p, 7);
    requireOrder(p, 0, t + r, Math.min(2 * b, 2 * h));
    return corners(-b, -h, 0, b, -h, 0, b, t - h, e, t - b, t - h, r, t - b, h, e, -b, h, 0);
  }

  private static List<Corner> t(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = length(p, 4) / 2;
    double w = length(p, 5) / 2;
    double f = h - length(p, 6);
    double r = radius(p, 7);
    double e = radius(p, 8);
    double k = radius(p, 9);
    requireOrder(p, 0, w + r, b);
    requireOrder(p, -h, f - r, h);
    return corners(-w, -h, k, w, -h, k, w, f, r, b, f, e, b, h, 0, -b, h, 0, -b, f, e, -w, f, r);
  }

  private static List<Corner> u(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = length(p, 4) / 2;
    double w = length(p, 5) - b;
    double f = length(p, 6);
    double r = radius(p, 7);
    double e = radius(p, 8);
    requireOrder(p, -b, w + r, b);
    requireOrder(p, f + r - h, h - f - r);
    return corners(
        -b, -h, 0, b, -h, 0, b, f - h, e, w, f - h, r, w, h - f, r, b, h - f, e, b, h, 0, -b, h, 0);
  }

  private static List<Corner> c(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = length(p, 4) / 2;
    double t = length(p, 5);
    double g = length(p, 6);
    double r = radius(p, 7);
    double o = r > 0 ? r + t : 0;
    requireOrder(p, -b, t + r - b, b - t - r, b);
    requireOrder(p, t - h, g - h, h - g);
    return corners(
        -b, -h, o, b, -h, o, b, g - h, 0, b - t, g - h, 0, b - t, t - h, r, t - b, t - h, r, t - b,
        h - t, r, b - t, h - t, r, b - t, h - g, 0, b, h - g, 0, b, h, o, -b, h, o);
  }

  private static List<Corner> z(StepInstance p) {
    double h = length(p, 3) / 2;
    double w = length(p, 5) / 2;
    double b = length(p, 4) - w;
    double f = length(p, 6);
    double r = radius(p, 7);
    double e = radius(p, 8);
    requireOrder(p, w, b);
    requireOrder(p, f - h, h - f);
    return corners(
        -w, -h, 0, b, -h, 0, b, f - h, e, w, f - h, r, w, h, 0, -b, h, 0, -b, h - f, e, -w, h - f,
        r);
  }

  private static List<Corner> trapezium(StepInstance p) {
    double b = length(p, 3) / 2;
    double top = length(p, 4);
    double h = length(p, 5) / 2;
    double from = p.number(6) - b;
    return corners(-b, -h, 0, b, -h, 0, from + top, h, 0, from, h, 0);
  }

  private static void requireOrder(StepInstance p, double... rising) {
    for (int i = 1; i < rising.length; i++) {
      if (!(rising[i - 1] < rising[i])) {
        throw misfit(p);
      }
    }
  }

  private static InputException misfit(StepInstance p) {
    return Unreadable.degenerate(p, "its thicknesses do not fit in its size");
  }
}
