package org.underlee.layout;

import static org.underlee.kit.SheetValue.BATTEN_END;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_GRIP;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_WIDTH;
import static org.underlee.kit.SheetValue.BATTEN_SPACING;
import static org.underlee.kit.SheetValue.BATTEN_SPAN;
import static org.underlee.kit.SheetValue.BATTEN_WIDTH;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/** Where the battens below a group of bays are, and beside which joists they hang. */
record BattenPlaces(SheetGroup group) {
  /** Kept between a hanger and what stands in the bay beside it. */
  private static final double BESIDE = 0.005;

  /** A batten is moved aside by steps of this. */
  private static final double STEP = 0.01;

  /** Battens more than the spacing asks for, where moved ones stand too far apart. */
  private static final int MOST_MORE = 5;

  /**
   * Level stations of the battens' middles: equally spaced, each moved to the nearest place where
   * its hangers meet nothing that stands between the joists; one more where that makes a space too
   * wide.
   */
  List<Double> stations() {
    Interval along = group.along();
    double inner = along.length() - 2 * kit().get(BATTEN_END);
    int gaps = Math.max(1, GutterBuilder.gaps(inner, kit().get(BATTEN_SPACING)));
    List<Double> stations = stations(gaps);
    for (int more = 1; more <= MOST_MORE && isTooWide(stations); more++) {
      stations = stations(gaps + more);
    }
    return stations;
  }

  private List<Double> stations(int gaps) {
    double from = group.along().from() + kit().get(BATTEN_END);
    double inner = group.along().length() - 2 * kit().get(BATTEN_END);
    List<Double> stations = new ArrayList<>();
    for (int i = 0; i <= gaps; i++) {
      double v = free(from + inner * i / gaps);
      if (stations.isEmpty()
          || v - stations.get(stations.size() - 1) > 2 * kit().get(BATTEN_WIDTH)) {
        stations.add(v);
      }
    }
    return stations;
  }

  private boolean isTooWide(List<Double> stations) {
    for (int i = 0; i + 1 < stations.size(); i++) {
      if (stations.get(i + 1) - stations.get(i) > kit().get(BATTEN_SPACING) + SeatRange.SAME) {
        return true;
      }
    }
    return false;
  }

  private double free(double v) {
    double half = kit().get(BATTEN_WIDTH) / 2;
    for (double off = 0; off < kit().get(BATTEN_SPACING); off += STEP) {
      for (double at : List.of(v - off, v + off)) {
        if (group.along().contains(at - half)
            && group.along().contains(at + half)
            && pieces(at).stream().allMatch(p -> !hooks(p, at).isEmpty())) {
          return at;
        }
      }
    }
    return v;
  }

  /**
   * The best pieces up to a line.
   *
   * @param squares sum of the squares of their lengths: the least when they are equal
   * @param from where the last begins
   */
  private record UpTo(int count, double squares, int from) {
    boolean isBetterThan(UpTo o) {
      return count != o.count ? count < o.count : squares < o.squares - SeatRange.SAME;
    }
  }

  /**
   * Numbers of the lines from and to which each piece of a batten reaches: the fewest pieces, and
   * of those as equal ones as they can be, so that none is a stub.
   */
  List<Interval> pieces(double v) {
    List<JoistLine> lines = group.lines();
    List<UpTo> best = new ArrayList<>(List.of(new UpTo(0, 0, 0)));
    for (int to = 1; to < lines.size(); to++) {
      best.add(lastPiece(best, lines, to, v));
    }
    List<Interval> pieces = new ArrayList<>();
    for (int to = lines.size() - 1; to > 0; to = best.get(to).from) {
      pieces.add(0, new Interval(best.get(to).from, to));
    }
    return pieces;
  }

  /** Over one bay at least, and no longer than a batten is bought. */
  private UpTo lastPiece(List<UpTo> best, List<JoistLine> lines, int to, double v) {
    List<Double> lengths = kit().item(Items.BATTEN).stockLengths();
    double longest = lengths.get(lengths.size() - 1);
    UpTo chosen = new UpTo(Integer.MAX_VALUE, 0, 0);
    for (int from = to - 1; from >= 0; from--) {
      double length = lines.get(to).rightAt(v) - lines.get(from).leftAt(v);
      if (length > longest && from < to - 1) {
        break;
      }
      UpTo before = best.get(from);
      UpTo here = new UpTo(before.count + 1, before.squares + length * length, from);
      chosen = here.isBetterThan(chosen) ? here : chosen;
    }
    return chosen;
  }

  /**
   * A hanger's place: beside a joist line.
   *
   * @param into +1 when it hangs in the bay on the high-u side
   */
  record Hook(JoistLine line, int into) {}

  /**
   * The fewest hangers that hold a piece, each as far from the last as it may be; empty where none
   * do, because something stands beside the joists.
   */
  List<Hook> hooks(Interval piece, double v) {
    List<Hook> free = new ArrayList<>();
    for (int i = (int) piece.from(); i <= (int) piece.to(); i++) {
      JoistLine line = group.lines().get(i);
      boolean right = i < (int) piece.to() && isFree(group.runs().get(i), v, true);
      boolean left = i > (int) piece.from() && isFree(group.runs().get(i - 1), v, false);
      if (right || left) {
        free.add(new Hook(line, right ? 1 : -1));
      }
    }
    double span = kit().get(BATTEN_SPAN);
    List<Hook> hooks = new ArrayList<>();
    double held = group.lines().get((int) piece.from()).centre(v);
    double end = group.lines().get((int) piece.to()).centre(v);
    for (int i = 0; i < free.size(); i++) {
      double here = free.get(i).line.centre(v);
      double reach = hooks.isEmpty() ? span / 2 : span;
      if (here - held > reach + SeatRange.SAME) {
        return List.of();
      }
      boolean last = i + 1 == free.size();
      if (last
          || hooks.isEmpty()
          || free.get(i + 1).line.centre(v) - held > reach + SeatRange.SAME) {
        hooks.add(free.get(i));
        held = here;
      }
    }
    return end - held > span / 2 + SeatRange.SAME ? List.of() : hooks;
  }

  /**
   * Whether nothing stands where a hanger would, beside one of the bay's joists.
   *
   * @param left the joist on the low-u side
   */
  private boolean isFree(BayRun run, double v, boolean left) {
    double reach = kit().get(BATTEN_HANGER_WIDTH) / 2 + BESIDE;
    Interval stretch = new Interval(v - reach, v + reach);
    double deep = kit().get(BATTEN_HANGER_WIDTH) + BESIDE;
    double face = left ? run.bay().leftFace().at(v) : run.bay().rightFace().at(v);
    Interval across = left ? new Interval(face, face + deep) : new Interval(face - deep, face);
    double head = run.bay().joistBottom(v) + kit().get(BATTEN_HANGER_GRIP);
    double foot = group.plan().seat(v);
    return Obstacle.in(run).stream()
        .noneMatch(
            o ->
                !o.stretch().meet(stretch).isEmpty()
                    && !o.across().meet(across).isEmpty()
                    && o.heights().from() < head
                    && o.heights().to() > foot);
  }

  /** Stations of the battens of which a piece hangs on nothing. */
  List<Double> unhung() {
    return stations().stream()
        .filter(v -> pieces(v).stream().anyMatch(p -> hooks(p, v).isEmpty()))
        .toList();
  }

  /** The joist lines that a piece lies across. */
  List<JoistLine> lines(Interval piece) {
    return group.lines().subList((int) piece.from(), (int) piece.to() + 1);
  }

  /** Pieces meet at the middle of a line; the outer ones reach to the outer faces. */
  Interval across(Interval piece, double v) {
    List<JoistLine> all = group.lines();
    List<JoistLine> lines = lines(piece);
    JoistLine first = lines.get(0);
    JoistLine last = lines.get(lines.size() - 1);
    return new Interval(
        first.equals(all.get(0)) ? first.leftAt(v) : first.centre(v),
        last.equals(all.get(all.size() - 1)) ? last.rightAt(v) : last.centre(v));
  }

  private Kit kit() {
    return group.plan().kit();
  }
}
