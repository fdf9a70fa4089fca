package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.underlee.takeoff.CuttingBound.Relaxed;
import org.underlee.takeoff.Patterns.Pattern;

/**
 * Cuts an order at least cost: branch and price. At each node the relaxation of what is left gives
 * a bound and a pattern that it uses most. The first branch cuts as many sticks to that pattern as
 * the relaxation has whole ones (at least one); the others cut fewer and never that pattern again,
 * so that the branches together leave nothing out. Branches that leave the relaxation's advice are
 * tried few at a time (limited discrepancy search), since the advice is mostly right.
 *
 * <p>Counted in nodes, not in time, so that the answer is the same on every machine. When the nodes
 * run out the best plan found stands beside the bound that is proven.
 */
final class CuttingSearch {
  private static final int MOST_NODES = 400;
  private static final int MOST_DISCREPANCIES = 64;

  private final CuttingOrder order;
  private final CuttingBound relaxation;
  private final List<Pattern> cut = new ArrayList<>();
  private List<Pattern> best = List.of();
  private long bestCost = Long.MAX_VALUE;
  private long bound;
  private int nodes;
  private boolean cutShort;

  CuttingSearch(CuttingOrder order) {
    this.order = order;
    this.relaxation = new CuttingBound(order);
  }

  /** One pattern a stick; together they hold at least what is wanted. */
  record Found(List<Pattern> sticks, long cost, long bound) {}

  Found search() {
    bound = order.atLeast(relaxation.relax(order.wanted(), Set.of()).cost());
    offer(order.wanted());
    for (int discrepancies = 0; discrepancies <= MOST_DISCREPANCIES; discrepancies *= 2) {
      cutShort = false;
      branch(order.wanted(), 0, new HashSet<>(), discrepancies);
      if (!cutShort) {
        bound = bestCost; // every branch was tried or could not be better
      }
      if (bestCost == bound || nodes >= MOST_NODES) {
        break;
      }
      discrepancies = Math.max(discrepancies, 1);
    }
    return new Found(best, bestCost, bound);
  }

  private void branch(int[] wanted, long spent, Set<Pattern> not, int discrepancies) {
    if (bestCost == bound || nodes >= MOST_NODES) {
      cutShort = true;
      return;
    }
    nodes++;
    Relaxed relaxed = relaxation.relax(wanted, not);
    offer(wanted);
    if (spent + order.atLeast(relaxed.cost()) >= bestCost || relaxed.use().isEmpty()) {
      return;
    }
    Relaxed.Use most = relaxed.use().get(0);
    for (Relaxed.Use use : relaxed.use()) {
      most = use.sticks() > most.sticks() ? use : most;
    }
    Pattern pattern = most.pattern();
    int whole = (int) Math.max(1, Math.floor(most.sticks() + 1e-6));
    while (!pattern.times(whole).fits(wanted)) {
      whole--;
    }
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
    branch(left, spent + sticks * order.cost(pattern.offer()), not, discrepancies);
    cut.subList(cut.size() - sticks, cut.size()).clear();
  }

  /** A plan: what is cut so far, and what is left by first fit; kept when it costs less. */
  private void offer(int[] wanted) {
    List<Pattern> plan = new ArrayList<>(cut);
    plan.addAll(firstFit(wanted));
    long cost = plan.stream().mapToLong(p -> order.cost(p.offer())).sum();
    if (cost < bestCost) {
      bestCost = cost;
      best = plan;
    }
  }

  /** Longest first, each into the first stick with room; then the cheapest stick that holds it. */
  private List<Pattern> firstFit(int[] wanted) {
    long longest = order.greatestRoom();
    List<int[]> sticks = new ArrayList<>();
    List<Long> rooms = new ArrayList<>();
    for (int size = 0; size < wanted.length; size++) {
      for (int n = 0; n < wanted[size]; n++) {
        int stick = 0;
        while (stick < sticks.size() && rooms.get(stick) < order.need(size)) {
          stick++;
        }
        if (stick == sticks.size()) {
          sticks.add(new int[wanted.length]);
          rooms.add(longest);
        }
        sticks.get(stick)[size]++;
        rooms.set(stick, rooms.get(stick) - order.need(size));
      }
    }
    List<Pattern> patterns = new ArrayList<>();
    for (int i = 0; i < sticks.size(); i++) {
      patterns.add(new Pattern(order.cheapestWith(longest - rooms.get(i)), sticks.get(i)));
    }
    return patterns;
  }
}
