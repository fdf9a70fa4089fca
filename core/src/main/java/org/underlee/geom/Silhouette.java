package org.underlee.geom;

import java.util.Arrays;

/**
 * What a bar shows in a frame whose y runs along it: its outer faces in plan, its underside and its
 * top, over the station. Told from sections of its surface square to y, so that bow, crown, twist
 * and taper are in it.
 *
 * <p>What is cut at the ends (mitres, bevels, notches, within the bar's own depth of an end) is
 * left out: the faces run on to the ends as if uncut. Holes have no say, since the outermost places
 * count. Cost is linear in the triangles for each section.
 *
 * @param along from the first corner to the last
 */
public record Silhouette(Interval along, Profile left, Profile right, Profile bottom, Profile top) {
  /** More sections than this are taken evenly: a bow of 20 mm is met to a tenth of a millimetre. */
  private static final int MOST_SECTIONS = 24;

  /** What the ends' cuts take at most, as a share of the length. */
  private static final double END_SHARE = 0.3;

  /** Sections nearer to one another than this tell the same. */
  private static final double APART = 0.001;

  /**
   * Takes sections of a bar.
   *
   * @param depth of the bar's section: how far from its ends cuts are looked for
   */
  public static Silhouette of(Mesh mesh, Transform frame, double depth) {
    double[] local = local(mesh, frame);
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    for (int i = 1; i < local.length; i += 3) {
      from = Math.min(from, local[i]);
      to = Math.max(to, local[i]);
    }
    double end = Math.min(depth, END_SHARE * (to - from));
    double[] stations = stations(local, from + end, to - end);
    double[][] extents = new double[4][stations.length];
    int found = 0;
    for (double v : stations) {
      // a bar in several pieces has no section between them
      if (section(mesh, local, v, extents, found)) {
        stations[found++] = v;
      }
    }
    double[] at = Arrays.copyOf(stations, found);
    return new Silhouette(
        new Interval(from, to),
        Profile.of(at, Arrays.copyOf(extents[0], found)),
        Profile.of(at, Arrays.copyOf(extents[1], found)),
        Profile.of(at, Arrays.copyOf(extents[2], found)),
        Profile.of(at, Arrays.copyOf(extents[3], found)));
  }

  private static double[] local(Mesh mesh, Transform frame) {
    double[] local = new double[3 * mesh.vertexCount()];
    Vec3 o = frame.origin();
    for (int i = 0; i < mesh.vertexCount(); i++) {
      double x = mesh.coordinate(i, 0) - o.x();
      double y = mesh.coordinate(i, 1) - o.y();
      double z = mesh.coordinate(i, 2) - o.z();
      local[3 * i] = x * frame.x().x() + y * frame.x().y() + z * frame.x().z();
      local[3 * i + 1] = x * frame.y().x() + y * frame.y().y() + z * frame.y().z();
      local[3 * i + 2] = x * frame.z().x() + y * frame.z().y() + z * frame.z().z();
    }
    return local;
  }

  /** The first and the last, and between them where corners are. */
  private static double[] stations(double[] local, double first, double last) {
    double[] found = new double[local.length / 3 + 2];
    int n = 0;
    for (int i = 1; i < local.length; i += 3) {
      if (local[i] > first + APART && local[i] < last - APART) {
        found[n++] = local[i];
      }
    }
    found[n++] = first;
    found[n++] = last;
    double[] sorted = Arrays.copyOf(found, n);
    Arrays.sort(sorted);
    double[] apart = new double[n];
    int kept = 0;
    for (double v : sorted) {
      if (kept == 0 || v > apart[kept - 1] + APART) {
        apart[kept++] = v;
      }
    }
    if (kept > MOST_SECTIONS) {
      double step = (last - first) / MOST_SECTIONS;
      double[] even = new double[MOST_SECTIONS + 1];
      Arrays.setAll(even, i -> first + i * step);
      return even;
    }
    return Arrays.copyOf(apart, kept);
  }

  /** Whether the plane at the station meets the surface; its extents there are kept. */
  private static boolean section(
      Mesh mesh, double[] local, double v, double[][] extents, int section) {
    double[] e = {
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY,
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY
    };
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int a = mesh.corner(t, 0);
      int b = mesh.corner(t, 1);
      int c = mesh.corner(t, 2);
      edge(local, a, b, v, e);
      edge(local, b, c, v, e);
      edge(local, c, a, v, e);
    }
    for (int k = 0; k < 4; k++) {
      extents[k][section] = e[k];
    }
    return e[0] <= e[1];
  }

  private static void edge(double[] local, int a, int b, double v, double[] e) {
    double va = local[3 * a + 1];
    double vb = local[3 * b + 1];
    if (Math.min(va, vb) > v || Math.max(va, vb) < v) {
      return;
    }
    if (va == vb) {
      grow(local[3 * a], local[3 * a + 2], e);
      grow(local[3 * b], local[3 * b + 2], e);
      return;
    }
    double t = (v - va) / (vb - va);
    grow(
        local[3 * a] + t * (local[3 * b] - local[3 * a]),
        local[3 * a + 2] + t * (local[3 * b + 2] - local[3 * a + 2]),
        e);
  }

  private static void grow(double u, double w, double[] e) {
    e[0] = Math.min(e[0], u);
    e[1] = Math.max(e[1], u);
    e[2] = Math.min(e[2], w);
    e[3] = Math.max(e[3], w);
  }
}
