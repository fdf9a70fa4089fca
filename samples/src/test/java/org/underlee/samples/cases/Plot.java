package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.underlee.samples.Frame;
import org.underlee.samples.cases.Piece.Kind;

/**
 * One field in its own frame: u to the right of someone who looks down the fall, v along it from
 * the face at the high end. Members are told by their plan; they stand upright on it.
 */
final class Plot {
  private static final double POST = 90;

  final Yard yard;
  final String key;
  final Frame frame;
  final List<Truth.Line> lines = new ArrayList<>();
  final List<double[]> faces = new ArrayList<>();
  final Map<String, List<String>> supports = new HashMap<>();

  Plot(Yard yard, String key, Frame frame) {
    this.yard = yard;
    this.key = key;
    this.frame = frame;
    for (String list : List.of("ledgers", "rims", "beams", "posts", "headers", "trimmers")) {
      supports.put(list, new ArrayList<>());
    }
  }

  String name(String local) {
    return key + "/" + local;
  }

  Plot bar(String local, String role, List<double[]> plan, double z0, double z1) {
    yard.add(
        name(local),
        Kind.BAR,
        role,
        Yard.UPSTAIRS,
        Shapes.upward(plan, List.of(), z0, z1).in(frame));
    return this;
  }

  Plot box(
      String local, String role, double u0, double v0, double u1, double v1, double z0, double z1) {
    Body body = Shapes.box(yard.random.nextInt(3), u0, v0, z0, u1, v1, z1);
    yard.add(name(local), Kind.BAR, role, Yard.UPSTAIRS, body.in(frame));
    return this;
  }

  /** A bar as deep as the joists, and in one of the field's lists. */
  Plot support(String local, String role, String list, double u0, double v0, double u1, double v1) {
    return box(local, role, u0, v0, u1, v1, yard.bottom(), yard.top).lists(list, local);
  }

  Plot lists(String list, String local) {
    return listsKey(list, name(local));
  }

  Plot listsKey(String list, String full) {
    supports.computeIfAbsent(list, l -> new ArrayList<>()).add(full);
    return this;
  }

  Plot ledger(double from, double to) {
    return support("ledger", "ledger", "ledgers", from, -yard.w, to, 0);
  }

  Plot rim(double v, double from, double to) {
    return support("rim", "rim", "rims", from, v, to, v + yard.w);
  }

  /** A post with its middle at a place, up to {@code z}. */
  Plot post(String local, double u, double v, double z) {
    Body body = Shapes.box(2, u - POST / 2, v - POST / 2, 0, u + POST / 2, v + POST / 2, z);
    yard.add(name(local), Kind.UPRIGHT, "post", Yard.GROUND, body.in(frame));
    return lists("posts", local);
  }

  /** Posts under both ends of a bar that lies along u. */
  Plot posts(String local, double v, double from, double to, double z) {
    return post(local + "-1", from + 300, v, z).post(local + "-2", to - 300, v, z);
  }

  /** A wall behind the ledger, as high as a storey above the deck. */
  Plot wall(double from, double to) {
    Body body = Shapes.box(2, from, -yard.w - 200, 0, to, -yard.w, yard.top + 2400);
    yard.add(name("wall"), Kind.WALL, "none", Yard.UPSTAIRS, body.in(frame));
    return this;
  }

  /** A line of plies side by side from {@code u} on. */
  Plot line(String local, String role, int plies, double u, double from, double to) {
    List<String> members = new ArrayList<>();
    for (int p = 0; p < plies; p++) {
      String ply = plies == 1 ? local : local + "-" + p;
      double left = u + p * yard.w;
      box(ply, role, left, from, left + yard.w, to, yard.bottom(), yard.top);
      members.add(name(ply));
    }
    return counted(members, plies, u, u + plies * yard.w);
  }

  /** A line that is there already, or was added by other means. */
  Plot counted(List<String> members, int plies, double left, double right) {
    lines.add(new Truth.Line(members, plies, plies * yard.w, yard.d));
    faces.add(new double[] {left, right});
    return this;
  }

  /** A single joist whose end follows what it meets. */
  Plot joist(String local, double u, DoubleUnaryOperator high, DoubleUnaryOperator low) {
    double right = u + yard.w;
    List<double[]> plan =
        List.of(
            Shapes.at(u, high.applyAsDouble(u)),
            Shapes.at(right, high.applyAsDouble(right)),
            Shapes.at(right, low.applyAsDouble(right)),
            Shapes.at(u, low.applyAsDouble(u)));
    bar(local, "joist", plan, yard.bottom(), yard.top);
    return counted(List.of(name(local)), 1, u, right);
  }

  /** A bay between two lines, bounded by what is at its middle. */
  Truth.Bay bay(int left, int right, DoubleUnaryOperator high, DoubleUnaryOperator low) {
    double from = faces.get(left)[1];
    double to = faces.get(right)[0];
    double middle = (from + to) / 2;
    double length = low.applyAsDouble(middle) - high.applyAsDouble(middle);
    return Truth.Bay.plain(left, right, length, to - from);
  }

  /** Bays between all neighbours. */
  List<Truth.Bay> bays(DoubleUnaryOperator high, DoubleUnaryOperator low) {
    List<Truth.Bay> bays = new ArrayList<>();
    for (int i = 0; i + 1 < lines.size(); i++) {
      bays.add(bay(i, i + 1, high, low));
    }
    return bays;
  }

  Truth.Field field(List<Truth.Bay> bays) {
    return new Truth.Field(frame.y(), List.copyOf(lines), supports, bays);
  }

  static DoubleUnaryOperator at(double v) {
    return u -> v;
  }
}
