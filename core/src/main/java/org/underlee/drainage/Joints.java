package org.underlee.drainage;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.underlee.drainage.Piece.Kind;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.drainage.WaterGraph.Way;
import org.underlee.geom.Vec3;

/**
 * What water meets at the edge of a layer, and whether the joint there holds: it does when the
 * water drops onto a part that reaches far enough back under the one it comes from.
 */
record Joints(List<Piece> pieces, Neighbours neighbours, Places places) {
  /** What water that reaches a side meets: a layer, or a wall of it, or neither. */
  record Meeting(@Nullable Layer layer, boolean wall) {
    private static final Meeting NOTHING = new Meeting(null, false);
  }

  /** The way over a side by its flow: it goes on only where the joint holds. */
  Way way(Layer layer, Side side, Meeting met, double weight) {
    Layer onto = met.layer;
    if (onto == null) {
      return loose(layer, side, met, weight);
    }
    if (onto.piece() == layer.piece() || onto.top().thin()) {
      return Way.to(onto, weight);
    }
    double drop = layer.top().at(side.u(), side.v()) - onto.top().at(side.u(), side.v());
    double needed = drop < WaterRules.FREE_DROP ? WaterRules.LEAST_LAP : WaterRules.DRIP_MARGIN;
    return reachesBack(layer, side, onto.piece(), needed)
        ? Way.to(onto, weight)
        : leak(LeakCause.SHORT_LAP, layer, side, weight);
  }

  /** The way of water that drips off a side, whatever the lap. */
  Way loose(Layer layer, Side side, Meeting met, double weight) {
    return met.layer == null
        ? leak(throughCause(layer, side), layer, side, weight)
        : Way.to(met.layer, weight);
  }

  /** Whether a piece lies under the layer for a distance back from the side. */
  private boolean reachesBack(Layer layer, Side side, int piece, double distance) {
    for (int step = 1; step <= 2; step++) {
      double back = distance * step / 2;
      Column at = neighbours.at(side.u() - side.du() * back, side.v() - side.dv() * back);
      if (!isUnder(at, layer, piece)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isUnder(Column column, Layer layer, int piece) {
    double top = layer.top().at(column.middleU(), column.middleV());
    for (Layer l : column.layers()) {
      if (l.piece() == piece && l.topAt() < top) {
        return true;
      }
    }
    return false;
  }

  private LeakCause throughCause(Layer layer, Side side) {
    if (isCovered(layer)) {
      return LeakCause.REVERSED_LAP;
    }
    if (places.isWithin(layer.piece(), side.u(), side.v())) {
      return LeakCause.OPEN_HOLE;
    }
    boolean back = side.du() < 0 && kind(layer) == Kind.SHEET && !layer.top().thin();
    return back ? LeakCause.BACK_FALL : LeakCause.EDGE;
  }

  private boolean isCovered(Layer layer) {
    for (Layer l : layer.column().layers()) {
      if (l.piece() != layer.piece()
          && kind(l) == Kind.SHEET
          && l.topAt() > layer.topAt()
          && l.bottomAt() - layer.topAt() < WaterRules.LIES_ON) {
        return true;
      }
    }
    return false;
  }

  /**
   * Water that runs along a joint of two sheets in contact passes it by, and water that runs
   * against it runs under the upper sheet; standing water is kept out.
   */
  Meeting meeting(Side side, double z, boolean standing) {
    double under = z + (standing ? 2 : -2) * WaterRules.TOUCH;
    for (Layer l : side.beyond().layers()) {
      double top = l.top().at(side.u(), side.v());
      double bottom = top - (l.topAt() - l.bottomAt());
      if (top <= z + WaterRules.CLIMB) {
        return new Meeting(l, false);
      }
      if (bottom < under) {
        return new Meeting(l, true);
      }
    }
    return Meeting.NOTHING;
  }

  /** Two faces that fall toward each other meet in a valley: neither runs on into the other. */
  static boolean isValley(Meeting met, Side side, Facet face) {
    if (met.layer == null) {
      return false;
    }
    Facet other = met.layer.top();
    double back = side.flux(other.b(), other.c()) / side.length();
    double drop = face.at(side.u(), side.v()) - other.at(side.u(), side.v());
    return back > WaterRules.LEVEL && !other.thin() && drop < WaterRules.CLIMB;
  }

  /** The way out at a side. */
  Way leak(LeakCause cause, Layer from, Side side, double weight) {
    Vec3 at = new Vec3(side.u(), side.v(), from.top().at(side.u(), side.v()));
    boolean joist = kind(from) == Kind.JOIST;
    LeakCause open = joist ? places.open(at, cause) : cause;
    return Way.end(Sink.leak(open, joist ? -1 : from.piece(), places.bay(at)), weight, at);
  }

  Kind kind(Layer layer) {
    return pieces.get(layer.piece()).kind();
  }
}
