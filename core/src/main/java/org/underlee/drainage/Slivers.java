package org.underlee.drainage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;

/**
 * Gives triangles without area to the faces that they lie in: each goes with the one that most of
 * its edges border, or what stays of them would part the face; one that lies in none, as in a wall,
 * is left out.
 *
 * <p>The outcome is that of going through them again and again, in their order, until none joins a
 * face any more. Cost is near to linear: after the first time a triangle is looked at only where a
 * face has got an edge that it borders, and only with the faces that have such an edge.
 */
final class Slivers {
  private final List<FaceOutline> faces;
  private final List<int[]> slivers;
  private final BiPredicate<FaceOutline, int[]> liesIn;

  /** The numbers of the faces that have an edge. */
  private final Map<FaceOutline.Edge, Set<Integer>> owners = new HashMap<>();

  /** The triangles that border an edge. */
  private final Map<FaceOutline.Edge, List<Integer>> bordering = new HashMap<>();

  /** To be looked at this time, and the next time. */
  private TreeSet<Integer> now = new TreeSet<>();

  private final Set<Integer> next = new HashSet<>();

  private Slivers(
      List<FaceOutline> faces, List<int[]> slivers, BiPredicate<FaceOutline, int[]> liesIn) {
    this.faces = faces;
    this.slivers = slivers;
    this.liesIn = liesIn;
    for (int face = 0; face < faces.size(); face++) {
      int own = face;
      faces.get(face).edges.forEach(edge -> owners(edge).add(own));
    }
    for (int i = 0; i < slivers.size(); i++) {
      now.add(i);
      for (int k = 0; k < 3; k++) {
        bordering
            .computeIfAbsent(FaceOutline.edge(slivers.get(i), k).turned(), e -> new ArrayList<>())
            .add(i);
      }
    }
  }

  /**
   * Adds those that lie in a face to it.
   *
   * @param slivers three vertices each
   */
  static void giveAway(
      List<FaceOutline> faces, List<int[]> slivers, BiPredicate<FaceOutline, int[]> liesIn) {
    if (!slivers.isEmpty()) {
      new Slivers(faces, slivers, liesIn).giveAway();
    }
  }

  private Set<Integer> owners(FaceOutline.Edge edge) {
    return owners.computeIfAbsent(edge, e -> new HashSet<>());
  }

  private void giveAway() {
    Set<Integer> joined = new HashSet<>();
    while (!now.isEmpty()) {
      while (!now.isEmpty()) {
        int sliver = now.pollFirst();
        int face = face(slivers.get(sliver));
        if (face >= 0) {
          joined.add(sliver);
          join(sliver, face, joined);
        }
      }
      now = new TreeSet<>(next);
      next.clear();
    }
  }

  /** The number of the face that a triangle goes with, the first of several; −1 for none. */
  private int face(int[] corners) {
    Set<Integer> candidates = new TreeSet<>();
    for (int k = 0; k < 3; k++) {
      candidates.addAll(owners.getOrDefault(FaceOutline.edge(corners, k).turned(), Set.of()));
    }
    int best = -1;
    int most = 0;
    for (int face : candidates) {
      int shared = faces.get(face).shared(corners);
      if (shared > most && liesIn.test(faces.get(face), corners)) {
        best = face;
        most = shared;
      }
    }
    return best;
  }

  private void join(int sliver, int face, Set<Integer> joined) {
    int[] corners = slivers.get(sliver);
    faces.get(face).toggle(corners);
    for (int k = 0; k < 3; k++) {
      FaceOutline.Edge edge = FaceOutline.edge(corners, k);
      own(edge.turned(), face);
      if (own(edge, face)) {
        for (int other : bordering.getOrDefault(edge, List.of())) {
          if (!joined.contains(other)) {
            (other > sliver ? now : next).add(other);
          }
        }
      }
    }
  }

  /** Notes whether a face has an edge, and tells it. */
  private boolean own(FaceOutline.Edge edge, int face) {
    boolean has = faces.get(face).edges.contains(edge);
    if (has) {
      owners(edge).add(face);
    } else {
      owners(edge).remove(face);
    }
    return has;
  }
}
