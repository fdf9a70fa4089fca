package org.underlee.geom;

/**
 * The least distance from a tree's triangles to another's, or to a point: the nearer nodes first.
 */
final class BvhDistance {
  private BvhDistance() {}

  /** Between two surfaces that share no point, or {@code best} where none are nearer. */
  static double between(Bvh one, Bvh other, double best) {
    return nearest(one, 0, other, 0, best);
  }

  /** From a point to a surface, on either side. */
  static double to(Bvh tree, Vec3 point) {
    return nearest(tree, point, 0, Double.POSITIVE_INFINITY);
  }

  private static double nearest(Bvh one, int a, Bvh other, int b, double best) {
    if (one.apart(a, other, b) >= best) {
      return best;
    }
    if (one.isLeaf(a) && other.isLeaf(b)) {
      return leaves(one, a, other, b, best);
    }
    int[] next =
        one.isSplitFirst(a, other, b)
            ? new int[] {a + 1, b, one.right[a], b}
            : new int[] {a, b + 1, a, other.right[b]};
    boolean swap = one.apart(next[2], other, next[3]) < one.apart(next[0], other, next[1]);
    int first = swap ? 2 : 0;
    double found = nearest(one, next[first], other, next[first + 1], best);
    return nearest(one, next[2 - first], other, next[3 - first], found);
  }

  private static double leaves(Bvh one, int a, Bvh other, int b, double best) {
    double least = best;
    for (int i = one.from[a]; i < one.end(a); i++) {
      for (int j = other.from[b]; j < other.end(b); j++) {
        least = Math.min(least, TrianglePair.distance(one.corners, 9 * i, other.corners, 9 * j));
      }
    }
    return least;
  }

  private static double nearest(Bvh tree, Vec3 p, int node, double best) {
    if (tree.apart(p, node) >= best) {
      return best;
    }
    if (tree.isLeaf(node)) {
      return leaf(tree, p, node, best);
    }
    boolean swap = tree.apart(p, tree.right[node]) < tree.apart(p, node + 1);
    double least = nearest(tree, p, swap ? tree.right[node] : node + 1, best);
    return nearest(tree, p, swap ? node + 1 : tree.right[node], least);
  }

  private static double leaf(Bvh tree, Vec3 p, int leaf, double best) {
    double least = best;
    for (int i = tree.from[leaf]; i < tree.end(leaf); i++) {
      Vec3 on =
          Near.nearest(
              p,
              Near.at(tree.corners, 9 * i),
              Near.at(tree.corners, 9 * i + 3),
              Near.at(tree.corners, 9 * i + 6));
      least = Math.min(least, p.distance(on));
    }
    return least;
  }
}
