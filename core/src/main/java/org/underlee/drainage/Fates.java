package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
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
  private final PlanSweep plan;
  private final List<Layer> layers;
  private final List<Column> columns;
  private final Sinks sinks;

  /** Number of the outlet that lets nothing through, or −1. */
  private final int blocked;

  /** With every outlet open. */
  private final @Nullable Fates before;

  /** By layer: null before it is visited, {@link #open} while it is, then where its water ends. */
  private final @Nullable Fate[] fates;

  private final Fate open = Fate.of(-1);
  private final List<Pool> pools = new ArrayList<>();
  private final int[] holders;
  private int filled;
  private final List<Visit> stack = new ArrayList<>();

  /** With every outlet open. */
  Fates(WaterGraph graph, PlanSweep plan, Sinks sinks) {
    this(graph, plan, sinks, -1, null);
  }

  /** With one outlet shut: what none of the water on a layer came to is no matter to it. */
  Fates without(int outlet) {
    return new Fates(graph, plan, sinks, outlet, this);
  }

  private Fates(
      WaterGraph graph, PlanSweep plan, Sinks sinks, int blocked, @Nullable Fates before) {
    this.plan = plan;
    this.graph = graph;
    this.sinks = sinks;
    this.layers = plan.layers();
    this.columns = plan.columns();
    this.blocked = blocked;
    this.before = before;
    this.fates = new Fate[layers.size()];
    this.holders = new int[layers.size()];
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
          fates[visit.layer.number()] = fate;
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
    Fate own = fates[layer];
    if (own != null || before == null) {
      return own;
    }
    Fate open = before.fates[layer];
    return open == null || open.leadsTo(blocked, sinks) ? null : open;
  }

  private void open(Layer layer) {
    fates[layer.number()] = open;
    stack.add(new Visit(layer, graph.ways(layer, blocked)));
  }

  /** The fate when all ways on are known; else null, with the next way opened. */
  private @Nullable Fate flow(Visit visit) {
    while (visit.next < visit.ways.size()) {
      Way way = visit.ways.get(visit.next++);
      if (!way.isEnd() && fate(way.layer()) == null) {
        open(layers.get(way.layer()));
        return null;
      }
    }
    Fate fate = combined(visit.ways);
    if (fate == null) {
      visit.pool = new Pool(graph, visit.layer, columns, holders, ++filled);
    }
    return fate;
  }

  /** Ways that come back to a layer that is still open do not count; null when none is left. */
  private @Nullable Fate combined(List<Way> ways) {
    if (ways.size() == 1) {
      return endOf(ways.get(0));
    }
    List<Fate> ends = new ArrayList<>(ways.size());
    List<Double> weights = new ArrayList<>(ways.size());
    for (Way way : ways) {
      Fate end = endOf(way);
      if (end != null) {
        ends.add(end);
        weights.add(way.weight());
      }
    }
    if (ends.isEmpty()) {
      return null;
    }
    return ends.size() == 1 ? ends.get(0) : Fate.mixed(ends, weights);
  }

  private @Nullable Fate endOf(Way way) {
    if (way.isEnd()) {
      sinks.reached(way.sink(), way.at());
      return Fate.of(way.sink());
    }
    Fate end = fate(way.layer());
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
      Layer beyond = layers.get(way.layer());
      if (fates[beyond.number()] == open || fallsBack(beyond, pool)) {
        pool.take(beyond);
      } else {
        open(beyond);
        return null;
      }
    }
  }

  /** Whether water on a layer stands, or runs into the pool or what is still open. */
  private boolean fallsBack(Layer layer, Pool pool) {
    List<Way> ways = graph.ways(layer, blocked);
    for (Way way : ways) {
      if (!way.isEnd() && (pool.holds(way.layer()) || fates[way.layer()] == open)) {
        return true;
      }
    }
    return ways.isEmpty();
  }

  private void finish(Pool pool, Fate end) {
    pool.spillTo(end);
    pools.add(pool);
    for (Layer member : pool.layers()) {
      if (fate(member.number()) == null) {
        fates[member.number()] = end;
      }
    }
  }
}
