package org.underlee.framing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import java.util.stream.IntStream;
import org.underlee.finding.StopSign;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Tolerance;

/**
 * Sets of bars that lie side by side like joists: nearly parallel, at one height, of one depth, and
 * no further apart than joists are; with the plies that touch them, the pieces that are lapped on
 * or stand end to end with them, and deeper or shallower joists between them. Found by joining
 * neighbours, so the cost is n log n.
 *
 * <p>Blocking between joists and the ledger with its rim can look like a small set of joists; such
 * a set is dropped when the members of a larger set bear on it or hold it. So are bars that lie
 * across the joists of another set, as sleepers and thick boards do.
 */
final class JoistSets {
  private static final double SHORTEST = 0.5;
  private static final double SHALLOWEST = 0.06;
  private static final double DEEPEST = 0.75;
  private static final double WIDEST = 0.30;

  /** Three lines make a field: two bars may be any pair. */
  private static final int FEWEST_LINES = 3;

  /** A set by its members' places among the candidates; order of the file. */
  private record JoistSet(List<Integer> members, double length, String firstId) {}

  /**
   * What was found.
   *
   * @param sets the one with the most length of joist first
   * @param lyingAcross bars that lie across the joists of a set
   */
  record Found(List<List<Member>> sets, List<Member> lyingAcross) {}

  private record Touching(boolean heldAtBothEnds, boolean holdsEnds, boolean liesAcross) {}

  /** How a bar and the joists of one set meet: counts of joists. */
  private static final class Meeting {
    private int tailHeld;
    private int tipHeld;
    private int ends;
    private int under;
  }

  private final Tolerance tolerance;
  private final List<Member> candidates;
  private final MemberIndex index;
  private final int[] parent;
  private final List<Integer> lyingAcross = new ArrayList<>();

  private JoistSets(List<Member> candidates, Tolerance tolerance) {
    this.tolerance = tolerance;
    this.candidates = candidates;
    this.index = new MemberIndex(candidates);
    this.parent = IntStream.range(0, candidates.size()).toArray();
  }

  /** The sets, the one with the most length of joist first. */
  static Found find(List<Member> level, Tolerance tolerance) {
    List<Member> candidates = level.parallelStream().filter(JoistSets::looksLikeAJoist).toList();
    JoistSets joists = new JoistSets(candidates, tolerance);
    joists.join();
    return new Found(
        joists.withoutImpostors(joists.sets()),
        joists.lyingAcross.stream().sorted().map(candidates::get).toList());
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

  private OrientedBox box(int i) {
    return candidates.get(i).box();
  }

  private void join() {
    Neighbours neighbours = new Neighbours(tolerance);
    List<int[]> besides = near(Field.WIDEST_BAY, neighbours::areJoistsOfOneField);
    for (int i = 0; i < parent.length; i++) {
      for (int j : besides.get(i)) {
        parent[root(i)] = root(j);
      }
    }
    int[] sizes = sizes();
    adoptDeeper(neighbours, sizes);
    spliceRows(neighbours, sizes);
  }

  /** For each candidate, those after it in the file that it is near to and goes with. */
  private List<int[]> near(double reach, BiPredicate<OrientedBox, OrientedBox> goesWith) {
    StopSign stop = StopSign.here();
    return IntStream.range(0, parent.length)
        .parallel()
        .peek(i -> stop.obey())
        .mapToObj(
            i ->
                Arrays.stream(index.placesNear(candidates.get(i), reach))
                    .filter(j -> j > i && goesWith.test(box(i), box(j)))
                    .toArray())
        .toList();
  }

  /** For each candidate the size of its set. */
  private int[] sizes() {
    int[] sizes = new int[parent.length];
    for (int i = 0; i < parent.length; i++) {
      sizes[root(i)]++;
    }
    return IntStream.range(0, parent.length).map(i -> sizes[root(i)]).toArray();
  }

  /**
   * Rows of joists that meet end to end over a beam are one set. A single bar that meets a joist
   * end to end is none: it may be the rim of the field beside.
   */
  private void spliceRows(Neighbours neighbours, int[] sizes) {
    List<int[]> meeting = near(Contact.END_GAP, neighbours::areEndToEnd);
    for (int i = 0; i < parent.length; i++) {
      for (int j : meeting.get(i)) {
        if (sizes[i] >= FEWEST_LINES && sizes[j] >= FEWEST_LINES) {
          parent[root(i)] = root(j);
        }
      }
    }
  }

  /** A joist deeper or shallower than those on both of its sides belongs to them. */
  private void adoptDeeper(Neighbours neighbours, int[] sizes) {
    int[] into = new int[parent.length];
    for (int i = 0; i < parent.length; i++) {
      into[i] = sizes[i] < FEWEST_LINES ? setOnBothSides(i, neighbours) : -1;
    }
    for (int i = 0; i < parent.length; i++) {
      if (into[i] >= 0) {
        parent[root(i)] = root(into[i]);
      }
    }
  }

  private int setOnBothSides(int i, Neighbours neighbours) {
    Map<Integer, Integer> sides = new LinkedHashMap<>();
    for (int j : index.placesNear(candidates.get(i), Field.WIDEST_BAY)) {
      if (root(j) != root(i) && neighbours.areSideBySideWithFlushTops(box(i), box(j))) {
        double side = box(j).centre().minus(box(i).centre()).dot(box(i).side());
        sides.merge(root(j), side < 0 ? 1 : 2, (a, b) -> a | b);
      }
    }
    return sides.entrySet().stream()
        .filter(e -> e.getValue() == 3)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(-1);
  }

  private int root(int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private List<JoistSet> sets() {
    Map<Integer, List<Integer>> sets = new LinkedHashMap<>();
    for (int i = 0; i < parent.length; i++) {
      sets.computeIfAbsent(root(i), r -> new ArrayList<>()).add(i);
    }
    List<JoistSet> found = new ArrayList<>();
    for (List<Integer> set : sets.values()) {
      if (set.size() >= FEWEST_LINES && lineCount(set) >= FEWEST_LINES) {
        double length = set.stream().mapToDouble(i -> box(i).length()).sum();
        String id = set.stream().map(i -> candidates.get(i).id()).min(String::compareTo).orElse("");
        found.add(new JoistSet(set, length, id));
      }
    }
    found.sort(
        Comparator.comparingDouble((JoistSet s) -> -s.length).thenComparing(JoistSet::firstId));
    return found;
  }

  /** Whether bars are lines enough to be a field. */
  static boolean isField(List<Member> set, Tolerance tolerance) {
    return lineCount(set.stream().map(Member::box).toList(), tolerance) >= FEWEST_LINES;
  }

  private int lineCount(List<Integer> set) {
    return lineCount(set.stream().map(this::box).toList(), tolerance);
  }

  /** How many lines stand side by side, plies counted once. */
  private static int lineCount(List<OrientedBox> set, Tolerance tolerance) {
    if (set.isEmpty()) {
      return 0;
    }
    OrientedBox first = set.get(0);
    double[] sides =
        set.stream()
            .mapToDouble(b -> b.centre().minus(first.centre()).dot(first.side()))
            .sorted()
            .toArray();
    int lines = 1;
    for (int i = 1; i < sides.length; i++) {
      lines +=
          sides[i] - sides[i - 1] > first.width() + tolerance.plyGap() + tolerance.same() ? 1 : 0;
    }
    return lines;
  }

  private List<List<Member>> withoutImpostors(List<JoistSet> sets) {
    int[] setOf = new int[parent.length];
    Arrays.fill(setOf, -1);
    for (int s = 0; s < sets.size(); s++) {
      for (int i : sets.get(s).members) {
        setOf[i] = s;
      }
    }
    boolean[] kept = new boolean[sets.size()];
    List<List<Member>> result = new ArrayList<>();
    for (int s = 0; s < sets.size(); s++) {
      List<Member> joists = joistsOf(s, sets.get(s), setOf, kept);
      kept[s] = !joists.isEmpty();
      if (kept[s]) {
        result.add(joists);
      }
    }
    return result;
  }

  /** What is left of a set without impostors; nothing when that is no field. */
  private List<Member> joistsOf(int s, JoistSet set, int[] setOf, boolean[] kept) {
    List<Integer> left = new ArrayList<>();
    List<Integer> plain = new ArrayList<>();
    int lying = 0;
    for (int i : set.members) {
      Touching touching = touching(i, s, setOf, kept);
      lying += touching.liesAcross ? 1 : 0;
      if (!touching.heldAtBothEnds) {
        left.add(i);
        if (!touching.holdsEnds) {
          plain.add(i);
        }
      }
    }
    if (2 * lying >= set.members.size()) {
      lyingAcross.addAll(set.members);
      return List.of();
    }
    boolean isField = lineCount(plain) >= FEWEST_LINES;
    return isField ? left.stream().map(candidates::get).toList() : List.of();
  }

  /** What a member of a set has to do with the joists of larger sets, and with those below it. */
  private Touching touching(int own, int set, int[] setOf, boolean[] kept) {
    Member m = candidates.get(own);
    Map<Integer, Meeting> meetings = new HashMap<>();
    for (int i : index.placesNear(m, Contact.END_GAP + tolerance.touch())) {
      int other = setOf[i];
      if (other >= 0 && other != set && Contact.cross(m.box(), box(i))) {
        Meeting meeting = meetings.computeIfAbsent(other, k -> new Meeting());
        if (Sleepers.liesAcross(m.box(), box(i))) {
          meeting.under++;
        } else if (other < set && kept[other]) {
          meeting.tailHeld += Contact.endsOn(m, -1, candidates.get(i)) ? 1 : 0;
          meeting.tipHeld += Contact.endsOn(m, 1, candidates.get(i)) ? 1 : 0;
          meeting.ends += endsOn(candidates.get(i), m) ? 1 : 0;
        }
      }
    }
    return new Touching(
        meetings.values().stream().anyMatch(k -> k.tailHeld > 0 && k.tipHeld > 0),
        meetings.values().stream().anyMatch(k -> k.ends >= 2),
        meetings.values().stream().anyMatch(k -> k.under >= FEWEST_LINES));
  }

  private static boolean endsOn(Member m, Member other) {
    return Contact.endsOn(m, -1, other) || Contact.endsOn(m, 1, other);
  }
}
