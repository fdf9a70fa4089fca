package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;

/**
 * A straight member: a section carried along the first axis of its frame from 0 to {@code length}.
 * Its ends may be cut askew in plan: at {@code y} across the member the ends are at {@code
 * startSkew·y} and {@code length + endSkew·y}. The section is symmetric, so the volume is area
 * times length whatever the skews.
 */
public record Solid(Frame frame, double length, Section section, double startSkew, double endSkew) {

  public static Solid square(Frame frame, double length, Section section) {
    return new Solid(frame, length, section, 0, 0);
  }

  public boolean isSkewed() {
    return startSkew != 0 || endSkew != 0;
  }

  /** In cubic millimetres. */
  public double volume() {
    return section.area() * length;
  }

  public Solid in(Frame outer) {
    return new Solid(outer.then(frame), length, section, startSkew, endSkew);
  }

  /** Corners in the member's frame: the outline at the start, then the outline at the end. */
  public List<Xyz> corners() {
    List<Xyz> corners = new ArrayList<>();
    section.outline().forEach(p -> corners.add(new Xyz(startSkew * p[0], p[0], p[1])));
    section.outline().forEach(p -> corners.add(new Xyz(length + endSkew * p[0], p[0], p[1])));
    return List.copyOf(corners);
  }

  /** Faces as indices into {@link #corners()}, counter-clockwise seen from outside. */
  public List<int[]> faces() {
    int n = section.outline().size();
    int[] start = new int[n];
    int[] end = new int[n];
    List<int[]> faces = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int next = (i + 1) % n;
      start[n - 1 - i] = i;
      end[i] = n + i;
      faces.add(new int[] {i, next, n + next, n + i});
    }
    faces.add(start);
    faces.add(end);
    return List.copyOf(faces);
  }

  /** Lowest and highest coordinates, in the frame that {@link #frame()} is given in. */
  public List<Xyz> box() {
    return section instanceof Section.Round round ? roundBox(round.diameter() / 2) : cornerBox();
  }

  private List<Xyz> cornerBox() {
    double inf = Double.POSITIVE_INFINITY;
    Xyz min = new Xyz(inf, inf, inf);
    Xyz max = new Xyz(-inf, -inf, -inf);
    for (Xyz corner : corners()) {
      Xyz p = frame.point(corner);
      min = lower(min, p);
      max = lower(max.times(-1), p.times(-1)).times(-1);
    }
    return List.of(min, max);
  }

  /** A disk of radius r with normal n reaches r·√(1 − nᵢ²) along axis i. */
  private List<Xyz> roundBox(double r) {
    Xyz n = frame.x();
    Xyz reach =
        new Xyz(
            r * Math.sqrt(Math.max(0, 1 - n.x() * n.x())),
            r * Math.sqrt(Math.max(0, 1 - n.y() * n.y())),
            r * Math.sqrt(Math.max(0, 1 - n.z() * n.z())));
    Xyz a = frame.origin();
    Xyz b = frame.point(new Xyz(length, 0, 0));
    Xyz max = lower(a.times(-1), b.times(-1)).times(-1);
    return List.of(lower(a, b).minus(reach), max.plus(reach));
  }

  private static Xyz lower(Xyz a, Xyz b) {
    return new Xyz(Math.min(a.x(), b.x()), Math.min(a.y(), b.y()), Math.min(a.z(), b.z()));
  }
}
