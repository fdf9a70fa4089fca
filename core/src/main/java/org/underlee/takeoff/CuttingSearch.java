package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.StopSign;
import org.underlee.takeoff.CuttingBound.Relaxed;

/**
 * Cuts an order at least cost: branch and price. At each node the relaxation of what is left gives
 * a bound and a pattern that it uses most. The first branch cuts as many sticks to that pattern as
 * the relaxation has whole ones (at least one); the others cut fewer and never that pattern again,
 * so that the branches together leave nothing out. Branches that leave the relaxation's advice are
 * tried few at a time (limited discrepancy search), since the advice is mostly right.
 *
 * <p>Before all that, what a person would cut is held against what {@link LeastCost} tells by
 * formulas: on most orders they meet, and there is nothing to search.
 *
 * <p>Where that does not meet the bound, every pattern that a cheaper plan could use is listed:
 * there are few, because the bound is near. {@link ListedSearch} then either finds the cheaper plan
 * or shows that there is none.
 *
 * <p>Counted in nodes, not in time, so that the answer is the same on every machine. When the nodes
 * run out the best plan found stands beside the bound that is proven.
 */
final class CuttingSearch {
  /** First few, because a list of patterns decides sooner where it is short. */
  private static final int[] NODES = {150, 600};

  private static final double ROUNDING = 1e-9;
  private static final int MOST_NODES_LISTED = 2000;
  private static final int MOST_DISCREPANCIES = 64;
  private static final int MOST_PATTERNS = 1500;

  private final CuttingOrder order;
  private final List<Pattern> cut = new ArrayList<>();
  private final StopSign stop;
  private final Sums sums;
  private final CuttingBound relaxation;
  private List<Pattern> best = List.of();
  private long bestCost = Long.MAX_VALUE;
  private long bound;
  private int nodesLeft;
  private boolean cutShort;

  CuttingSearch(CuttingOrder order, StopSign stop) {
    this.order = order;
    this.stop = stop;
    this.sums = new Sums(order);
    this.relaxation = new CuttingBound(order, stop);
  }

  /** One pattern a stick; together they hold at least what is wanted. */
  record Found(List<Pattern> sticks, long cost, long bound) {}

  Found search() {
    Found quick = quick();
    if (quick.cost() <= quick.bound()) {
      return quick;
    }
    int[] wanted = order.wantedRows();
    bound = sums.atLeast(relaxation.relax(wanted, Set.of()).cost());
    for (int nodes : NODES) {
      nodesLeft = nodes;
      descend();
      while (bestCost > bound && isCheaperFound()) {
        // once more, for one that is cheaper still
      }
    }
    return new Found(best, bestCost, bound);
  }

  /** By first fit, and what it must cost by formulas: proven where the two meet. */
  Found quick() {
    int[] wanted = order.wantedRows();
    if (order.abreast() > 1) {
      offer(FirstFit.ripped(order, wanted)); // first: at the same cost it leaves more of the last
    }
    offer(wanted);
    bound = sums.atLeast(LeastCost.of(order) * (1 - ROUNDING));
    return new Found(best, bestCost, bound);
  }

  /** Lists the patterns of cheaper plans; finds one, or raises the bound when there is none. */
  private boolean isCheaperFound() {
    long cheaper = bestCost - order.costStep();
    Optional<List<Pattern>> listed = relaxation.within((double) cheaper, MOST_PATTERNS);
    if (listed.isEmpty()) {
      return false;
    }
    ListedSearch search =
        new ListedSearch(order, sums, listed.get(), cheaper, MOST_NODES_LISTED, stop);
    Optional<List<Pattern>> found = search.search();
    if (found.isEmpty()) {
      bound = search.isProven() ? bestCost : bound;
      return false;
    }
    best = found.get();
    bestCost = best.stream().mapToLong(order::cost).sum();
    return true;
  }

  private void descend() {
    int discrepancies = 0;
    while (bestCost > bound && nodesLeft > 0 && discrepancies <= MOST_DISCREPANCIES) {
      cutShort = false;
      branch(order.wantedRows(), 0, new HashSet<>(), discrepancies);
      if (!cutShort) {
        bound = bestCost; // every branch was tried or could not be better
      }
      discrepancies = Math.max(2 * discrepancies, 1);
    }
  }

  private void branch(int[] wanted, long spent, Set<Pattern> not, int discrepancies) {
    if (bestCost == bound || nodesLeft <= 0) {
      cutShort = true;
      return;
    }
    stop.obey();
    nodesLeft--;
    Relaxed relaxed = relaxation.relax(wanted, not);
    cutShort |= !relaxation.isExact();
    offer(wanted);
    if (spent + sums.atLeast(relaxed.cost()) >= bestCost || relaxed.use().isEmpty()) {
      return;
    }
    Relaxed.Use most = relaxed.use().get(0);
    for (Relaxed.Use use : relaxed.use()) {
      most = use.sticks() > most.sticks() ? use : most;
    }
    Pattern pattern = most.pattern();
    int whole = (int) Math.max(1, Math.floor(most.sticks() + 1e-6));
    whole = Math.min(whole, pattern.timesIn(wanted));
    cutAndBranch(wanted, spent, not, pattern, whole, discrepancies);
    for (int fewer = whole - 1; fewer >= 0; fewer--) {
      if (discrepancies == 0) {
        cutShort = true;
        return;
      }
      Set<Pattern> never = new HashSet<>(not);
      never.add(pattern);
      cutAndBranch(wanted, spent, never, pattern, fewer, discrepancies - 1);
    }
  }

  private void cutAndBranch(
      int[] wanted, long spent, Set<Pattern> not, Pattern pattern, int sticks, int discrepancies) {
    int[] left = wanted.clone();
    for (int i = 0; i < left.length; i++) {
      left[i] -= sticks * pattern.count(i);
    }
    for (int n = 0; n < sticks; n++) {
      cut.add(pattern);
    }
    branch(left, spent + sticks * order.cost(pattern), not, discrepancies);
    cut.subList(cut.size() - sticks, cut.size()).clear();
  }

  /** A plan: what is cut so far, and what is left by first fit; kept when it costs less. */
  private void offer(int[] wanted) {
    List<Pattern> plan = new ArrayList<>(cut);
    plan.addAll(FirstFit.of(order, wanted));
    offer(plan);
  }

  private void offer(List<Pattern> plan) {
    long cost = plan.stream().mapToLong(order::cost).sum();
    if (cost < bestCost) {
      bestCost = cost;
      best = List.copyOf(plan);
    }
  }
}
