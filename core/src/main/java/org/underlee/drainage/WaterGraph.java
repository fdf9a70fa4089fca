package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;
import org.underlee.drainage.Piece.Kind;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.finding.StopSign;
import org.underlee.geom.Vec3;

/**
 * Where water goes next from each layer: down the steepest way of its face, over an edge onto what
 * lies below, or through.
 */
final class WaterGraph {
  /** A side that takes less than this share of a face's fall takes none. */
  private static final double ALONG = 1e-3;

  /**
   * One way on.
   *
   * @param layer that it leads to; null for an end
   * @param sink the end; null for a layer
   * @param at where an end is reached
   */
  record Way(@Nullable Layer layer, @Nullable Sink sink, double weight, Vec3 at) {
    static Way to(Layer layer, double weight) {
      return new Way(layer, null, weight, Vec3.ZERO);
    }

    static Way end(Sink sink, double weight, Vec3 at) {
      return new Way(null, sink, weight, at);
    }
  }

  /**
   * A way on for water that stands, once it is as high as the level.
   *
   * @param layer that it leads to; null for an end
   */
  record Sill(double level, double u, double v, @Nullable Layer layer, Layer from, Side side) {
    Vec3 at() {
      return new Vec3(u, v, level);
    }
  }

  private final Neighbours neighbours;
  private final Places places;
  private final Joints joints;

  /**
   * Ways that were asked for so far, by layer: all cases of blocked outlets share them. Whoever
   * asks at the same time finds the same.
   */
  private final AtomicReferenceArray<@Nullable List<Way>> known;

  WaterGraph(List<Piece> pieces, PlanSweep plan, Neighbours neighbours, Places places) {
    this.neighbours = neighbours;
    this.places = places;
    this.joints = new Joints(pieces, neighbours, places);
    this.known = new AtomicReferenceArray<>(plan.layers());
  }

  /** Finds the ways of what rain falls on, on all processors: a proof asks for each of them. */
  void prepare(List<Column> columns) {
    StopSign stop = StopSign.here();
    columns.parallelStream()
        .filter(c -> c.catchment() >= 0 && c.layers().length > 0)
        .forEach(
            c -> {
              stop.obey();
              ways(c.layers()[0], -1);
            });
  }

  /**
   * Empty where the water stands.
   *
   * @param blocked number of the outlet that lets nothing through, or −1
   */
  List<Way> ways(Layer layer, int blocked) {
    if (blocked >= 0 && layer.column().outlet() == blocked && isOutlet(layer)) {
      return overSheet(layer);
    }
    int number = layer.number();
    List<Way> ways = known.get(number);
    if (ways == null) {
      ways = open(layer);
      known.set(number, ways);
    }
    return ways;
  }

  private List<Way> open(Layer layer) {
    Column column = layer.column();
    if (isOutlet(layer)) {
      Vec3 at = new Vec3(column.middleU(), column.middleV(), layer.topAt());
      return List.of(Way.end(Sink.outlet(column.outlet(), layer.piece()), 1, at));
    }
    return joints.kind(layer) == Kind.JOIST ? offJoist(layer, column) : overSheet(layer);
  }

  /** Whether an outlet's opening is in the layer. */
  private boolean isOutlet(Layer layer) {
    int outlet = layer.column().outlet();
    return outlet >= 0 && joints.kind(layer) == Kind.GUTTER && places.takes(outlet, layer);
  }

  private List<Way> overSheet(Layer layer) {
    Facet face = layer.top();
    if (face.thin()) {
      return offNarrow(layer);
    }
    return face.slope() < WaterRules.LEVEL ? offEdges(layer) : downhill(layer);
  }

  /** Off a face narrower than a drop: across it where it can, else as off any other. */
  private List<Way> offNarrow(Layer layer) {
    Facet face = layer.top();
    List<Side> across =
        face.acrossU() ? neighbours.across(layer.column()) : neighbours.along(layer.column());
    List<Way> ways = new ArrayList<>(2);
    across.forEach(s -> offEdge(layer, s, ways));
    if (ways.isEmpty()) {
      for (Side side : across) {
        for (Layer l : side.beyond().layers()) {
          if (l.top() == face) {
            ways.add(Way.to(l, side.length()));
          }
        }
      }
    }
    if (ways.isEmpty()) {
      ways.addAll(offEdges(layer));
    }
    return ways.isEmpty() && face.slope() > WaterRules.LEVEL ? downhill(layer) : ways;
  }

  private List<Way> downhill(Layer layer) {
    Facet face = layer.top();
    List<Way> ways = new ArrayList<>(2);
    along(layer, -1, ways);
    along(layer, 1, ways);
    if (Math.abs(face.b()) > ALONG * face.slope()) {
      for (Side side : neighbours.across(layer.column(), face.b() > 0 ? -1 : 1)) {
        downhill(layer, side, ways);
      }
    }
    return ways;
  }

  /** At one of the two sides along the fall, of which water goes out at one at most. */
  private void along(Layer layer, int dv, List<Way> ways) {
    Facet face = layer.top();
    Column column = layer.column();
    if (column.flux(dv, -face.b(), -face.c()) > 0) {
      downhill(layer, neighbours.along(column, dv), ways);
    }
  }

  private void downhill(Layer layer, Side side, List<Way> ways) {
    Facet face = layer.top();
    double flux = side.flux(-face.b(), -face.c());
    if (flux > ALONG * face.slope() * side.length()) {
      Joints.Meeting met = joints.meeting(side, face.at(side.u(), side.v()), false);
      if (!met.wall() && !Joints.isValley(met, side, face)) {
        ways.add(joints.way(layer, side, met, flux));
      }
    }
  }

  /** Off a narrow or level face, to every side that is lower. */
  private List<Way> offEdges(Layer layer) {
    List<Way> ways = new ArrayList<>(4);
    neighbours.along(layer.column()).forEach(s -> offEdge(layer, s, ways));
    neighbours.across(layer.column()).forEach(s -> offEdge(layer, s, ways));
    return ways;
  }

  private void offEdge(Layer layer, Side side, List<Way> ways) {
    double z = layer.top().at(side.u(), side.v());
    Joints.Meeting met = joints.meeting(side, z, false);
    Layer onto = met.layer();
    boolean lower =
        onto == null
            || (z - onto.top().at(side.u(), side.v()) > WaterRules.CLIMB
                && onto.top() != layer.top());
    if (!met.wall() && lower) {
      ways.add(joints.loose(layer, side, met, side.length()));
    }
  }

  /** A joist sheds to its two long sides, half to each. */
  private List<Way> offJoist(Layer layer, Column column) {
    Places.Centre centre = places.centre(layer.piece());
    double u = column.middleU();
    double v = column.middleV();
    List<Side> sides = new ArrayList<>(2);
    if (places.extent(layer.piece()).isAlongV()) {
      sides.addAll(neighbours.across(layer.column(), u < centre.at(v) ? -1 : 1));
    } else {
      sides.add(neighbours.along(layer.column(), v < centre.at(u) ? -1 : 1));
    }
    List<Way> ways = new ArrayList<>(1);
    for (Side side : sides) {
      ways.add(offJoist(layer, side));
    }
    return ways;
  }

  private Way offJoist(Layer layer, Side side) {
    double z = layer.top().at(side.u(), side.v());
    boolean seam = false;
    for (Layer l : side.beyond().layers()) {
      double top = l.top().at(side.u(), side.v());
      if (l.piece() == layer.piece() && Math.abs(top - z) < WaterRules.SEAM_STEP) {
        return Way.to(l, side.length());
      }
      if (joints.kind(l) == Kind.JOIST) {
        seam |= top > z - WaterRules.SEAM_STEP;
      } else if (top < z) {
        return Way.to(l, side.length());
      }
    }
    return joints.leak(
        seam ? LeakCause.PLY_SEAM : LeakCause.JOIST_FACE, layer, side, side.length());
  }

  /** The ways on for water that stands on a layer, and the level at which each opens. */
  void sills(Layer layer, Pool pool) {
    sill(layer, neighbours.along(layer.column(), -1), pool);
    sill(layer, neighbours.along(layer.column(), 1), pool);
    neighbours.across(layer.column(), -1).forEach(s -> sill(layer, s, pool));
    neighbours.across(layer.column(), 1).forEach(s -> sill(layer, s, pool));
  }

  private void sill(Layer layer, Side side, Pool pool) {
    Joints.Meeting met = joints.meeting(side, layer.top().at(side.u(), side.v()), true);
    Layer onto = met.layer();
    if (!pool.isInside(onto)) {
      double atFirst = level(layer, met, side.u0(), side.v0());
      double atSecond = level(layer, met, side.u1(), side.v1());
      boolean first = atFirst < atSecond;
      pool.add(
          first
              ? new Sill(atFirst, side.u0(), side.v0(), onto, layer, side)
              : new Sill(atSecond, side.u1(), side.v1(), onto, layer, side));
    }
  }

  /** The way over a sill. */
  Way over(Sill sill) {
    return sill.layer == null
        ? joints.leak(LeakCause.SPILL, sill.from, sill.side, 1)
        : Way.to(sill.layer, 1);
  }

  private static double level(Layer layer, Joints.Meeting met, double u, double v) {
    double own = layer.top().at(u, v);
    return met.layer() == null ? own : Math.max(own, met.layer().top().at(u, v));
  }

  /** The end of water in a hollow that nothing leads out of. */
  Way closed(Layer layer) {
    Column c = layer.column();
    Vec3 at = new Vec3(c.middleU(), c.middleV(), layer.topAt());
    return Way.end(Sink.leak(LeakCause.SPILL, layer.piece(), places.bay(at)), 1, at);
  }
}
