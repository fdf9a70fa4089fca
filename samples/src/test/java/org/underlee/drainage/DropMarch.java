package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.drainage.DropGround.Hit;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Vec3;

/**
 * A slow and obvious witness for the proof: one drop at a time is let fall on the triangles of all
 * pieces and walks downhill in small steps. It shares no code with the partition: its own rays, its
 * own grid, its own walk; the rules for joists, narrow edges and laps are those of the page "where
 * every drop goes".
 */
final class DropMarch {
  private static final double STEP = 0.001;
  private static final int MOST_STEPS = 60_000;

  /** What became of a drop: the id of its outlet, or empty when it leaked. */
  record End(Optional<String> outlet, Vec3 at, String last) {}

  private final DropGround ground;

  DropMarch(DrainCase given) {
    ground = new DropGround(given);
  }

  /** Lets a drop fall on a place of the plan. */
  End drop(double x, double y, java.util.Random random) {
    Optional<Hit> start = ground.below(x, y, 1e6, true);
    if (start.isPresent() && ground.kind(start.get().triangle().piece()) == Kind.JOIST) {
      return offJoist(x, y, start.get(), random);
    }
    return start.isEmpty() ? lost(x, y, 0, "") : walk(x, y, start.get(), random);
  }

  private End lost(double x, double y, double z, String last) {
    return new End(Optional.empty(), new Vec3(x, y, z), last);
  }

  /** To the nearer long side, and down beside the joist onto whatever is there. */
  private End offJoist(double x, double y, Hit on, java.util.Random random) {
    double[] span = ground.span(on.triangle().piece());
    boolean alongX = span[1] - span[0] > span[3] - span[2];
    double dx = 0;
    double dy = 0;
    double centre = ground.centre(on.triangle().piece(), alongX, alongX ? x : y);
    if (alongX) {
      dy = y < centre ? -1 : 1;
    } else {
      dx = x < centre ? -1 : 1;
    }
    double px = x;
    double py = y;
    for (int i = 0; i < 400; i++) {
      px += dx * 0.0005;
      py += dy * 0.0005;
      Optional<Hit> hit = ground.below(px, py, on.z() + 0.001, true);
      if (hit.isEmpty() || hit.get().triangle().piece() != on.triangle().piece()) {
        Optional<Hit> landing = ground.below(px, py, on.z(), false);
        return landing.isEmpty()
            ? lost(px, py, on.z(), "joist")
            : walk(px, py, landing.get(), random);
      }
    }
    return lost(px, py, on.z(), "joist");
  }

  private End walk(double startX, double startY, Hit startHit, java.util.Random random) {
    double x = startX;
    double y = startY;
    Hit on = startHit;
    for (int i = 0; i < MOST_STEPS; i++) {
      int outlet = outletAt(x, y, on);
      if (outlet >= 0) {
        return new End(Optional.of(ground.id(outlet)), new Vec3(x, y, on.z()), "");
      }
      double[] way = way(x, y, on, random);
      if (turnsBack(x, y, on, way)) {
        way = towardOutlet(x, y, on);
      }
      if (way.length == 0) {
        return lost(x, y, on.z(), "stands on " + ground.id(on.triangle().piece()));
      }
      x += way[0];
      y += way[1];
      Optional<Hit> next = ground.below(x, y, on.z() + 0.0003, true);
      if (next.isPresent() && ground.kind(next.get().triangle().piece()) == Kind.JOIST) {
        next = ground.below(x, y, on.z() + 0.0003, false);
      }
      if (next.isEmpty()) {
        return lost(x, y, on.z(), ground.id(on.triangle().piece()));
      }
      on = next.get();
    }
    return lost(x, y, on.z(), "walked on and on");
  }

  /** One step downhill, or along what is in the way; nothing when the drop stands. */
  private double[] way(double x, double y, Hit on, java.util.Random random) {
    double gx = on.triangle().normal().x() / on.triangle().normal().z();
    double gy = on.triangle().normal().y() / on.triangle().normal().z();
    double slope = Math.hypot(gx, gy);
    if (isNarrow(x, y, on)) {
      return offNarrow(x, y, on, random);
    }
    if (slope < 0.001) {
      return offLevel(x, y, on);
    }
    double dx = gx / slope * STEP;
    double dy = gy / slope * STEP;
    if (ground.isFree(x + dx, y + dy, on)) {
      return new double[] {dx, dy};
    }
    // Along the wall, whichever way goes down.
    for (int degrees = 5; degrees < 90; degrees += 4) {
      for (int turn = -1; turn <= 1; turn += 2) {
        double c = Math.cos(Math.toRadians(degrees));
        double n = turn * Math.sin(Math.toRadians(degrees));
        double[] s = {c * dx - n * dy, n * dx + c * dy};
        if (ground.isFree(x + s[0], y + s[1], on)) {
          return s;
        }
      }
    }
    return towardOutlet(x, y, on);
  }

  /** Over a valley line, where the next face falls back toward the drop. */
  private boolean turnsBack(double x, double y, Hit on, double[] way) {
    if (way.length == 0 || ground.kind(on.triangle().piece()) != Kind.GUTTER) {
      return false;
    }
    Optional<Hit> next = ground.below(x + way[0], y + way[1], on.z() + 0.0003, false);
    return next.isPresent()
        && next.get().triangle().piece() != on.triangle().piece()
        && next.get().triangle().normal().x() * way[0] + next.get().triangle().normal().y() * way[1]
            < 0
        && on.z() - next.get().z() < 0.0003;
  }

  private double[] towardOutlet(double x, double y, Hit on) {
    for (int i = 0; i < ground.pieces(); i++) {
      double[] s = ground.span(i);
      double dx = (s[0] + s[1]) / 2 - x;
      double dy = (s[2] + s[3]) / 2 - y;
      double away = Math.hypot(dx, dy);
      if (ground.kind(i) == Kind.OUTLET && away < 0.12 && Math.abs(on.z() - s[5]) < 0.04) {
        return new double[] {dx / away * STEP, dy / away * STEP};
      }
    }
    return new double[0];
  }

  private boolean isNarrow(double x, double y, Hit on) {
    return narrowWay(x, y, on) != 0;
  }

  /** 1 when the face is narrower than a drop along x, 2 along y, else 0. */
  private int narrowWay(double x, double y, Hit on) {
    if (!ground.same(x - 0.0031, y, on)
        && !ground.same(x + 0.0031, y, on)
        && width(x, y, on, 1, 0) < 0.003) {
      return 1;
    }
    return !ground.same(x, y - 0.0031, on)
            && !ground.same(x, y + 0.0031, on)
            && width(x, y, on, 0, 1) < 0.003
        ? 2
        : 0;
  }

  private double width(double x, double y, Hit on, int ux, int uy) {
    int n = 0;
    for (int i = -31; i <= 31; i++) {
      n += ground.same(x + ux * i * 0.0001, y + uy * i * 0.0001, on) ? 1 : 0;
    }
    return n * 0.0001;
  }

  /** To a lower side of a narrow edge; to either by chance where both are lower. */
  private double[] offNarrow(double x, double y, Hit on, java.util.Random random) {
    boolean alongX = narrowWay(x, y, on) == 1;
    List<double[]> ways = new ArrayList<>();
    for (int s = -1; s <= 1; s += 2) {
      for (double d = 0.0001; d < 0.0032; d += 0.0001) {
        double dx = alongX ? s * d : 0;
        double dy = alongX ? 0 : s * d;
        if (!ground.same(x + dx, y + dy, on)) {
          double[] beyond = {dx * 1.05, dy * 1.05};
          if (ground.isFree(x + beyond[0], y + beyond[1], on)) {
            ways.add(beyond);
          }
          break;
        }
      }
    }
    return ways.isEmpty() ? new double[0] : ways.get(random.nextInt(ways.size()));
  }

  private double[] offLevel(double x, double y, Hit on) {
    for (int r = 1; r < 200; r++) {
      double d = r * 0.0005;
      for (double[] way : new double[][] {{d, 0}, {-d, 0}, {0, d}, {0, -d}}) {
        if (!ground.same(x + way[0], y + way[1], on) && ground.isFree(x + way[0], y + way[1], on)) {
          return way;
        }
      }
    }
    return new double[0];
  }

  private int outletAt(double x, double y, Hit on) {
    if (ground.kind(on.triangle().piece()) != Kind.GUTTER) {
      return -1;
    }
    for (int i = 0; i < ground.pieces(); i++) {
      double[] s = ground.span(i);
      double radius = (s[1] - s[0]) / 2;
      if (ground.kind(i) == Kind.OUTLET
          && Math.hypot(x - (s[0] + s[1]) / 2, y - (s[2] + s[3]) / 2) < radius
          && Math.abs(on.z() - s[5]) < 0.04) {
        return i;
      }
    }
    return -1;
  }
}
