package org.underlee.layout;

import static org.underlee.kit.DrapeValue.FLANGE;
import static org.underlee.kit.DrapeValue.TROUGH_SAG;
import static org.underlee.kit.DrapeValue.TROUGH_TAIL;

import java.util.Arrays;
import java.util.List;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Linear;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/**
 * The membrane of a bay in space: edges that lie on the joist tops, sides down the joists' faces
 * that get deeper toward the low end, and a floor that falls to its middle and down the bay. The
 * head is turned up to the joist tops; at the low end a tail hangs down over the gutter. It is
 * drawn with straight sides; in truth it hangs in a curve between them.
 *
 * @param seat of the field at its high end: there the floor meets the joists' faces
 */
record DrapeShape(BayRun run, double seat) {
  /** Kept between two edges on one joist. */
  private static final double BETWEEN_EDGES = 0.001;

  /** Kept between the tail and the joists' faces. */
  private static final double TAIL_SIDE = 0.005;

  /** From what bounds the high end to the trough's head the membrane drops by this. */
  private static final double HEAD_DROP = 0.0005;

  private static final double HALF = 0.5;

  private Kit kit() {
    return run.kit();
  }

  double start() {
    return run.start();
  }

  double end() {
    return run.panEnd();
  }

  private double thick() {
    return kit().item(Items.MEMBRANE).thickness();
  }

  /** Height of the floor's underside at the joists' faces. */
  double side(double v) {
    return seat - kit().fall() * v;
  }

  /** Height of the floor's underside in the middle. */
  double middle(double v) {
    return side(v) - cross() * width(v) * HALF;
  }

  double width(double v) {
    return run.bay().straightWidthAt(v);
  }

  /** The station of the two ends at which the bay is wider. */
  double widest() {
    return width(start()) >= width(end()) ? start() : end();
  }

  /** Fall of the floor from a side to the middle: the kit's sag where the bay is widest. */
  private double cross() {
    return kit().get(TROUGH_SAG) / (width(widest()) * HALF);
  }

  /** Width of the floor on the flat. */
  double floor(double v) {
    return width(v) * Math.hypot(1, cross());
  }

  /** Depth of the sides below the joist tops, the deeper of the two. */
  double depth(double v) {
    return Math.max(top(run.bay().left()).at(v), top(run.bay().right()).at(v)) - side(v);
  }

  /** How far the membrane lies over a joist line: at most half of it. */
  double edge(JoistLine line) {
    double half = (line.right().at(start()) - line.left().at(start()) - BETWEEN_EDGES) * HALF;
    return Math.min(kit().get(FLANGE), half);
  }

  /** Both edges together. */
  double edges() {
    return edge(run.bay().left()) + edge(run.bay().right());
  }

  /** The straight line that the joist's top nowhere rises above. */
  private Linear top(JoistLine line) {
    return straightTop(line, run.bay().turns(run.bay().stretch().from(), end()));
  }

  static Linear straightTop(JoistLine line, double[] stations) {
    double from = stations[0];
    double to = stations[stations.length - 1];
    double slope = (line.top(to) - line.top(from)) / (to - from);
    double above =
        Arrays.stream(stations)
            .map(v -> line.top(v) - line.top(from) - slope * (v - from))
            .max()
            .orElse(0);
    return Linear.through(from, line.top(from) + above, slope);
  }

  List<Extrusion> bodies(Transform frame) {
    Linear left = run.bay().leftFace();
    Linear right = run.bay().rightFace();
    Linear middle =
        new Linear((left.at0() + right.at0()) * HALF, (left.slope() + right.slope()) * HALF);
    Vec3 up = Vec3.Z.times(thick());
    return List.of(
        Sheet.prism(frame, floor(left, middle), up),
        Sheet.prism(frame, floor(right, middle), up),
        Sheet.prism(frame, wall(left, run.bay().left()), Vec3.X.times(thick())),
        Sheet.prism(frame, wall(right, run.bay().right()), Vec3.X.times(-thick())),
        Sheet.prism(frame, edge(left, run.bay().left(), -1), up),
        Sheet.prism(frame, edge(right, run.bay().right(), 1), up),
        Sheet.prism(frame, dam(left, right, middle), Vec3.Y.times(thick())),
        Sheet.prism(frame, head(left, right), up),
        Sheet.prism(frame, tail(left, right, middle), Vec3.Y.times(-thick())));
  }

  private List<Vec3> floor(Linear side, Linear middle) {
    return List.of(
        new Vec3(side.at(start()), start(), side(start())),
        new Vec3(middle.at(start()), start(), middle(start())),
        new Vec3(middle.at(end()), end(), middle(end())),
        new Vec3(side.at(end()), end(), side(end())));
  }

  private List<Vec3> wall(Linear face, JoistLine line) {
    Linear top = top(line);
    return List.of(
        new Vec3(face.at(start()), start(), side(start()) + thick()),
        new Vec3(face.at(end()), end(), side(end()) + thick()),
        new Vec3(face.at(end()), end(), top.at(end())),
        new Vec3(face.at(start()), start(), top.at(start())));
  }

  /** From over the joist to over the side's own sheet. */
  private List<Vec3> edge(Linear face, JoistLine line, int outward) {
    Linear top = top(line);
    Linear out = face.plus(outward * edge(line));
    Linear in = face.plus(-outward * thick());
    double from = run.bay().stretch().from();
    return List.of(
        new Vec3(out.at(from), from, top.at(from)),
        new Vec3(in.at(from), from, top.at(from)),
        new Vec3(in.at(end()), end(), top.at(end())),
        new Vec3(out.at(end()), end(), top.at(end())));
  }

  private double headTop() {
    double v = run.bay().stretch().from();
    return Math.min(top(run.bay().left()).at(v), top(run.bay().right()).at(v));
  }

  /** Over the gap at the head, from what bounds the high end to over the dam, a little down. */
  private List<Vec3> head(Linear left, Linear right) {
    double t = thick();
    double from = run.bay().stretch().from();
    double to = start() + t;
    return List.of(
        new Vec3(left.at(from) + t, from, headTop()),
        new Vec3(right.at(from) - t, from, headTop()),
        new Vec3(right.at(to) - t, to, headTop() - HEAD_DROP),
        new Vec3(left.at(to) + t, to, headTop() - HEAD_DROP));
  }

  private List<Vec3> dam(Linear left, Linear right, Linear middle) {
    double v = start();
    double t = thick();
    double top = headTop() - HEAD_DROP;
    double foot = side(v) + t - cross() * t;
    return List.of(
        new Vec3(left.at(v) + t, v, foot),
        new Vec3(middle.at(v), v, middle(v) + t),
        new Vec3(right.at(v) - t, v, foot),
        new Vec3(right.at(v) - t, v, top),
        new Vec3(left.at(v) + t, v, top));
  }

  private List<Vec3> tail(Linear left, Linear right, Linear middle) {
    double v = end();
    double below = middle(v) - kit().get(TROUGH_TAIL);
    double side = side(v) - cross() * TAIL_SIDE;
    return List.of(
        new Vec3(left.at(v) + TAIL_SIDE, v, below),
        new Vec3(right.at(v) - TAIL_SIDE, v, below),
        new Vec3(right.at(v) - TAIL_SIDE, v, side),
        new Vec3(middle.at(v), v, middle(v)),
        new Vec3(left.at(v) + TAIL_SIDE, v, side));
  }
}
