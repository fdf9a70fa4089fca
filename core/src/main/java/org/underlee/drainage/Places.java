package org.underlee.drainage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Where pieces, bays and outlets are in the frame of the field, and how far bays are covered. */
final class Places {
  /** What a piece spans. */
  record Extent(Vec3 min, Vec3 max) {
    static Extent of(Mesh mesh, Transform frame) {
      double[] least = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
      double[] most = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
      for (int i = 0; i < mesh.vertexCount(); i++) {
        Vec3 p = frame.toLocal(mesh.vertex(i));
        widen(least, most, 0, p.x());
        widen(least, most, 1, p.y());
        widen(least, most, 2, p.z());
      }
      return new Extent(
          new Vec3(least[0], least[1], least[2]), new Vec3(most[0], most[1], most[2]));
    }

    private static void widen(double[] least, double[] most, int axis, double to) {
      least[axis] = Math.min(least[axis], to);
      most[axis] = Math.max(most[axis], to);
    }

    /** Whether it is longer along v than along u. */
    boolean isAlongV() {
      return max.y() - min.y() > max.x() - min.x();
    }

    double middleU() {
      return (min.x() + max.x()) / 2;
    }

    double middleV() {
      return (min.y() + max.y()) / 2;
    }

    boolean holds(double u, double v) {
      return u >= min.x() && u <= max.x() && v >= min.y() && v <= max.y();
    }
  }

  /** The middle line of a bar: {@code across = at0 + slope · along}. */
  record Centre(double at0, double slope) {
    double at(double along) {
      return at0 + slope * along;
    }

    static Centre of(Mesh mesh, Transform frame, Extent extent) {
      boolean alongV = extent.isAlongV();
      double[] along = new double[2];
      double[] across = new double[2];
      int[] count = new int[2];
      double middle = alongV ? extent.middleV() : extent.middleU();
      for (int i = 0; i < mesh.vertexCount(); i++) {
        Vec3 p = frame.toLocal(mesh.vertex(i));
        double a = alongV ? p.y() : p.x();
        int end = a < middle ? 0 : 1;
        along[end] += a;
        across[end] += alongV ? p.x() : p.y();
        count[end]++;
      }
      double a0 = along[0] / count[0];
      double c0 = across[0] / count[0];
      double slope = (across[1] / count[1] - c0) / (along[1] / count[1] - a0);
      return new Centre(c0 - slope * a0, slope);
    }
  }

  private final DrainCase given;
  private final Map<Integer, Centre> centres = new HashMap<>();
  private final List<Extent> extents = new ArrayList<>();
  private final List<Integer> outlets = new ArrayList<>();
  private final double[] covered;
  private final double[] area;
  private final double[] furthest;

  /** Across the fall, each catchment from here … */
  private final double[] from;

  /** … to here. */
  private final double[] to;

  Places(DrainCase given) {
    this.given = given;
    given.pieces().parallelStream()
        .map(p -> Extent.of(p.shape(), given.frame()))
        .forEachOrdered(extents::add);
    for (int i = 0; i < given.pieces().size(); i++) {
      if (given.pieces().get(i).kind() == Kind.JOIST) {
        centres.put(i, Centre.of(given.pieces().get(i).shape(), given.frame(), extents.get(i)));
      }
      if (given.pieces().get(i).kind() == Kind.OUTLET) {
        outlets.add(i);
      }
    }
    int bays = given.catchments().size();
    covered = new double[bays];
    area = new double[bays];
    furthest = new double[bays];
    from = new double[bays];
    to = new double[bays];
    for (int i = 0; i < bays; i++) {
      List<Vec2> outline = given.catchments().get(i).outline();
      from[i] = outline.stream().mapToDouble(Vec2::y).min().orElse(0);
      to[i] = outline.stream().mapToDouble(Vec2::y).max().orElse(0);
    }
    java.util.Arrays.fill(furthest, Double.NEGATIVE_INFINITY);
  }

  /** Takes the columns in, which tell how far bays are covered. */
  void learn(List<Column> columns) {
    for (Column c : columns) {
      if (c.catchment() >= 0) {
        learn(c, c.catchment());
      }
    }
  }

  private void learn(Column c, int bay) {
    boolean ours = false;
    boolean gutter = false;
    boolean joist = false;
    for (Layer l : c.layers()) {
      Kind kind = given.pieces().get(l.piece()).kind();
      gutter |= kind == Kind.GUTTER;
      ours |= kind == Kind.GUTTER || kind == Kind.SHEET;
      joist |= kind == Kind.JOIST;
    }
    // a strip below a joist line is of the bay at its other side, too, and covers neither
    area[bay] += joist ? 0 : c.area();
    covered[bay] += ours && !joist ? c.area() : 0;
    furthest[bay] = gutter ? Math.max(furthest[bay], c.right()) : furthest[bay];
  }

  Extent extent(int piece) {
    return extents.get(piece);
  }

  /** The middle line of a joist. */
  Centre centre(int joist) {
    return Objects.requireNonNull(centres.get(joist));
  }

  /** Numbers of the pieces that are outlets. */
  List<Integer> outlets() {
    return outlets;
  }

  /** Whether an outlet's top is at the floor of the gutter that a layer is of. */
  boolean takes(int outlet, Layer floor) {
    double below = floor.bottomAt() - extents.get(outlets.get(outlet)).max().z();
    return Math.abs(below) < WaterRules.OUTLET_REACH;
  }

  /** Whether a piece reaches beyond a place on all sides, so that what is open there is a hole. */
  boolean isWithin(int piece, double u, double v) {
    Extent e = extents.get(piece);
    double edge = WaterRules.DRIP_MARGIN;
    return u - e.min.x() > edge
        && e.max.x() - u > edge
        && v - e.min.y() > edge
        && e.max.y() - v > edge;
  }

  /** The catchment at a place, or else the nearest one. */
  int bay(Vec3 at) {
    int nearest = -1;
    double least = Double.MAX_VALUE;
    for (int i = 0; i < from.length && least > 0; i++) {
      double away = Math.max(0, Math.max(from[i] - at.y(), at.y() - to[i]));
      if (away < least) {
        least = away;
        nearest = i;
      }
    }
    return nearest;
  }

  /** Whether a place is open deck, where nothing is hung; else the given cause. */
  LeakCause open(Vec3 at, LeakCause otherwise) {
    int bay = bay(at);
    if (bay < 0) {
      return otherwise;
    }
    if (covered[bay] < WaterRules.COVERED * area[bay]) {
      return LeakCause.OPEN_BAY;
    }
    double beyond = at.x() - furthest[bay];
    if (beyond > WaterRules.BEHIND) {
      return LeakCause.BEYOND_GUTTER;
    }
    return beyond > -WaterRules.SAME_PLAN ? LeakCause.BEHIND_GUTTER : otherwise;
  }
}
