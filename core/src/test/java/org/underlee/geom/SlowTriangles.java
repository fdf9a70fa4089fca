package org.underlee.geom;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The obvious way: two triangles are apart when some axis of the seventeen that matter has their
 * shadows apart. In whole arithmetic, pair by pair.
 */
public final class SlowTriangles {
  private SlowTriangles() {}

  private record Big(BigDecimal x, BigDecimal y, BigDecimal z) {
    static Big of(Vec3 p) {
      return new Big(new BigDecimal(p.x()), new BigDecimal(p.y()), new BigDecimal(p.z()));
    }

    Big minus(Big o) {
      return new Big(x.subtract(o.x), y.subtract(o.y), z.subtract(o.z));
    }

    Big cross(Big o) {
      return new Big(
          y.multiply(o.z).subtract(z.multiply(o.y)),
          z.multiply(o.x).subtract(x.multiply(o.z)),
          x.multiply(o.y).subtract(y.multiply(o.x)));
    }

    BigDecimal dot(Big o) {
      return x.multiply(o.x).add(y.multiply(o.y)).add(z.multiply(o.z));
    }

    boolean isNothing() {
      return x.signum() == 0 && y.signum() == 0 && z.signum() == 0;
    }
  }

  /** All pairs that meet, as {@code a * count of b + b}; triangles without area meet nothing. */
  public static List<Long> meeting(Mesh a, Mesh b) {
    List<Long> pairs = new ArrayList<>();
    for (int i = 0; i < a.triangleCount(); i++) {
      for (int j = 0; j < b.triangleCount(); j++) {
        if (box(a, i).meets(box(b, j)) && meet(corners(a, i), corners(b, j))) {
          pairs.add((long) i * b.triangleCount() + j);
        }
      }
    }
    return pairs;
  }

  /** Whether any two meet. */
  public static boolean anyMeet(Mesh a, Mesh b) {
    List<Box> boxes = IntStream.range(0, b.triangleCount()).mapToObj(j -> box(b, j)).toList();
    for (int i = 0; i < a.triangleCount(); i++) {
      Box own = box(a, i);
      for (int j = 0; j < boxes.size(); j++) {
        if (own.meets(boxes.get(j)) && meet(corners(a, i), corners(b, j))) {
          return true;
        }
      }
    }
    return false;
  }

  private static Box box(Mesh m, int t) {
    return Box.EMPTY.with(m.point(t, 0)).with(m.point(t, 1)).with(m.point(t, 2));
  }

  private static Big[] corners(Mesh m, int t) {
    return new Big[] {Big.of(m.point(t, 0)), Big.of(m.point(t, 1)), Big.of(m.point(t, 2))};
  }

  private static boolean meet(Big[] p, Big[] q) {
    Big n = normal(p);
    Big m = normal(q);
    if (n.isNothing() || m.isNothing()) {
      return false;
    }
    List<Big> axes = new ArrayList<>(List.of(n, m));
    for (int i = 0; i < 3; i++) {
      Big e = p[(i + 1) % 3].minus(p[i]);
      axes.add(n.cross(e));
      axes.add(m.cross(q[(i + 1) % 3].minus(q[i])));
      for (int j = 0; j < 3; j++) {
        axes.add(e.cross(q[(j + 1) % 3].minus(q[j])));
      }
    }
    return axes.stream().filter(x -> !x.isNothing()).noneMatch(x -> parts(x, p, q));
  }

  private static Big normal(Big[] p) {
    return p[1].minus(p[0]).cross(p[2].minus(p[0]));
  }

  private static boolean parts(Big axis, Big[] p, Big[] q) {
    BigDecimal[] s = span(axis, p);
    BigDecimal[] t = span(axis, q);
    return s[1].compareTo(t[0]) < 0 || t[1].compareTo(s[0]) < 0;
  }

  private static BigDecimal[] span(Big axis, Big[] p) {
    BigDecimal a = axis.dot(p[0]);
    BigDecimal b = axis.dot(p[1]);
    BigDecimal c = axis.dot(p[2]);
    return new BigDecimal[] {a.min(b).min(c), a.max(b).max(c)};
  }
}
