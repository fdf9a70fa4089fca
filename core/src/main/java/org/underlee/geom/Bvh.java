package org.underlee.geom;

import java.util.Arrays;

/**
 * The triangles of a mesh in a tree of boxes, to find those that meet another mesh's, or how near
 * the two come, without trying every pair. Triangles without area are left out: in a closed surface
 * their neighbours cover them. Whether two triangles meet is decided without rounding.
 *
 * <p>Immutable, and safe to share between threads; what is found is the same for any number of
 * them.
 */
public final class Bvh {
  final double[] corners;
  final double[] boxes;
  final int[] right;
  final int[] from;
  final int[] numbers;

  private Bvh(BvhBuilder built, int[] numbers) {
    int count = built.order.length;
    this.corners = new double[9 * count];
    this.numbers = new int[count];
    for (int i = 0; i < count; i++) {
      System.arraycopy(built.corners, 9 * built.order[i], corners, 9 * i, 9);
      this.numbers[i] = numbers[built.order[i]];
    }
    this.boxes = built.boxes;
    this.right = built.right;
    this.from = built.from;
  }

  /** The tree over a mesh's triangles. */
  public static Bvh of(Mesh mesh) {
    double[] corners = new double[9 * mesh.triangleCount()];
    int[] numbers = new int[mesh.triangleCount()];
    int kept = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int i = 0; i < 9; i++) {
        corners[9 * kept + i] = mesh.coordinate(mesh.corner(t, i / 3), i % 3);
      }
      if (!TrianglePair.isFlat(corners, 9 * kept)) {
        numbers[kept++] = t;
      }
    }
    return new Bvh(new BvhBuilder(Arrays.copyOf(corners, 9 * kept)), numbers);
  }

  public boolean isEmpty() {
    return numbers.length == 0;
  }

  /**
   * Every pair of triangles that have a point in common, as numbers in this mesh and in the other,
   * one after the other.
   */
  public int[] meeting(Bvh other) {
    if (isEmpty() || other.isEmpty()) {
      return new int[0];
    }
    return new BvhPairs(this, other).all();
  }

  /** Whether any two triangles have a point in common. */
  public boolean meets(Bvh other) {
    return !isEmpty() && !other.isEmpty() && new BvhPairs(this, other).any();
  }

  /**
   * How far two surfaces that share no point are apart; infinite when it is more than a limit, or
   * when there is no surface.
   */
  public double distance(Bvh other, double limit) {
    if (isEmpty() || other.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    double least = BvhDistance.between(this, other, Math.nextUp(limit));
    return least > limit ? Double.POSITIVE_INFINITY : least;
  }

  /** How far a point is from the surface, on either side. */
  public double distance(Vec3 point) {
    return isEmpty() ? Double.POSITIVE_INFINITY : BvhDistance.to(this, point);
  }

  /**
   * Whether a closed surface holds a point: the winding number, which an edge that rays would graze
   * cannot upset; A. Van Oosterom and J. Strackee, "The solid angle of a plane triangle", 1983.
   * Takes a step for each triangle.
   */
  public boolean holds(Vec3 p) {
    if (isEmpty() || apart(p, 0) > 0) {
      return false;
    }
    double angle = 0;
    for (int i = 0; i < corners.length; i += 9) {
      angle += solidAngle(p, i);
    }
    return Math.abs(angle) > 2 * Math.PI;
  }

  private double solidAngle(Vec3 p, int i) {
    Vec3 a = Near.at(corners, i).minus(p);
    Vec3 b = Near.at(corners, i + 3).minus(p);
    Vec3 c = Near.at(corners, i + 6).minus(p);
    double la = a.length();
    double lb = b.length();
    double lc = c.length();
    double flat = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
    return 2 * Math.atan2(a.dot(b.cross(c)), flat);
  }

  boolean isLeaf(int node) {
    return right[node] == 0;
  }

  /** Behind the last triangle of a leaf: where the next node in order starts, or the one above. */
  int end(int leaf) {
    return from[leaf + 1];
  }

  /** Whether this tree's node is to be taken apart, and not the other's: the greater of the two. */
  boolean isSplitFirst(int a, Bvh other, int b) {
    return other.isLeaf(b) || (!isLeaf(a) && size(a) >= other.size(b));
  }

  private double size(int node) {
    double x = boxes[6 * node + 3] - boxes[6 * node];
    double y = boxes[6 * node + 4] - boxes[6 * node + 1];
    double z = boxes[6 * node + 5] - boxes[6 * node + 2];
    return Math.max(x, Math.max(y, z));
  }

  boolean boxesMeet(int a, Bvh other, int b) {
    double[] q = other.boxes;
    int i = 6 * a;
    int j = 6 * b;
    return boxes[i] <= q[j + 3]
        && q[j] <= boxes[i + 3]
        && boxes[i + 1] <= q[j + 4]
        && q[j + 1] <= boxes[i + 4]
        && boxes[i + 2] <= q[j + 5]
        && q[j + 2] <= boxes[i + 5];
  }

  double apart(int a, Bvh other, int b) {
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double below = other.boxes[6 * b + axis] - boxes[6 * a + 3 + axis];
      double above = boxes[6 * a + axis] - other.boxes[6 * b + 3 + axis];
      double gap = Math.max(0, Math.max(below, above));
      sum += gap * gap;
    }
    return Math.sqrt(sum);
  }

  double apart(Vec3 p, int node) {
    double x = gap(p.x(), 6 * node);
    double y = gap(p.y(), 6 * node + 1);
    double z = gap(p.z(), 6 * node + 2);
    return Math.sqrt(x * x + y * y + z * z);
  }

  private double gap(double at, int axis) {
    return Math.max(0, Math.max(boxes[axis] - at, at - boxes[axis + 3]));
  }
}
