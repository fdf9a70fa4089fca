package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.underlee.drainage.WaterGraph.Way;

/**
 * Where the water on each layer ends, as shares of the ends. A layer's fate is that of the ways on
 * from it, weighted; water that has no way on fills a {@link Pool} until it spills. Depth first,
 * each layer once, without recursion.
 */
final class Fates {
  private static final class Visit {
    final Layer layer;
    final List<Way> ways;
    int next;
    @Nullable Pool pool;

    Visit(Layer layer, List<Way> ways) {
      this.layer = layer;
      this.ways = ways;
    }
  }

  private final WaterGraph graph;
  private final Sinks sinks;

  /** Number of the outlet that lets nothing through, or −1. */
  private final int blocked;

  /** With every outlet open. */
  private final @Nullable Fates before;

  /** By number: the ends with every outlet open that the blocked one spoils. */
  private final boolean[] spoiled;

  /** By layer: null before it is visited, {@link #open} while it is, then where its water ends. */
  private final FateBoard fates;

  private final Fate open = Fate.of(-1);
  private final List<Pool> pools = new ArrayList<>();
  private final List<Visit> stack = new ArrayList<>();

  /**
   * A case by itself.
   *
   * @param board with nothing on it
   * @param blocked number of the outlet that lets nothing through, or −1
   */
  Fates(WaterGraph graph, FateBoard board, int blocked) {
    this(graph, board, new Sinks(), blocked, null);
  }

  private Fates(
      WaterGraph graph, FateBoard board, Sinks sinks, int blocked, @Nullable Fates before) {
    this.graph = graph;
    this.sinks = sinks;
    this.blocked = blocked;
    this.before = before;
    this.spoiled = sinks.in(blocked);
    this.fates = board;
  }

  /**
   * With one outlet shut: what none of the water on a layer came to is no matter to it.
   *
   * @param board with nothing on it
   */
  Fates without(int outlet, FateBoard board) {
    return new Fates(graph, board, sinks.copy(), outlet, this);
  }

  /** The ends that water came to. */
  Sinks sinks() {
    return sinks;
  }

  /** Pools that were filled so far. */
  List<Pool> pools() {
    return pools;
  }

  Fate of(Layer start) {
    if (fate(start.number()) == null) {
      open(start);
      while (!stack.isEmpty()) {
        Visit visit = stack.get(stack.size() - 1);
        Fate fate = visit.pool == null ? flow(visit) : spill(visit.pool);
        if (fate != null) {
          fates.set(visit.layer.number(), fate);
          stack.remove(stack.size() - 1);
        }
      }
    }
    Fate fate = fate(start.number());
    if (fate == null) {
      throw new IllegalStateException("layer " + start.number() + " has no fate");
    }
    return fate;
  }

  private @Nullable Fate fate(int layer) {
    Fate own = fates.get(layer);
    if (own != null || before == null) {
      return own;
    }
    Fate theirs = before.fates.get(layer);
    return theirs == null || theirs.leadsTo(spoiled) ? null : theirs;
  }

  private void open(Layer layer) {
    fates.set(layer.number(), open);
    stack.add(new Visit(layer, graph.ways(layer, blocked)));
  }

  /** The fate when all ways on are known; else null, with the next way opened. */
  private @Nullable Fate flow(Visit visit) {
    while (visit.next < visit.ways.size()) {
      Layer next = visit.ways.get(visit.next++).layer();
      if (next != null && fate(next.number()) == null) {
        open(next);
        return null;
      }
    }
    Fate fate = combined(visit.ways);
    if (fate == null) {
      visit.pool = new Pool(graph, visit.layer, fates);
    }
    return fate;
  }

  /** Ways that come back to a layer that is still open do not count; null when none is left. */
  private @Nullable Fate combined(List<Way> ways) {
    if (ways.size() == 1) {
      return endOf(ways.get(0));
    }
    Fate[] ends = new Fate[ways.size()];
    double[] weights = new double[ends.length];
    int count = 0;
    for (Way way : ways) {
      Fate end = endOf(way);
      if (end != null) {
        ends[count] = end;
        weights[count++] = way.weight();
      }
    }
    return count == 0 ? null : Fate.mixed(ends, weights, count);
  }

  private @Nullable Fate endOf(Way way) {
    if (way.sink() != null) {
      return sinks.reached(way.sink(), way.at());
    }
    Fate end = way.layer() == null ? null : fate(way.layer().number());
    return end == open ? null : end;
  }

  /**
   * Fills the pool further; the fate of what it spills to, or null when that is yet to be known.
   */
  private @Nullable Fate spill(Pool pool) {
    while (true) {
      Way way = pool.lowest();
      Fate end = endOf(way);
      if (end != null) {
        finish(pool, end);
        return end;
      }
      Layer beyond = Objects.requireNonNull(way.layer());
      if (fates.get(beyond.number()) == open || fallsBack(beyond, pool)) {
        pool.take(beyond);
      } else {
        open(beyond);
        return null;
      }
    }
  }

  /**
   * Whether water on a layer runs into the pool or what is still open, or stands there as a part of
   * one of these: what stands lower, over a sill, is another pool.
   */
  private boolean fallsBack(Layer layer, Pool pool) {
    List<Way> ways = graph.ways(layer, blocked);
    for (Way way : ways) {
      Layer next = way.layer();
      if (next != null && (pool.isInside(next) || fates.get(next.number()) == open)) {
        return true;
      }
    }
    return ways.isEmpty() && (pool.isLevelWith(layer) || isInOpenPool(layer));
  }

  private boolean isInOpenPool(Layer layer) {
    return stack.stream().anyMatch(v -> v.pool != null && v.pool.isInside(layer));
  }

  private void finish(Pool pool, Fate end) {
    pool.spillTo(end);
    pools.add(pool);
    for (Layer member : pool.layers()) {
      if (fate(member.number()) == null) {
        fates.set(member.number(), end);
      }
    }
  }
}
