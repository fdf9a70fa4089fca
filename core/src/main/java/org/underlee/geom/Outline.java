package org.underlee.geom;

import java.util.List;

/**
 * A plane region: an outer ring and any number of holes. Rings are open (the first point is not
 * repeated); the outer one runs counter-clockwise and the holes clockwise, whatever way they were
 * given.
 */
public record Outline(List<Vec2> outer, List<List<Vec2>> holes) {
  /**
   * @throws IllegalArgumentException when a ring has fewer than three points
   */
  public Outline {
    outer = wound(outer, true);
    holes = holes.stream().map(h -> wound(h, false)).toList();
  }

  public static Outline of(List<Vec2> outer) {
    return new Outline(outer, List.of());
  }

  /** A rectangle from one corner to the other. */
  public static Outline rectangle(double x0, double y0, double x1, double y1) {
    return of(List.of(new Vec2(x0, y0), new Vec2(x1, y0), new Vec2(x1, y1), new Vec2(x0, y1)));
  }

  /** A regular polygon whose area equals that of the circle, so that volumes come out right. */
  public static List<Vec2> circle(double cx, double cy, double radius, int sides) {
    double step = 2 * Math.PI / sides;
    double r = radius * Math.sqrt(step / Math.sin(step));
    return java.util.stream.IntStream.range(0, sides)
        .mapToObj(i -> new Vec2(cx + r * Math.cos(i * step), cy + r * Math.sin(i * step)))
        .toList();
  }

  /** Area of the outer ring less the holes, never negative. */
  public double area() {
    double area = signedArea(outer);
    for (List<Vec2> hole : holes) {
      area += signedArea(hole);
    }
    return area;
  }

  /** Positive when the ring runs counter-clockwise. */
  public static double signedArea(List<Vec2> ring) {
    Vec2 o = ring.get(0);
    double twice = 0;
    for (int i = 1; i + 1 < ring.size(); i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get(i + 1);
      // written out: every outline of every part goes through
      twice += (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x());
    }
    return twice / 2;
  }

  private static List<Vec2> wound(List<Vec2> ring, boolean counterClockwise) {
    if (ring.size() < 3) {
      throw new IllegalArgumentException("a ring needs three points, got " + ring);
    }
    if (signedArea(ring) >= 0 == counterClockwise) {
      return List.copyOf(ring);
    }
    java.util.ArrayList<Vec2> turned = new java.util.ArrayList<>(ring);
    java.util.Collections.reverse(turned);
    return List.copyOf(turned);
  }
}
