package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;

/** Cuts a plane polygon into triangles, ear by ear; for the few corners of a section. */
final class Triangles {
  private Triangles() {}

  /** Triangles of {@code face}, turning the way it turns. */
  static List<int[]> of(List<Xyz> corners, int[] face) {
    List<Integer> left = new ArrayList<>();
    for (int corner : face) {
      left.add(corner);
    }
    Xyz normal = normal(corners, face);
    List<int[]> triangles = new ArrayList<>();
    while (left.size() > 3) {
      int ear = ear(corners, left, normal);
      triangles.add(triangle(left, ear));
      left.remove(ear);
    }
    triangles.add(triangle(left, 1));
    return triangles;
  }

  private static int ear(List<Xyz> corners, List<Integer> left, Xyz normal) {
    for (int i = 0; i < left.size(); i++) {
      int[] t = triangle(left, i);
      if (turn(corners, t[0], t[1], t[2], normal) > 0
          && left.stream().noneMatch(p -> inside(corners, t, p, normal))) {
        return i;
      }
    }
    throw new IllegalArgumentException("a polygon that crosses itself has no ear: " + left);
  }

  private static boolean inside(List<Xyz> corners, int[] t, int p, Xyz normal) {
    return p != t[0]
        && p != t[1]
        && p != t[2]
        && turn(corners, t[0], t[1], p, normal) >= 0
        && turn(corners, t[1], t[2], p, normal) >= 0
        && turn(corners, t[2], t[0], p, normal) >= 0;
  }

  private static int[] triangle(List<Integer> left, int i) {
    int n = left.size();
    return new int[] {left.get((i + n - 1) % n), left.get(i), left.get((i + 1) % n)};
  }

  private static double turn(List<Xyz> corners, int a, int b, int c, Xyz normal) {
    Xyz ab = corners.get(b).minus(corners.get(a));
    Xyz ac = corners.get(c).minus(corners.get(a));
    return ab.cross(ac).dot(normal);
  }

  private static Xyz normal(List<Xyz> corners, int[] face) {
    Xyz sum = Xyz.ORIGIN;
    for (int i = 0; i < face.length; i++) {
      sum = sum.plus(corners.get(face[i]).cross(corners.get(face[(i + 1) % face.length])));
    }
    return sum.unit();
  }
}
