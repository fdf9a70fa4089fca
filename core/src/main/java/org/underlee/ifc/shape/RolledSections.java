package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.step.StepInstance;

/**
 * Sections of rolled or cold-formed steel by their parameters, about the centre of their bounding
 * box as IFC4 defines them. Fillets, edge radii and slopes are left out: the area is low by the
 * fillets, a few in a hundred.
 */
final class RolledSections {
  private RolledSections() {}

  static List<Vec2> ring(StepInstance p) {
    List<Vec2> ring =
        switch (p.keyword()) {
          case "IFCISHAPEPROFILEDEF" -> i(p, length(p, 3), length(p, 6));
          case "IFCASYMMETRICISHAPEPROFILEDEF" ->
              i(p, length(p, 8), p.optionalNumber(9).orElse(length(p, 6)));
          case "IFCLSHAPEPROFILEDEF" -> l(p);
          case "IFCTSHAPEPROFILEDEF" -> t(p);
          case "IFCUSHAPEPROFILEDEF" -> u(p);
          case "IFCCSHAPEPROFILEDEF" -> c(p);
          case "IFCZSHAPEPROFILEDEF" -> z(p);
          default -> throw Unreadable.unsupported(p, " as a profile");
        };
    if (!(Outline.signedArea(ring) > 0)) {
      throw Unreadable.degenerate(p, "its thicknesses do not fit in its size");
    }
    return ring;
  }

  private static double length(StepInstance p, int attribute) {
    return Curves.positive(p, attribute);
  }

  private static List<Vec2> points(double... xy) {
    List<Vec2> points = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      points.add(new Vec2(xy[i], xy[i + 1]));
    }
    return points;
  }

  private static List<Vec2> i(StepInstance p, double topWidth, double topThickness) {
    double b = length(p, 3) / 2;
    double h = length(p, 4) / 2;
    double w = length(p, 5) / 2;
    double low = length(p, 6) - h;
    double high = h - topThickness;
    double t = topWidth / 2;
    requireOrder(p, -h, low, high, h);
    requireOrder(p, 0, w, Math.min(b, t));
    return points(
        -b, -h, b, -h, b, low, w, low, w, high, t, high, t, h, -t, h, -t, high, -w, high, -w, low,
        -b, low);
  }

  private static List<Vec2> l(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = p.optionalNumber(4).orElse(2 * h) / 2;
    double t = length(p, 5);
    requireOrder(p, 0, t, Math.min(2 * b, 2 * h));
    return points(-b, -h, b, -h, b, t - h, t - b, t - h, t - b, h, -b, h);
  }

  private static List<Vec2> t(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = length(p, 4) / 2;
    double w = length(p, 5) / 2;
    double f = h - length(p, 6);
    requireOrder(p, 0, w, b);
    requireOrder(p, -h, f, h);
    return points(-w, -h, w, -h, w, f, b, f, b, h, -b, h, -b, f, -w, f);
  }

  private static List<Vec2> u(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = length(p, 4) / 2;
    double w = length(p, 5) - b;
    double f = length(p, 6);
    requireOrder(p, -b, w, b);
    requireOrder(p, f - h, h - f);
    return points(-b, -h, b, -h, b, f - h, w, f - h, w, h - f, b, h - f, b, h, -b, h);
  }

  private static List<Vec2> c(StepInstance p) {
    double h = length(p, 3) / 2;
    double b = length(p, 4) / 2;
    double t = length(p, 5);
    double g = length(p, 6);
    requireOrder(p, -b, t - b, b - t, b);
    requireOrder(p, t - h, g - h, h - g);
    return points(
        -b, -h, b, -h, b, g - h, b - t, g - h, b - t, t - h, t - b, t - h, t - b, h - t, b - t,
        h - t, b - t, h - g, b, h - g, b, h, -b, h);
  }

  private static List<Vec2> z(StepInstance p) {
    double h = length(p, 3) / 2;
    double w = length(p, 5) / 2;
    double b = length(p, 4) - w;
    double f = length(p, 6);
    requireOrder(p, w, b);
    requireOrder(p, f - h, h - f);
    return points(-w, -h, b, -h, b, f - h, w, f - h, w, h, -b, h, -b, h - f, -w, h - f);
  }

  private static void requireOrder(StepInstance p, double... rising) {
    for (int i = 1; i < rising.length; i++) {
      if (!(rising[i - 1] < rising[i])) {
        throw Unreadable.degenerate(p, "its thicknesses do not fit in its size");
      }
    }
  }
}
