package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Vec3;

/**
 * Where water goes next from each layer: down the steepest way of its face, over an edge onto what
 * lies below, or through. A joint holds when the water drops onto a part that reaches far enough
 * back under the one it comes from.
 */
final class WaterGraph {
  /** A side that takes less than this share of a face's fall takes none. */
  private static final double ALONG = 1e-3;

  /** One way on: a layer, or an end. */
  record Way(OptionalInt layer, int sink, double weight) {
    static Way to(Layer layer, double weight) {
      return new Way(OptionalInt.of(layer.number()), -1, weight);
    }

    static Way end(int sink, double weight) {
      return new Way(OptionalInt.empty(), sink, weight);
    }
  }

  /** A way on for water that stands, once it is as high as the level. */
  record Sill(double level, Way way, Vec3 at) {}

  /** What water that reaches a side meets. */
  private record Meeting(Optional<Layer> layer, boolean wall) {
    static final Meeting NOTHING = new Meeting(Optional.empty(), false);
  }

  private final List<Piece> pieces;
  private final List<Column> columns;
  private final Neighbours neighbours;
  private final Places places;
  private final Sinks sinks;
  private final int blocked;

  /**
   * @param blocked number of the outlet that lets nothing through, or −1
   */
  WaterGraph(
      List<Piece> pieces,
      PlanSweep plan,
      Neighbours neighbours,
      Places places,
      Sinks sinks,
      int blocked) {
    this.pieces = pieces;
    this.columns = plan.columns();
    this.neighbours = neighbours;
    this.places = places;
    this.sinks = sinks;
    this.blocked = blocked;
  }

  /** Empty where the water stands. */
  List<Way> ways(Layer layer) {
    Column column = columns.get(layer.column());
    Kind kind = kind(layer);
    if (kind == Kind.GUTTER
        && column.outlet() >= 0
        && column.outlet() != blocked
        && places.takes(column.outlet(), layer)) {
      Vec3 at = new Vec3(column.middleU(), column.middleV(), layer.topAt());
      return List.of(Way.end(sinks.outlet(column.outlet(), layer.piece(), at), 1));
    }
    if (kind == Kind.JOIST) {
      return offJoist(layer, column);
    }
    List<Side> sides = neighbours.sides(layer.column());
    Facet face = layer.top();
    if (face.thin()) {
      return offNarrow(layer, sides);
    }
    return face.slope() < WaterRules.LEVEL ? offEdges(layer, sides) : downhill(layer, sides);
  }

  /** Off a face narrower than a drop: across it where it can, else as off any other. */
  private List<Way> offNarrow(Layer layer, List<Side> sides) {
    Facet face = layer.top();
    List<Side> across = sides.stream().filter(s -> s.du() != 0 == face.acrossU()).toList();
    List<Way> ways = new ArrayList<>(offEdges(layer, across));
    if (ways.isEmpty()) {
      for (Side side : across) {
        side.beyond().stream()
            .flatMap(c -> c.layers().stream())
            .filter(l -> l.top() == face)
            .forEach(l -> ways.add(Way.to(l, side.length())));
      }
    }
    if (ways.isEmpty()) {
      ways.addAll(offEdges(layer, sides));
    }
    return ways.isEmpty() && face.slope() > WaterRules.LEVEL ? downhill(layer, sides) : ways;
  }

  private List<Way> downhill(Layer layer, List<Side> sides) {
    Facet face = layer.top();
    List<Way> ways = new ArrayList<>(2);
    for (Side side : sides) {
      double flux = side.flux(-face.b(), -face.c());
      if (flux > ALONG * face.slope() * side.length()) {
        Meeting met = meeting(side, face.at(side.u(), side.v()), false);
        if (!met.wall && !isValley(met, side, face)) {
          ways.add(way(layer, side, met, flux));
        }
      }
    }
    return ways;
  }

  /** Two faces that fall toward each other meet in a valley: neither runs on into the other. */
  private static boolean isValley(Meeting met, Side side, Facet face) {
    if (met.layer.isEmpty()) {
      return false;
    }
    Facet other = met.layer.get().top();
    double back = side.flux(other.b(), other.c()) / side.length();
    double drop = face.at(side.u(), side.v()) - other.at(side.u(), side.v());
    return back > WaterRules.LEVEL && !other.thin() && drop < WaterRules.CLIMB;
  }

  /** Off a narrow or level face, to every side that is lower. */
  private List<Way> offEdges(Layer layer, List<Side> sides) {
    Facet face = layer.top();
    List<Way> ways = new ArrayList<>(2);
    for (Side side : sides) {
      double z = face.at(side.u(), side.v());
      Meeting met = meeting(side, z, false);
      boolean lower =
          met.layer
              .map(l -> z - l.top().at(side.u(), side.v()) > WaterRules.CLIMB && l.top() != face)
              .orElse(true);
      if (!met.wall && lower) {
        ways.add(loose(layer, side, met, side.length()));
      }
    }
    return ways;
  }

  /** A joist sheds to its two long sides, half to each. */
  private List<Way> offJoist(Layer layer, Column column) {
    Places.Centre centre = places.centre(layer.piece());
    double u = column.middleU();
    double v = column.middleV();
    List<Side> sides = new ArrayList<>(2);
    if (places.extent(layer.piece()).isAlongV()) {
      neighbours.across(layer.column(), u < centre.at(v) ? -1 : 1, sides);
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
    for (Layer l : side.beyond().map(Column::layers).orElse(List.of())) {
      double top = l.top().at(side.u(), side.v());
      if (l.piece() == layer.piece() && Math.abs(top - z) < WaterRules.SEAM_STEP) {
        return Way.to(l, side.length());
      }
      if (kind(l) == Kind.JOIST) {
        seam |= top > z - WaterRules.SEAM_STEP;
      } else if (top < z) {
        return Way.to(l, side.length());
      }
    }
    return Way.end(
        leak(seam ? LeakCause.PLY_SEAM : LeakCause.JOIST_FACE, layer, side), side.length());
  }

  private Way way(Layer layer, Side side, Meeting met, double weight) {
    if (met.layer.isEmpty()) {
      return loose(layer, side, met, weight);
    }
    Layer onto = met.layer.get();
    if (onto.piece() == layer.piece() || onto.top().thin()) {
      return Way.to(onto, weight);
    }
    double drop = layer.top().at(side.u(), side.v()) - onto.top().at(side.u(), side.v());
    double needed = drop < WaterRules.FREE_DROP ? WaterRules.LEAST_LAP : WaterRules.DRIP_MARGIN;
    return reachesBack(layer, side, onto.piece(), needed)
        ? Way.to(onto, weight)
        : Way.end(leak(LeakCause.SHORT_LAP, layer, side), weight);
  }

  private Way loose(Layer layer, Side side, Meeting met, double weight) {
    return met.layer
        .map(l -> Way.to(l, weight))
        .orElseGet(() -> Way.end(leak(throughCause(layer, side), layer, side), weight));
  }

  /** Whether a piece lies under the layer for a distance back from the side. */
  private boolean reachesBack(Layer layer, Side side, int piece, double distance) {
    for (int step = 1; step <= 2; step++) {
      double back = distance * step / 2;
      int at = neighbours.at(side.u() - side.du() * back, side.v() - side.dv() * back);
      if (at < 0
          || columns.get(at).layers().stream()
              .noneMatch(l -> l.piece() == piece && l.topAt() < ownTop(layer, at))) {
        return false;
      }
    }
    return true;
  }

  private double ownTop(Layer layer, int column) {
    Column c = columns.get(column);
    return layer.top().at(c.middleU(), c.middleV());
  }

  private LeakCause throughCause(Layer layer, Side side) {
    Column column = columns.get(layer.column());
    if (isCovered(layer, column)) {
      return LeakCause.REVERSED_LAP;
    }
    if (places.isWithin(layer.piece(), side.u(), side.v())) {
      return LeakCause.OPEN_HOLE;
    }
    boolean back = side.du() < 0 && kind(layer) == Kind.SHEET && !layer.top().thin();
    return back ? LeakCause.BACK_FALL : LeakCause.EDGE;
  }

  private boolean isCovered(Layer layer, Column column) {
    return column.layers().stream()
        .anyMatch(
            l ->
                l.piece() != layer.piece()
                    && kind(l) == Kind.SHEET
                    && l.topAt() > layer.topAt()
                    && l.bottomAt() - layer.topAt() < WaterRules.LIES_ON);
  }

  /**
   * Water that runs along a joint of two sheets in contact passes it by, and water that runs
   * against it runs under the upper sheet; standing water is kept out.
   */
  private Meeting meeting(Side side, double z, boolean standing) {
    double under = z + (standing ? 2 : -2) * WaterRules.TOUCH;
    if (side.beyond().isEmpty()) {
      return Meeting.NOTHING;
    }
    for (Layer l : side.beyond().get().layers()) {
      double top = l.top().at(side.u(), side.v());
      double bottom = top - (l.topAt() - l.bottomAt());
      if (top <= z + WaterRules.CLIMB) {
        return new Meeting(Optional.of(l), false);
      }
      if (bottom < under) {
        return new Meeting(Optional.of(l), true);
      }
    }
    return Meeting.NOTHING;
  }

  /** The ways on for water that stands on a layer, and the level at which each opens. */
  List<Sill> sills(Layer layer) {
    List<Sill> sills = new ArrayList<>(6);
    for (Side side : neighbours.sides(layer.column())) {
      Meeting met = meeting(side, layer.top().at(side.u(), side.v()), true);
      boolean first =
          level(layer, met, side.u0(), side.v0()) < level(layer, met, side.u1(), side.v1());
      double u = first ? side.u0() : side.u1();
      double v = first ? side.v0() : side.v1();
      double level = level(layer, met, u, v);
      Way way =
          met.layer
              .map(l -> Way.to(l, 1))
              .orElseGet(() -> Way.end(leak(LeakCause.SPILL, layer, side), 1));
      sills.add(new Sill(level, way, new Vec3(u, v, level)));
    }
    return sills;
  }

  private static double level(Layer layer, Meeting met, double u, double v) {
    double own = layer.top().at(u, v);
    return met.layer.map(l -> Math.max(own, l.top().at(u, v))).orElse(own);
  }

  private int leak(LeakCause cause, Layer from, Side side) {
    Vec3 at = new Vec3(side.u(), side.v(), from.top().at(side.u(), side.v()));
    boolean joist = kind(from) == Kind.JOIST;
    LeakCause open = joist ? places.open(at, cause) : cause;
    return sinks.leak(open, joist ? -1 : from.piece(), places.bay(at), at);
  }

  /** The end of water in a hollow that nothing leads out of. */
  int closed(Layer layer) {
    Column c = columns.get(layer.column());
    Vec3 at = new Vec3(c.middleU(), c.middleV(), layer.topAt());
    return sinks.leak(LeakCause.SPILL, layer.piece(), places.bay(at), at);
  }

  private Kind kind(Layer layer) {
    return pieces.get(layer.piece()).kind();
  }
}
