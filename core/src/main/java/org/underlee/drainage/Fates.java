package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.underlee.drainage.WaterGraph.Way;

/**
 * Where the water on each layer ends, as shares of the ends. A layer's fate is that of the ways on
 * from it, weighted; water that has no way on fills a {@link Pool} until it spills. Depth first,
 * each layer once, without recursion.
 */
final class Fates {
  private enum State {
    NEW,
    OPEN,
    DONE
  }

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
  private final List<Layer> layers;
  private final List<Column> columns;
  private final State[] states;
  private final @Nullable Fate[] fates;
  private final List<Pool> pools = new ArrayList<>();
  private final List<Visit> stack = new ArrayList<>();

  Fates(WaterGraph graph, PlanSweep plan) {
    this.graph = graph;
    this.layers = plan.layers();
    this.columns = plan.columns();
    this.states = new State[layers.size()];
    this.fates = new Fate[layers.size()];
    Arrays.fill(states, State.NEW);
  }

  /** Pools that were filled so far. */
  List<Pool> pools() {
    return pools;
  }

  Fate of(Layer start) {
    if (states[start.number()] == State.NEW) {
      open(start);
      while (!stack.isEmpty()) {
        Visit visit = stack.get(stack.size() - 1);
        Fate fate = visit.pool == null ? flow(visit) : spill(visit, visit.pool);
        if (fate != null) {
          close(visit.layer.number(), fate);
          stack.remove(stack.size() - 1);
        }
      }
    }
    Fate fate = fates[start.number()];
    if (fate == null) {
      throw new IllegalStateException("layer " + start.number() + " has no fate");
    }
    return fate;
  }

  private void open(Layer layer) {
    states[layer.number()] = State.OPEN;
    stack.add(new Visit(layer, graph.ways(layer)));
  }

  private void close(int number, Fate fate) {
    states[number] = State.DONE;
    fates[number] = fate;
  }

  /** The fate when all ways on are known; else null, with the next way opened. */
  private @Nullable Fate flow(Visit visit) {
    while (visit.next < visit.ways.size()) {
      Way way = visit.ways.get(visit.next++);
      if (way.layer().isPresent() && states[way.layer().getAsInt()] == State.NEW) {
        open(layers.get(way.layer().getAsInt()));
        return null;
      }
    }
    Fate fate = combined(visit.ways);
    if (fate == null) {
      visit.pool = new Pool(graph, visit.layer, columns);
    }
    return fate;
  }

  /** Ways that come back to a layer that is still open do not count; null when none is left. */
  private @Nullable Fate combined(List<Way> ways) {
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
    return way.layer().isPresent() ? fates[way.layer().getAsInt()] : Fate.of(way.sink());
  }

  /**
   * Fills the pool further; the fate of what it spills to, or null when that is yet to be known.
   */
  private @Nullable Fate spill(Visit visit, Pool pool) {
    while (true) {
      Way way = pool.lowest();
      if (way == null) {
        Fate nowhere = Fate.of(graph.closed(visit.layer));
        finish(pool, nowhere);
        return nowhere;
      }
      Fate end = endOf(way);
      if (end != null) {
        finish(pool, end);
        return end;
      }
      Layer beyond = layers.get(way.layer().orElseThrow());
      if (states[beyond.number()] == State.OPEN || fallsBack(beyond, pool)) {
        pool.take(beyond);
      } else {
        open(beyond);
        return null;
      }
    }
  }

  /** Whether water on a layer stands, or runs into the pool or what is still open. */
  private boolean fallsBack(Layer layer, Pool pool) {
    List<Way> ways = graph.ways(layer);
    return ways.isEmpty()
        || ways.stream()
            .anyMatch(
                w ->
                    w.layer().isPresent()
                        && (pool.holds(w.layer().getAsInt())
                            || states[w.layer().getAsInt()] == State.OPEN));
  }

  private void finish(Pool pool, Fate end) {
    pool.spillTo(end);
    pools.add(pool);
    for (int member : pool.members()) {
      if (states[member] == State.NEW) {
        close(member, end);
      }
    }
  }
}
