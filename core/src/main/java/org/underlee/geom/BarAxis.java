package org.underlee.geom;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * The direction in which a bar runs: the one that most of its edge length follows and least of its
 * surface faces. Only true edges count, where two faces meet at an angle, so that the diagonals of
 * triangulated flat faces have no say; where cuts have left slivers some slip in, and the surface
 * decides. The edges of a bowed or twisted bar differ by a few degrees; together they give its
 * chord.
 *
 * <p>Cost is linear in the triangles.
 */
final class BarAxis {
  /** Edges this near to one direction (cosine of 4°) run the bar's way: bow, twist, taper. */
  private static final double SAME_WAY = 0.99756;

  /**
   * Faces that turn less than this (cosine of 1°) are one flat face, drawn with some noise. The
   * facets of a round bar turn more, up to 360 of them: their long edges tell its axis.
   */
  private static final double FLAT = 0.99985;

  /** More directions than this are no bar's: what is found so far decides. */
  private static final int MOST_DIRECTIONS = 64;

  /** Directions with claims equal to this share are told apart by which is more level. */
  private static final double EQUAL = 1e-6;

  /** Added to the share of the surface that faces a way: ends of no area prove nothing alone. */
  private static final double LEAST_FACING = 0.02;

  /** Edges this near to square to the axis (sine of 3°) are edges of the section. */
  private static final double SQUARE = 0.052;

  /** 2⁶⁴ over the golden ratio: Knuth, "The Art of Computer Programming", volume 3, 6.4. */
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

  private final Mesh mesh;
  private final int[] place;

  /** Edges by their ends: open addressing, {@code -1} for free. */
  private final long[] keys;

  /** The triangle on the first side of an edge; {@code -1} when its second side is known too. */
  private final int[] firstSide;

  private final double[] normals;

  /** For each direction the sum of its edges, turned one way, and their length. */
  private final double[] sums = new double[3 * MOST_DIRECTIONS];

  private final double[] lengths = new double[MOST_DIRECTIONS];
  private int directions;

  /** Sum of area times the normal's products: xx, yy, zz, xy, yz, zx. */
  private final double[] facing = new double[6];

  private BarAxis(Mesh mesh) {
    this.mesh = mesh;
    this.place = Welding.places(mesh);
    int slots = Integer.highestOneBit(Math.max(8, 3 * mesh.triangleCount())) * 2;
    this.keys = new long[slots];
    Arrays.fill(keys, -1);
    this.firstSide = new int[slots];
    this.normals = new double[3 * mesh.triangleCount()];
  }

  /**
   * The directions of a bar.
   *
   * @param axis along it
   * @param square to the axis, along most of the section's edges; missing for a bar whose ends are
   *     cut askew on all sides
   */
  record Directions(Vec3 axis, Optional<Vec3> square) {}

  static Optional<Directions> of(Mesh mesh) {
    BarAxis axis = new BarAxis(mesh);
    axis.walk();
    int best = axis.longest(i -> true);
    if (best < 0) {
      return Optional.empty();
    }
    Vec3 along = axis.direction(best);
    int square = axis.longest(i -> Math.abs(axis.direction(i).dot(along)) <= SQUARE);
    return Optional.of(
        new Directions(along, square < 0 ? Optional.empty() : Optional.of(axis.direction(square))));
  }

  private Vec3 direction(int i) {
    return new Vec3(sums[3 * i], sums[3 * i + 1], sums[3 * i + 2]).unit();
  }

  private void walk() {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (normal(t)) {
        for (int k = 0; k < 3; k++) {
          meet(t, mesh.corner(t, k), mesh.corner(t, (k + 1) % 3));
        }
      }
    }
    for (int slot = 0; slot < keys.length; slot++) {
      if (keys[slot] >= 0 && firstSide[slot] >= 0) {
        add((int) (keys[slot] >>> 32), (int) keys[slot]);
      }
    }
  }

  /** Whether the triangle has an area; its unit normal is kept. */
  private boolean normal(int t) {
    Vec3 normal = mesh.areaNormal(t);
    double length = normal.length();
    if (!(length > 0 && length < Double.POSITIVE_INFINITY)) {
      return false;
    }
    double x = normal.x() / length;
    double y = normal.y() / length;
    double z = normal.z() / length;
    normals[3 * t] = x;
    normals[3 * t + 1] = y;
    normals[3 * t + 2] = z;
    facing[0] += length * x * x;
    facing[1] += length * y * y;
    facing[2] += length * z * z;
    facing[3] += length * x * y;
    facing[4] += length * y * z;
    facing[5] += length * z * x;
    return true;
  }

  private void meet(int t, int a, int b) {
    int low = Math.min(place[a], place[b]);
    int high = Math.max(place[a], place[b]);
    int slot = slot(((long) low << 32) | high);
    if (keys[slot] < 0) {
      keys[slot] = ((long) low << 32) | high;
      firstSide[slot] = t;
    } else if (firstSide[slot] < 0) {
      firstSide[slot] = t; // a third face: the edge is open again
    } else {
      if (turn(firstSide[slot], t) < FLAT) {
        add(low, high);
      }
      firstSide[slot] = -1;
    }
  }

  private int slot(long key) {
    int mask = keys.length - 1;
    int slot = (int) ((key * SPREAD) >>> 40) & mask;
    while (keys[slot] >= 0 && keys[slot] != key) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private double turn(int s, int t) {
    return normals[3 * s] * normals[3 * t]
        + normals[3 * s + 1] * normals[3 * t + 1]
        + normals[3 * s + 2] * normals[3 * t + 2];
  }

  private void add(int a, int b) {
    double x = mesh.coordinate(b, 0) - mesh.coordinate(a, 0);
    double y = mesh.coordinate(b, 1) - mesh.coordinate(a, 1);
    double z = mesh.coordinate(b, 2) - mesh.coordinate(a, 2);
    double length = Math.sqrt(x * x + y * y + z * z);
    // Coordinates near the largest double have edges of no length that can be computed.
    if (!(length > 0 && length < Double.POSITIVE_INFINITY)) {
      return;
    }
    for (int i = 0; i < directions; i++) {
      double along = x * sums[3 * i] + y * sums[3 * i + 1] + z * sums[3 * i + 2];
      if (Math.abs(along) > SAME_WAY * length * norm(i)) {
        put(i, x, y, z, along < 0 ? -1 : 1, length);
        return;
      }
    }
    if (directions < MOST_DIRECTIONS) {
      put(directions++, x, y, z, 1, length);
    }
  }

  private void put(int i, double x, double y, double z, int sign, double length) {
    sums[3 * i] += sign * x;
    sums[3 * i + 1] += sign * y;
    sums[3 * i + 2] += sign * z;
    lengths[i] += length;
  }

  private double norm(int i) {
    return Math.sqrt(
        sums[3 * i] * sums[3 * i]
            + sums[3 * i + 1] * sums[3 * i + 1]
            + sums[3 * i + 2] * sums[3 * i + 2]);
  }

  private int longest(IntPredicate among) {
    int best = -1;
    double most = 0;
    for (int i = 0; i < directions; i++) {
      if (among.test(i)) {
        double claim = lengths[i] / (shareFacing(i) + LEAST_FACING);
        if (best < 0
            || claim > most * (1 + EQUAL)
            || (claim > most * (1 - EQUAL) && rise(i) < rise(best) - EQUAL)) {
          best = i;
          most = claim;
        }
      }
    }
    return best;
  }

  /** How much of the surface faces along a direction. */
  private double shareFacing(int i) {
    double norm = norm(i);
    double x = sums[3 * i] / norm;
    double y = sums[3 * i + 1] / norm;
    double z = sums[3 * i + 2] / norm;
    double along =
        facing[0] * x * x
            + facing[1] * y * y
            + facing[2] * z * z
            + 2 * (facing[3] * x * y + facing[4] * y * z + facing[5] * z * x);
    return along / (facing[0] + facing[1] + facing[2]);
  }

  private double rise(int i) {
    return Math.abs(sums[3 * i + 2]) / norm(i);
  }
}
