package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * B-spline surfaces, rational or not. The nearest point is looked for among points on a grid, then
 * by Gauss and Newton's steps on the squared distance.
 */
final class SplineSurface implements ParametricSurface {
  /** Columns and rows of the grid that a search starts from, for each span and degree. */
  private static final int STARTS = 2;

  /** Columns and rows of that grid at most. */
  private static final int MAX_STARTS = 64;

  /** Steps of a search: each squares a small error. */
  private static final int NEWTON_STEPS = 12;

  /** Sides that meet closer than this share of the surface's size close it. */
  private static final double CLOSED = 1e-7;

  /** Control points at most: a surface of this many takes a second to look at. */
  private static final int MAX_CONTROL = 100_000;

  private final BSpline u;
  private final BSpline v;

  /** A row for each control point in u. */
  private final List<List<BSpline.Weighted>> control;

  private final List<Vec2> starts = new ArrayList<>();
  private final List<Vec3> startPoints = new ArrayList<>();
  private final double uPeriod;
  private final double vPeriod;
  private final List<Double> poles = new ArrayList<>();

  private SplineSurface(BSpline u, BSpline v, List<List<BSpline.Weighted>> control) {
    this.u = u;
    this.v = v;
    this.control = control;
    fillStarts();
    double near = CLOSED * size();
    uPeriod = sidesMeet(true, near) ? u.to() - u.from() : 0;
    vPeriod = sidesMeet(false, near) ? v.to() - v.from() : 0;
    for (double end : new double[] {v.from(), v.to()}) {
      if (isPoint(end, near)) {
        poles.add(end);
      }
    }
  }

  static boolean reads(String keyword) {
    return keyword.equals("IFCBSPLINESURFACEWITHKNOTS")
        || keyword.equals("IFCRATIONALBSPLINESURFACEWITHKNOTS");
  }

  static SplineSurface of(StepInstance surface) {
    List<List<BSpline.Weighted>> rows = new ArrayList<>();
    double[][] weights =
        surface.keyword().startsWith("IFCRATIONAL") ? surface.numberRows(12) : new double[0][];
    int columns = -1;
    long count = 0;
    for (StepValue row : surface.list(2)) {
      if (!(row instanceof StepValue.ListOf list)) {
        throw surface.error("a row of control points should be a list but is " + row.words());
      }
      columns = columns < 0 ? list.values().size() : columns;
      count += list.values().size();
      if (list.values().size() != columns || count > MAX_CONTROL) {
        throw Unreadable.degenerate(surface, "its rows of control points do not fit each other");
      }
      double[] w = rows.size() < weights.length ? weights[rows.size()] : new double[0];
      rows.add(BSpline.weighted(surface, BSpline.points(surface, list.values()), w));
    }
    BSpline u = BSpline.of(surface, BSpline.whole(surface, 0), 7, 9, rows.size());
    BSpline v = BSpline.of(surface, BSpline.whole(surface, 1), 8, 10, Math.max(0, columns));
    return new SplineSurface(u, v, rows);
  }

  private void fillStarts() {
    double[] us = starts(u);
    double[] vs = starts(v);
    for (double a : us) {
      for (double b : vs) {
        starts.add(new Vec2(a, b));
        startPoints.add(at(new Vec2(a, b)));
      }
    }
  }

  private static double[] starts(BSpline spline) {
    int wanted = STARTS * spline.degree() * (spline.spans().length - 1) + 1;
    int n = Math.min(MAX_STARTS, Math.max(2, wanted));
    double[] starts = new double[n];
    for (int i = 0; i < n; i++) {
      starts[i] = spline.from() + (spline.to() - spline.from()) * i / (n - 1);
    }
    return starts;
  }

  private double size() {
    return startPoints.stream().mapToDouble(p -> p.distance(startPoints.get(0))).max().orElse(0);
  }

  /** Whether the surface at the lowest parameter is where it is at the highest. */
  private boolean sidesMeet(boolean inU, double near) {
    for (double t : starts(inU ? v : u)) {
      Vec2 low = inU ? new Vec2(u.from(), t) : new Vec2(t, v.from());
      Vec2 high = inU ? new Vec2(u.to(), t) : new Vec2(t, v.to());
      if (at(low).distance(at(high)) > near) {
        return false;
      }
    }
    return true;
  }

  private boolean isPoint(double end, double near) {
    Vec3 first = at(new Vec2(u.from(), end));
    for (double t : starts(u)) {
      if (at(new Vec2(t, end)).distance(first) > near) {
        return false;
      }
    }
    return true;
  }

  @Override
  public Vec3 at(Vec2 uv) {
    double b = wrapped(uv.y(), v, vPeriod);
    List<BSpline.Weighted> column = new ArrayList<>(control.size());
    for (List<BSpline.Weighted> row : control) {
      column.add(v.at(b, row));
    }
    return u.at(wrapped(uv.x(), u, uPeriod), column).project();
  }

  private static double wrapped(double t, BSpline spline, double period) {
    boolean inside = t >= spline.from() && t <= spline.to();
    return period > 0 && !inside ? t - period * Math.floor((t - spline.from()) / period) : t;
  }

  @Override
  public Vec2 parameters(Vec3 p, Vec2 near) {
    Vec2 best = near;
    double distance = Double.isNaN(near.x()) ? Double.POSITIVE_INFINITY : at(near).distance(p);
    for (int i = 0; i < starts.size(); i++) {
      double d = startPoints.get(i).distance(p);
      if (d < distance) {
        distance = d;
        best = starts.get(i);
      }
    }
    for (int i = 0; i < NEWTON_STEPS; i++) {
      Vec2 next = improved(best, p);
      double d = at(next).distance(p);
      if (!(d < distance)) {
        break;
      }
      best = next;
      distance = d;
    }
    return best;
  }

  /** One step of Gauss and Newton's towards the foot of {@code p}. */
  private Vec2 improved(Vec2 uv, Vec3 p) {
    Vec3 away = p.minus(at(uv));
    Vec3 du = along(uv, true);
    Vec3 dv = along(uv, false);
    double uu = du.dot(du);
    double u2 = du.dot(dv);
    double vv = dv.dot(dv);
    double det = uu * vv - u2 * u2;
    double x = away.dot(du);
    double y = away.dot(dv);
    Vec2 step =
        det > 1e-12 * uu * vv
            ? new Vec2((vv * x - u2 * y) / det, (uu * y - u2 * x) / det)
            : new Vec2(uu > 0 ? x / uu : 0, vv > 0 ? y / vv : 0);
    Vec2 next = uv.plus(step);
    return new Vec2(kept(next.x(), u, uPeriod), kept(next.y(), v, vPeriod));
  }

  private static double kept(double t, BSpline spline, double period) {
    return period > 0 ? t : Math.min(spline.to(), Math.max(spline.from(), t));
  }

  /** One-sided at the edges of a surface, beyond which there is nothing. */
  @Override
  public Vec3 along(Vec2 uv, boolean inU) {
    BSpline spline = inU ? u : v;
    double period = inU ? uPeriod : vPeriod;
    double h = DERIVATIVE_STEP * (spline.to() - spline.from());
    double t = inU ? uv.x() : uv.y();
    double low = kept(t - h, spline, period);
    double high = kept(t + h, spline, period);
    Vec2 a = inU ? new Vec2(low, uv.y()) : new Vec2(uv.x(), low);
    Vec2 b = inU ? new Vec2(high, uv.y()) : new Vec2(uv.x(), high);
    return at(b).minus(at(a)).times(1 / (high - low));
  }

  @Override
  public double uPeriod() {
    return uPeriod;
  }

  @Override
  public double vPeriod() {
    return vPeriod;
  }

  @Override
  public List<Double> poles() {
    return List.copyOf(poles);
  }

  @Override
  public Vec2 span() {
    return new Vec2(u.to() - u.from(), v.to() - v.from());
  }
}
