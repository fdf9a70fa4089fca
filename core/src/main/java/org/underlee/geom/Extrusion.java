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
    return mesh(Triangulation.of(section));
  }

  /** As {@link #mesh()}, for many that have sections in common. */
  public Mesh mesh(Cuts cuts) {
    return mesh(cuts.of(section));
  }

  private Mesh mesh(Triangulation flat) {
    int n = flat.points().size();
    double[] xyz = new double[6 * n];
    for (int i = 0; i < n; i++) {
      Vec2 p = flat.points().get(i);
      put(xyz, i, p.x(), p.y(), 0);
      put(xyz, n + i, p.x() + sweep.x(), p.y() + sweep.y(), sweep.z());
    }
    Faces faces =
        new Faces(2 * flat.triangles().size() + 2 * n, frame.determinant() * sweep.z() < 0);
    for (int[] t : flat.triangles()) {
      faces.add(t[2], t[1], t[0]);
      faces.add(t[0] + n, t[1] + n, t[2] + n);
    }
    int start = faces.sides(0, section.outer().size(), n);
    for (List<Vec2> hole : section.holes()) {
      start = faces.sides(start, hole.size(), n);
    }
    return Mesh.handedOver(frame.applyAll(xyz), faces.corners);
  }

  /** Triangles as they are found; turned over where the sweep goes against the section. */
  private static final class Faces {
    private final int[] corners;
    private final boolean turn;
    private int filled;

    Faces(int count, boolean turn) {
      this.corners = new int[3 * count];
      this.turn = turn;
    }

    void add(int a, int b, int c) {
      corners[filled++] = turn ? b : a;
      corners[filled++] = turn ? a : b;
      corners[filled++] = c;
    }

    /** Those that one ring of the section leaves behind; returns where the next ring begins. */
    int sides(int start, int size, int n) {
      for (int i = 0; i < size; i++) {
        int a = start + i;
        int b = start + (i + 1) % size;
        add(a, b, b + n);
        add(a, b + n, a + n);
      }
      return start + size;
    }
  }

  private static void put(double[] xyz, int i, double x, double y, double z) {
    xyz[3 * i] = x;
    xyz[3 * i + 1] = y;
    xyz[3 * i + 2] = z;
  }
}
