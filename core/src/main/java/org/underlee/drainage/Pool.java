package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import org.underlee.drainage.WaterGraph.Sill;
import org.underlee.drainage.WaterGraph.Way;
import org.underlee.geom.Vec3;

/**
 * Standing water: it fills from its deepest layer, over the lowest sill each time, until it finds a
 * way out. Sills of one level are taken from the nearest to the furthest.
 */
final class Pool {
  /**
   * @param square of its distance; the root is taken only to tell near ones apart
   */
  private record Rim(Sill sill, double du, double dv, double square, int order)
      implements Comparable<Rim> {
    /** Part of a square below which its digits are rounding. */
    private static final double ROUNDING = 1e-9;

    static Rim of(Sill sill, double du, double dv, int order) {
      return new Rim(sill, du, dv, du * du + dv * dv, order);
    }

    @Override
    public int compareTo(Rim o) {
      if (sill.level() != o.sill.level()) {
        return sill.level() < o.sill.level() ? -1 : 1;
      }
      if (Math.abs(square - o.square) > ROUNDING * square) {
        return square < o.square ? -1 : 1;
      }
      int nearer = Double.compare(Math.hypot(du, dv), Math.hypot(o.du, o.dv));
      return nearer == 0 ? Integer.compare(order, o.order) : nearer;
    }
  }

  private final WaterGraph graph;
  private final Layer start;
  private final double startU;
  private final double startV;
  private final List<Layer> layers = new ArrayList<>();

  private final FateBoard board;
  private final int number;
  private final PriorityQueue<Rim> rims = new PriorityQueue<>();
  private double level = Double.NEGATIVE_INFINITY;
  private int order;
  private @Nullable Way pending;
  private Vec3 spillsAt = Vec3.ZERO;
  private @Nullable Fate end;
  private @Nullable Vec3 deepest;
  private @Nullable WetColumn wet;

  Pool(WaterGraph graph, Layer start, FateBoard board) {
    this.graph = graph;
    this.start = start;
    this.startU = start.column().middleU();
    this.startV = start.column().middleV();
    this.board = board;
    this.number = board.nextPool();
    take(start);
  }

  final void take(Layer layer) {
    if (!isInside(layer)) {
      board.put(layer.number(), number);
      layers.add(layer);
      graph.sills(layer, this);
    }
  }

  void add(Sill sill) {
    double du = sill.u() - startU;
    double dv = sill.v() - startV;
    rims.add(Rim.of(sill, du, dv, order++));
  }

  List<Layer> layers() {
    return layers;
  }

  /** The lowest way over the rim; the pool is as high as that. Without any the water stays. */
  Way lowest() {
    if (pending != null && !isInside(pending.layer())) {
      return pending;
    }
    pending = null;
    while (!rims.isEmpty() && pending == null) {
      Sill sill = rims.remove().sill;
      if (!isInside(sill.layer())) {
        level = Math.max(level, sill.level());
        spillsAt = sill.at();
        pending = graph.over(sill);
      }
    }
    if (pending == null) {
      pending = graph.closed(start);
      spillsAt = pending.at();
    }
    return pending;
  }

  /** Whether it holds a layer; what leads nowhere leads out of it. */
  boolean isInside(@Nullable Layer layer) {
    return layer != null && board.isIn(layer.number(), number);
  }

  void spillTo(Fate fate) {
    this.end = fate;
  }

  @Nullable Fate end() {
    return end;
  }

  Vec3 spillsAt() {
    return spillsAt;
  }

  private double depth(Layer layer, double u, double v) {
    return level - layer.top().at(u, v);
  }

  /** All that stands in it. Asked when it is full. */
  WetColumn wet() {
    WetColumn known = wet;
    if (known == null) {
      known = WetColumn.of(layers, level);
      wet = known;
    }
    return known;
  }

  /** Whether a layer's top at the place where it spills is as high as it stands. */
  boolean isLevelWith(Layer layer) {
    return depth(layer, spillsAt.x(), spillsAt.y()) <= WaterRules.CLIMB;
  }

  /** Where it is deepest; its height is the floor's. Asked when it is full. */
  Vec3 deepest() {
    Vec3 known = deepest;
    if (known == null) {
      known = findDeepest();
      deepest = known;
    }
    return known;
  }

  private Vec3 findDeepest() {
    Vec3 found = Vec3.ZERO;
    double most = -1;
    for (Layer l : layers) {
      Column c = l.column();
      for (int corner = 0; corner < 4; corner++) {
        double u = corner < 2 ? c.left() : c.right();
        double v = v(c, corner);
        double d = depth(l, u, v);
        if (d > most) {
          most = d;
          found = new Vec3(u, v, l.top().at(u, v));
        }
      }
    }
    return found;
  }

  private static double v(Column c, int corner) {
    if (corner < 2) {
      return corner == 0 ? c.lowLeft() : c.highLeft();
    }
    return corner == 2 ? c.lowRight() : c.highRight();
  }

  double depth() {
    return Math.max(0, level - deepest().z());
  }

  int piece() {
    return start.piece();
  }
}
