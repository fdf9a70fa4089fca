package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;

/**
 * Groups joists into lines. Two pieces belong to one line when they touch side by side over at
 * least {@link #SHORTEST_LAP} (plies, sisters over part of the length, laps over a beam), or stand
 * end to end in one row (splices).
 */
record JoistLines(Transform frame, Tolerance tolerance) {
  /** Less than this side by side is a chance touch: a lap over a beam is longer. */
  private static final double SHORTEST_LAP = 0.08;

  /** The widest saw cut between pieces end to end over a beam. */
  private static final double SPLICE_GAP = 0.02;

  /** Pieces whose middles are this share of their width apart stand in one row. */
  private static final double ONE_ROW = 0.5;

  private static final class Group {
    private final List<Ply> plies = new ArrayList<>();
  }

  List<JoistLine> of(List<Member> joists) {
    List<Ply> plies = new ArrayList<>(joists.stream().map(j -> Ply.of(j, frame)).toList());
    plies.sort(
        Comparator.comparingDouble(JoistLines::leftmost)
            .thenComparingDouble(p -> p.stretch().from()));
    List<List<Ply>> groups = groups(plies);
    groups.sort(Comparator.comparingDouble(JoistLines::middle));
    sortWhereOneBehindTheOther(groups);
    List<JoistLine> lines = new ArrayList<>();
    for (List<Ply> group : groups) {
      lines.add(line("J" + (lines.size() + 1), group));
    }
    return lines;
  }

  /** Lines at one place across, such as joists cut by an opening, come in order of station. */
  private void sortWhereOneBehindTheOther(List<List<Ply>> groups) {
    int start = 0;
    for (int i = 1; i <= groups.size(); i++) {
      if (i == groups.size()
          || middle(groups.get(i)) - middle(groups.get(start)) > tolerance.touch()) {
        groups.subList(start, i).sort(Comparator.comparingDouble(g -> g.get(0).stretch().from()));
        start = i;
      }
    }
  }

  private static double leftmost(Ply p) {
    return Math.min(p.shape().left().at(p.stretch().from()), p.shape().left().at(p.stretch().to()));
  }

  private static double rightmost(Ply p) {
    return Math.max(
        p.shape().right().at(p.stretch().from()), p.shape().right().at(p.stretch().to()));
  }

  private static double middle(List<Ply> line) {
    return line.stream().mapToDouble(p -> p.centre(p.stretch().middle())).average().orElse(0);
  }

  /** Only plies whose places across overlap are compared: in order of u they are near. */
  private List<List<Ply>> groups(List<Ply> plies) {
    Group[] of = new Group[plies.size()];
    List<Group> groups = new ArrayList<>();
    for (int i = 0; i < of.length; i++) {
      Ply own = plies.get(i);
      double reach = rightmost(own) + tolerance.plyGap() + tolerance.same();
      if (of[i] == null) {
        of[i] = new Group();
        groups.add(of[i]);
        of[i].plies.add(own);
      }
      for (int j = i + 1; j < of.length && leftmost(plies.get(j)) <= reach; j++) {
        if (of[j] != of[i] && areOne(own, plies.get(j))) {
          join(of, i, j, plies.get(j), groups);
        }
      }
    }
    return new ArrayList<>(groups.stream().map(g -> g.plies).toList());
  }

  private static void join(Group[] of, int i, int j, Ply other, List<Group> groups) {
    Group old = of[j];
    if (old == null) {
      of[j] = of[i];
      of[i].plies.add(other);
      return;
    }
    of[i].plies.addAll(old.plies);
    groups.remove(old);
    for (int k = 0; k < of.length; k++) {
      of[k] = of[k] == old ? of[i] : of[k];
    }
  }

  private boolean areOne(Ply a, Ply b) {
    Interval shared = a.stretch().meet(b.stretch());
    if (shared.length() >= SHORTEST_LAP) {
      double v = shared.middle();
      boolean aFirst = a.centre(v) <= b.centre(v);
      double gap =
          aFirst
              ? b.shape().left().at(v) - a.shape().right().at(v)
              : a.shape().left().at(v) - b.shape().right().at(v);
      return tolerance.areOneLine(gap) && shareHeight(a, b, v);
    }
    double v = (a.stretch().middle() + b.stretch().middle()) / 2;
    double between =
        Math.max(a.stretch().from() - b.stretch().to(), b.stretch().from() - a.stretch().to());
    return between <= SPLICE_GAP
        && Math.abs(a.centre(v) - b.centre(v)) <= tolerance.touch() + tolerance.same()
        && shareHeight(a, b, v);
  }

  private static boolean shareHeight(Ply a, Ply b, double v) {
    Interval one = new Interval(a.shape().bottom().at(v), a.shape().top().at(v));
    Interval two = new Interval(b.shape().bottom().at(v), b.shape().top().at(v));
    return one.meet(two).length() >= Math.min(one.length(), two.length()) / 2;
  }

  /** The same line, under its name, in another frame. */
  static JoistLine seen(JoistLine line, Transform frame) {
    return line(line.id(), line.plies().stream().map(m -> Ply.of(m, frame)).toList());
  }

  private static JoistLine line(String id, List<Ply> group) {
    List<Ply> pieces = inOrder(group);
    Ply longest =
        pieces.stream().max(Comparator.comparingDouble(p -> p.stretch().length())).orElseThrow();
    double slope = (longest.shape().left().slope() + longest.shape().right().slope()) / 2;
    double fall = longest.shape().bottom().slope();
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double bottom = Double.POSITIVE_INFINITY;
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    double depth = 0;
    for (Ply p : pieces) {
      left = Math.min(left, p.outerLeft(slope).at0());
      right = Math.max(right, p.outerRight(slope).at0());
      bottom = Math.min(bottom, p.lowest(fall).at0());
      from = Math.min(from, p.stretch().from());
      to = Math.max(to, p.stretch().to());
      depth = Math.max(depth, p.depth());
    }
    JoistLine line =
        new JoistLine(
            id,
            pieces,
            new Linear(left, slope),
            new Linear(right, slope),
            new Interval(from, to),
            new Linear(bottom, fall),
            depth,
            "");
    return new JoistLine(
        id, pieces, line.left(), line.right(), line.stretch(), line.bottom(), depth, why(line));
  }

  /** Rows across the line, each in order of station. */
  private static List<Ply> inOrder(List<Ply> group) {
    if (group.size() == 1) {
      return group;
    }
    List<Ply> across = new ArrayList<>(group);
    across.sort(Comparator.comparingDouble(p -> p.centre(p.stretch().middle())));
    List<List<Ply>> rows = new ArrayList<>();
    double end = Double.NEGATIVE_INFINITY;
    for (Ply p : across) {
      double v = p.stretch().middle();
      double u = p.centre(v);
      if (u > end) {
        rows.add(new ArrayList<>());
        end = u + ONE_ROW * (p.shape().right().at(v) - p.shape().left().at(v));
      }
      rows.get(rows.size() - 1).add(p);
    }
    rows.forEach(r -> r.sort(Comparator.comparingDouble(p -> p.stretch().from())));
    return rows.stream().flatMap(List::stream).toList();
  }

  private static String why(JoistLine line) {
    int pieces = line.pieces().size();
    int abreast = line.pliesAbreast();
    if (pieces == 1) {
      return "a single joist";
    }
    if (abreast == 1) {
      return pieces + " pieces end to end are one line";
    }
    String plies = abreast + " plies that touch (gap at most 6 mm) act as one line";
    return line.steps().isEmpty()
        ? plies
        : plies + ", over part of its length; its width steps where pieces start and stop";
  }
}
