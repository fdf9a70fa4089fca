package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.finding.StopSign;
import org.underlee.takeoff.Basis.Column;
import org.underlee.takeoff.LinearProgram.Row;

/**
 * Looks for a plan of no more than a given cost where all patterns that it can use are listed:
 * branch and bound. A branch says that sticks of one offer, or of one pattern, are cut at most so
 * often, or more often; offers come first, for their numbers decide most. Plans may cut pieces that
 * are not wanted.
 *
 * <p>When the search ends without a plan, there is none.
 */
final class ListedSearch {
  private static final double WHOLE = 1e-6;
  private static final double SAME = 1e-9;
  private static final int NONE = -1;

  private final CuttingOrder order;
  private final StopSign stop;
  private final Sums sums;
  private final List<Pattern> patterns;
  private final long most;
  private final List<Limit> limits = new ArrayList<>();
  private int nodesLeft;
  private boolean cutShort;

  /** What a branch says of one pattern, or of all sticks of one offer. */
  private record Limit(int group, int sticks, boolean atMost) {}

  /**
   * A search.
   *
   * @param patterns every one that may be of use
   * @param most that the plan may cost
   */
  ListedSearch(
      CuttingOrder order, Sums sums, List<Pattern> patterns, long most, int nodes, StopSign stop) {
    this.stop = stop;
    this.order = order;
    this.sums = sums;
    this.patterns = patterns;
    this.most = most;
    this.nodesLeft = nodes;
  }

  /** Whether there is certainly no plan, after a search that found none. */
  boolean isProven() {
    return !cutShort;
  }

  /** A plan, one pattern a stick. */
  Optional<List<Pattern>> search() {
    return search(List.of());
  }

  /** As {@link #search()}, near the basis of what is one limit less. */
  private Optional<List<Pattern>> search(List<Column> near) {
    stop.obey();
    if (nodesLeft-- <= 0) {
      cutShort = true;
      return Optional.empty();
    }
    LinearProgram.Solved solved = solve(near);
    if (isTooDear(solved)) {
      return Optional.empty();
    }
    double[] sticks = new double[patterns.size()];
    solved.use().forEach(u -> sticks[u.tag()] += u.level());
    int branch = mostBroken(sticks);
    if (branch == NONE) {
      return Optional.of(plan(sticks));
    }
    double level = level(branch, sticks);
    int down = (int) Math.floor(level);
    Limit below = new Limit(branch, down, true);
    Limit above = new Limit(branch, down + 1, false);
    boolean upFirst = level - down > 0.5;
    return within(upFirst ? above : below, solved.basis())
        .or(() -> within(upFirst ? below : above, solved.basis()));
  }

  private Optional<List<Pattern>> within(Limit limit, List<Column> near) {
    limits.add(limit);
    Optional<List<Pattern>> found = search(near);
    limits.remove(limits.size() - 1);
    return found;
  }

  /** Groups are numbered: the offers, then the patterns. */
  private boolean isIn(int group, int pattern) {
    int offers = order.offers().size();
    return group < offers ? patterns.get(pattern).offer() == group : group - offers == pattern;
  }

  private double level(int group, double[] sticks) {
    double sum = 0;
    for (int p = 0; p < sticks.length; p++) {
      sum += isIn(group, p) ? sticks[p] : 0;
    }
    return sum;
  }

  private LinearProgram.Solved solve(List<Column> near) {
    List<Column> columns = columns();
    LinearProgram program =
        new LinearProgram(
            rows(),
            columns,
            (price, saving) -> Optional.empty(),
            (double) order.greatestCost(),
            SAME * order.greatestCost());
    return near.isEmpty() ? program.solve() : program.solve(withLimit(near, columns, program));
  }

  /** A basis where one more limit, which its answer breaks, is filled by a stand-in. */
  private List<Column> withLimit(List<Column> near, List<Column> columns, LinearProgram program) {
    List<Column> basis = new ArrayList<>();
    for (Column column : near) {
      boolean isPattern = column.tag() != LinearProgram.NOTHING;
      basis.add(isPattern ? columns.get(column.tag()) : column.withRow());
    }
    Limit last = limits.get(limits.size() - 1);
    basis.add(program.standIn(near.size(), last.atMost() ? -1 : 1));
    return basis;
  }

  private boolean isTooDear(LinearProgram.Solved solved) {
    double slack = SAME * order.greatestCost() * (solved.price().length + 1);
    double supply = order.wanted().stream().skip(order.sizes()).mapToInt(s -> s).sum();
    double cost =
        solved.ended()
            ? LinearProgram.proven(
                rows(), solved.price(), slack, (double) order.leastCost(), supply)
            : 0;
    return sums.atLeast(cost) > most;
  }

  private List<Row> rows() {
    int[] wanted = order.wantedRows();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < wanted.length; i++) {
      rows.add(new Row(wanted[i], i >= order.sizes()));
    }
    limits.forEach(l -> rows.add(new Row(l.sticks(), l.atMost())));
    return rows;
  }

  private List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    int own = order.rows();
    for (int p = 0; p < patterns.size(); p++) {
      Pattern pattern = patterns.get(p);
      double[] rows = new double[own + limits.size()];
      for (int i = 0; i < own; i++) {
        rows[i] = pattern.count(i);
      }
      for (int i = 0; i < limits.size(); i++) {
        rows[own + i] = isIn(limits.get(i).group(), p) ? 1 : 0;
      }
      columns.add(new Column(p, order.cost(pattern), rows));
    }
    return columns;
  }

  /** The offer, else the pattern, that is furthest from being cut a whole number of times. */
  private int mostBroken(double[] sticks) {
    int offers = order.offers().size();
    int offer = mostBroken(sticks, 0, offers);
    return offer == NONE ? mostBroken(sticks, offers, offers + patterns.size()) : offer;
  }

  private int mostBroken(double[] sticks, int from, int to) {
    int worst = NONE;
    double by = WHOLE;
    for (int group = from; group < to; group++) {
      double level = level(group, sticks);
      double broken = Math.abs(level - Math.rint(level));
      if (broken > by) {
        by = broken;
        worst = group;
      }
    }
    return worst;
  }

  private List<Pattern> plan(double[] sticks) {
    List<Pattern> plan = new ArrayList<>();
    for (int i = 0; i < sticks.length; i++) {
      for (long n = Math.round(sticks[i]); n > 0; n--) {
        plan.add(patterns.get(i));
      }
    }
    return plan;
  }
}
