package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Vec3;

/**
 * Sets of bars that lie side by side like joists: nearly parallel, at one height, of one depth, and
 * no further apart than joists are. Found by joining neighbours, so the cost is n log n.
 *
 * <p>Blocking between joists and the ledger with its rim can look like a small set of joists; such
 * a set is dropped when the members of a larger set bear on it or hold it.
 */
final class JoistSets {
  /** Neighbours may splay by this much (sine of 8°), as in a fanned field. */
  private static final double SPLAY = 0.14;

  /** Tops of one walking level differ by no more than this. */
  private static final double LEVEL_STEP = 0.02;

  private static final double SHORTEST = 0.5;
  private static final double SHALLOWEST = 0.06;
  private static final double DEEPEST = 0.75;
  private static final double WIDEST = 0.30;

  /** Three lines make a field: two bars may be any pair. */
  private static final int FEWEST_LINES = 3;

  private final Tolerance tolerance;
  private final MemberIndex index;
  private final Map<Member, Member> parent = new HashMap<>();

  private JoistSets(List<Member> candidates, Tolerance tolerance) {
    this.tolerance = tolerance;
    this.index = new MemberIndex(candidates);
  }

  /** The sets, the one with the most length of joist first. */
  static List<List<Member>> find(List<Member> level, Tolerance tolerance) {
    List<Member> candidates = level.stream().filter(JoistSets::looksLikeAJoist).toList();
    List<List<Member>> sets = new JoistSets(candidates, tolerance).join(candidates);
    sets.sort(
        Comparator.comparingDouble((List<Member> s) -> -totalLength(s))
            .thenComparing(s -> s.stream().map(Member::id).min(String::compareTo).orElse("")));
    return withoutImpostors(sets, tolerance);
  }

  private static double totalLength(List<Member> set) {
    return set.stream().mapToDouble(m -> m.box().length()).sum();
  }

  private static boolean looksLikeAJoist(Member m) {
    OrientedBox b = m.box();
    return b.length() >= SHORTEST
        && b.length() >= b.depth()
        && b.depth() >= SHALLOWEST
        && b.depth() <= DEEPEST
        && b.width() <= WIDEST
        && b.depth() >= 0.8 * b.width()
        && !BarMeasure.isRound(m.element().shape(), b);
  }

  private List<List<Member>> join(List<Member> candidates) {
    candidates.forEach(m -> parent.put(m, m));
    for (Member a : candidates) {
      for (Member b : index.near(a, Field.WIDEST_BAY)) {
        if (!a.equals(b) && areNeighbours(a.box(), b.box())) {
          parent.put(root(a), root(b));
        }
      }
    }
    Map<Member, List<Member>> sets = new LinkedHashMap<>();
    candidates.forEach(m -> sets.computeIfAbsent(root(m), r -> new ArrayList<>()).add(m));
    List<List<Member>> found = new ArrayList<>();
    for (List<Member> set : sets.values()) {
      if (lineCount(set, tolerance) >= FEWEST_LINES) {
        found.add(set);
      }
    }
    return found;
  }

  private Member root(Member m) {
    Member r = m;
    for (Member up = parent.get(r); up != null && !up.equals(r); up = parent.get(r)) {
      r = up;
    }
    parent.put(m, r);
    return r;
  }

  private static boolean areNeighbours(OrientedBox a, OrientedBox b) {
    if (a.axis().cross(b.axis()).length() > SPLAY || Math.abs(a.depth() - b.depth()) > LEVEL_STEP) {
      return false;
    }
    Vec3 between = b.centre().minus(a.centre());
    double along = between.dot(a.axis());
    double sameWay = Math.signum(a.axis().dot(b.axis()));
    Vec3 beside = b.centre().minus(b.axis().times(along * sameWay)).minus(a.centre());
    double across = beside.horizontal().minus(a.axis().times(beside.dot(a.axis()))).length();
    double gap = across - (a.width() + b.width()) / 2;
    double overlap = (a.length() + b.length()) / 2 - Math.abs(along);
    return Math.abs(beside.z()) <= LEVEL_STEP
        && gap <= Field.WIDEST_BAY
        && across > Math.min(a.width(), b.width()) / 2
        && overlap >= Math.min(a.length(), b.length()) / 2;
  }

  /** How many lines stand side by side, plies counted once. */
  private static int lineCount(List<Member> set, Tolerance tolerance) {
    OrientedBox first = set.get(0).box();
    double[] sides =
        set.stream()
            .mapToDouble(m -> m.box().centre().minus(first.centre()).dot(first.side()))
            .sorted()
            .toArray();
    int lines = 1;
    for (int i = 1; i < sides.length; i++) {
      lines +=
          sides[i] - sides[i - 1] > first.width() + tolerance.plyGap() + tolerance.same() ? 1 : 0;
    }
    return lines;
  }

  private static List<List<Member>> withoutImpostors(List<List<Member>> sets, Tolerance tolerance) {
    List<List<Member>> kept = new ArrayList<>();
    for (List<Member> set : sets) {
      Set<Member> left = new LinkedHashSet<>(set);
      Set<Member> plain = new LinkedHashSet<>(set);
      for (List<Member> larger : kept) {
        MemberIndex joists = new MemberIndex(larger);
        left.removeIf(m -> Contact.heldAtBothEnds(m, joists, tolerance));
        plain.removeIf(m -> Contact.holdsEndsOf(m, joists, tolerance) >= 2);
      }
      plain.retainAll(left);
      if (plain.size() >= FEWEST_LINES
          && lineCount(List.copyOf(plain), tolerance) >= FEWEST_LINES) {
        kept.add(List.copyOf(left));
      }
    }
    return kept;
  }
}
