package org.underlee.geom;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The triangles of a mesh in a tree of boxes, to find those that meet another mesh's, or how near
 * the two come, without trying every pair. Triangles without area are left out: in a closed surface
 * their neighbours cover them. Whether two triangles meet is decided without rounding.
 *
 * <p>Immutable, and safe to share between threads; what is found is the same for any number of
 * them.
 */
public final class Bvh {
  /** Pairs of nodes that a search is split into, at least, to be shared out between threads. */
  private static final int TASKS = 64;

  /** A tree this deep would hold more triangles than an array. */
  private static final int DEPTH = 64;

  private final double[] corners;
  private final double[] boxes;
  private final int[] right;
  private final int[] from;
  private final int[] numbers;

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
    int[] tasks = tasks(other);
    List<Found> parts =
        IntStream.range(0, tasks.length / 2)
            .parallel()
            .mapToObj(
                t -> {
                  Found found = new Found(false);
                  collect(other, tasks[2 * t], tasks[2 * t + 1], found);
                  return found;
                })
            .toList();
    return Found.joined(parts);
  }

  /** Whether any two triangles have a point in common. */
  public boolean meets(Bvh other) {
    if (isEmpty() || other.isEmpty()) {
      return false;
    }
    Found found = new Found(true);
    collect(other, 0, 0, found);
    return found.size > 0;
  }

  /** Pairs of nodes whose boxes meet and that together hold all that meet. */
  private int[] tasks(Bvh other) {
    int[] level = {0, 0};
    while (level.length < 2 * TASKS) {
      Found next = new Found(false);
      boolean split = false;
      for (int i = 0; i < level.length; i += 2) {
        split |= descend(other, level[i], level[i + 1], next);
      }
      level = next.trimmed();
      if (!split) {
        break;
      }
    }
    return level;
  }

  private boolean descend(Bvh other, int a, int b, Found into) {
    if (!boxesMeet(a, other, b)) {
      return false;
    }
    if (isLeaf(a) && other.isLeaf(b)) {
      into.add(a, b);
      return false;
    }
    if (other.isLeaf(b) || (!isLeaf(a) && size(a) >= other.size(b))) {
      into.add(a + 1, b);
      into.add(right[a], b);
    } else {
      into.add(a, b + 1);
      into.add(a, other.right[b]);
    }
    return true;
  }

  private void collect(Bvh other, int startA, int startB, Found found) {
    int[] stack = new int[4 * DEPTH];
    int top = 0;
    stack[top++] = startA;
    stack[top++] = startB;
    while (top > 0 && !found.isEnough()) {
      int b = stack[--top];
      int a = stack[--top];
      if (!boxesMeet(a, other, b)) {
        continue;
      }
      if (isLeaf(a) && other.isLeaf(b)) {
        leaves(other, a, b, found);
      } else if (other.isLeaf(b) || (!isLeaf(a) && size(a) >= other.size(b))) {
        stack[top++] = right[a];
        stack[top++] = b;
        stack[top++] = a + 1;
        stack[top++] = b;
      } else {
        stack[top++] = a;
        stack[top++] = other.right[b];
        stack[top++] = a;
        stack[top++] = b + 1;
      }
    }
  }

  private void leaves(Bvh other, int a, int b, Found found) {
    for (int i = from[a]; i < end(a); i++) {
      for (int j = other.from[b]; j < other.end(b); j++) {
        if (spansMeet(corners, 9 * i, other.corners, 9 * j)
            && TrianglePair.meet(corners, 9 * i, other.corners, 9 * j)) {
          found.add(numbers[i], other.numbers[j]);
        }
      }
    }
  }

  private static boolean spansMeet(double[] p, int a, double[] q, int b) {
    for (int axis = 0; axis < 3; axis++) {
      double p0 = p[a + axis];
      double p1 = p[a + 3 + axis];
      double p2 = p[a + 6 + axis];
      double q0 = q[b + axis];
      double q1 = q[b + 3 + axis];
      double q2 = q[b + 6 + axis];
      if (Math.max(p0, Math.max(p1, p2)) < Math.min(q0, Math.min(q1, q2))
          || Math.max(q0, Math.max(q1, q2)) < Math.min(p0, Math.min(p1, p2))) {
        return false;
      }
    }
    return true;
  }

  /**
   * How far two surfaces that share no point are apart; infinite when it is more than a limit, or
   * when there is no surface.
   */
  public double distance(Bvh other, double limit) {
    if (isEmpty() || other.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    double least = nearest(other, 0, 0, Math.nextUp(limit));
    return least > limit ? Double.POSITIVE_INFINITY : least;
  }

  private double nearest(Bvh other, int a, int b, double best) {
    if (apart(a, other, b) >= best) {
      return best;
    }
    if (isLeaf(a) && other.isLeaf(b)) {
      return nearestLeaves(other, a, b, best);
    }
    int[] next;
    if (other.isLeaf(b) || (!isLeaf(a) && size(a) >= other.size(b))) {
      next = new int[] {a + 1, b, right[a], b};
    } else {
      next = new int[] {a, b + 1, a, other.right[b]};
    }
    boolean swap = apart(next[2], other, next[3]) < apart(next[0], other, next[1]);
    int first = swap ? 2 : 0;
    double found = nearest(other, next[first], next[first + 1], best);
    return nearest(other, next[2 - first], next[3 - first], found);
  }

  private double nearestLeaves(Bvh other, int a, int b, double best) {
    double least = best;
    for (int i = from[a]; i < end(a); i++) {
      for (int j = other.from[b]; j < other.end(b); j++) {
        least = Math.min(least, TrianglePair.distance(corners, 9 * i, other.corners, 9 * j));
      }
    }
    return least;
  }

  /** How far a point is from the surface, on either side. */
  public double distance(Vec3 point) {
    return isEmpty() ? Double.POSITIVE_INFINITY : nearest(point, 0, Double.POSITIVE_INFINITY);
  }

  private double nearest(Vec3 p, int node, double best) {
    if (apart(p, node) >= best) {
      return best;
    }
    double least = best;
    if (isLeaf(node)) {
      for (int i = from[node]; i < end(node); i++) {
        Vec3 on =
            Near.nearest(
                p,
                Near.at(corners, 9 * i),
                Near.at(corners, 9 * i + 3),
                Near.at(corners, 9 * i + 6));
        least = Math.min(least, p.distance(on));
      }
      return least;
    }
    boolean swap = apart(p, right[node]) < apart(p, node + 1);
    least = nearest(p, swap ? right[node] : node + 1, least);
    return nearest(p, swap ? node + 1 : right[node], least);
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

  private boolean isLeaf(int node) {
    return right[node] == 0;
  }

  /** Behind the last triangle of a leaf: where the next node in order starts, or the one above. */
  private int end(int leaf) {
    return from[leaf + 1];
  }

  private double size(int node) {
    double x = boxes[6 * node + 3] - boxes[6 * node];
    double y = boxes[6 * node + 4] - boxes[6 * node + 1];
    double z = boxes[6 * node + 5] - boxes[6 * node + 2];
    return Math.max(x, Math.max(y, z));
  }

  private boolean boxesMeet(int a, Bvh other, int b) {
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

  private double apart(int a, Bvh other, int b) {
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double below = other.boxes[6 * b + axis] - boxes[6 * a + 3 + axis];
      double above = boxes[6 * a + axis] - other.boxes[6 * b + 3 + axis];
      double gap = Math.max(0, Math.max(below, above));
      sum += gap * gap;
    }
    return Math.sqrt(sum);
  }

  private double apart(Vec3 p, int node) {
    double x = gap(p.x(), 6 * node);
    double y = gap(p.y(), 6 * node + 1);
    double z = gap(p.z(), 6 * node + 2);
    return Math.sqrt(x * x + y * y + z * z);
  }

  private double gap(double at, int axis) {
    return Math.max(0, Math.max(boxes[axis] - at, at - boxes[axis + 3]));
  }

  /** Pairs of whole numbers, as many as come. */
  private static final class Found {
    private static final int FIRST = 32;

    private final boolean first;
    private int @Nullable [] pairs;
    private int size;

    /**
     * @param first whether one pair is enough
     */
    Found(boolean first) {
      this.first = first;
    }

    void add(int a, int b) {
      int[] room = pairs;
      if (room == null) {
        room = new int[FIRST];
      } else if (size == room.length) {
        room = Arrays.copyOf(room, 2 * size);
      }
      room[size++] = a;
      room[size++] = b;
      pairs = room;
    }

    boolean isEnough() {
      return first && size > 0;
    }

    int[] trimmed() {
      return pairs == null ? new int[0] : Arrays.copyOf(pairs, size);
    }

    static int[] joined(List<Found> parts) {
      List<int[]> all = new ArrayList<>();
      int total = 0;
      for (Found part : parts) {
        all.add(part.trimmed());
        total += part.size;
      }
      int[] joined = new int[total];
      int at = 0;
      for (int[] part : all) {
        System.arraycopy(part, 0, joined, at, part.length);
        at += part.length;
      }
      return joined;
    }
  }
}
