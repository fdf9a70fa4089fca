package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;

/**
 * A solid swept in a straight line: the section lies in the x-y plane of the frame and moves along
 * {@code sweep}, a vector in the frame (metres). Every part that this program makes is one or
 * several of these, so each can be written to a model exactly, without triangles.
 */
public record Extrusion(Transform frame, Outline section, Vec3 sweep) {
  /** Swept square to the section, along the frame's z axis. */
  public static Extrusion straight(Transform frame, Outline section, double depth) {
    return new Extrusion(frame, section, new Vec3(0, 0, depth));
  }

  public double volume() {
    return section.area() * Math.abs(sweep.z());
  }

  public Extrusion transformed(Transform map) {
    return new Extrusion(map.after(frame), section, sweep);
  }

  /** Its corners: those of the section, then those where it was swept to. */
  public List<Vec3> corners() {
    List<Vec3> corners = new ArrayList<>();
    for (Vec3 from : List.of(Vec3.ZERO, sweep)) {
      section.outer().forEach(p -> corners.add(corner(p, from)));
      section.holes().forEach(hole -> hole.forEach(p -> corners.add(corner(p, from))));
    }
    return corners;
  }

  private Vec3 corner(Vec2 p, Vec3 from) {
    return frame.apply(new Vec3(p.x(), p.y(), 0).plus(from));
  }

  /** As those of {@link #mesh}, without cutting it into triangles. */
  public Box bounds() {
    Box box = Box.EMPTY;
    for (Vec3 corner : corners()) {
      box = box.with(corner);
    }
    return box;
  }

  /** The box around it along the axes of a rigid frame. */
  public Box boundsIn(Transform rigid) {
    List<Vec2> ring = section.outer();
    double[] xyz = new double[6 * ring.size()];
    for (int i = 0; i < ring.size(); i++) {
      Vec2 p = ring.get(i);
      put(xyz, 2 * i, p.x(), p.y(), 0);
      put(xyz, 2 * i + 1, p.x() + sweep.x(), p.y() + sweep.y(), sweep.z());
    }
    return Box.around(rigid.toLocalAll(frame.applyAll(xyz)));
  }

  /** The closed surface as triangles. */
  public Mesh mesh() {
    Triangulation flat = Triangulation.of(section);
    int n = flat.points().size();
    List<Vec3> all = corners();
    double[] xyz = new double[6 * n];
    for (int i = 0; i < 2 * n; i++) {
      put(xyz, i, all.get(i).x(), all.get(i).y(), all.get(i).z());
    }
    List<int[]> faces = new ArrayList<>();
    for (int[] t : flat.triangles()) {
      faces.add(new int[] {t[2], t[1], t[0]});
      faces.add(new int[] {t[0] + n, t[1] + n, t[2] + n});
    }
    int start = 0;
    start = side(faces, start, section.outer().size(), n);
    for (List<Vec2> hole : section.holes()) {
      start = side(faces, start, hole.size(), n);
    }
    return new Mesh(xyz, corners(faces, frame.determinant() * sweep.z() < 0));
  }

  private static int side(List<int[]> faces, int start, int size, int n) {
    for (int i = 0; i < size; i++) {
      int a = start + i;
      int b = start + (i + 1) % size;
      faces.add(new int[] {a, b, b + n});
      faces.add(new int[] {a, b + n, a + n});
    }
    return start + size;
  }

  private static int[] corners(List<int[]> faces, boolean turn) {
    int[] corners = new int[3 * faces.size()];
    int k = 0;
    for (int[] f : faces) {
      corners[k++] = f[turn ? 1 : 0];
      corners[k++] = f[turn ? 0 : 1];
      corners[k++] = f[2];
    }
    return corners;
  }

  private static void put(double[] xyz, int i, double x, double y, double z) {
    xyz[3 * i] = x;
    xyz[3 * i + 1] = y;
    xyz[3 * i + 2] = z;
  }
}
