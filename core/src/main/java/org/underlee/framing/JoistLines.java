package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** Groups joists into lines: plies that touch over most of their length act as one. */
record JoistLines(Transform frame, Tolerance tolerance) {
  /** Plies lie side by side over at least this share of the shorter one. */
  private static final double PLY_OVERLAP = 0.8;

  private record Strip(Member member, Linear left, Linear right, Interval stretch, Linear bottom) {
    double at(double v) {
      return (left.at(v) + right.at(v)) / 2;
    }
  }

  List<JoistLine> of(List<Member> joists) {
    List<Strip> strips = new ArrayList<>(joists.stream().map(this::strip).toList());
    strips.sort(
        Comparator.comparingDouble((Strip s) -> s.at(s.stretch.middle()))
            .thenComparingDouble(s -> s.stretch.from()));
    List<List<Strip>> lines = new ArrayList<>();
    for (Strip strip : strips) {
      lines.stream()
          .filter(l -> arePlies(l.get(l.size() - 1), strip))
          .findFirst()
          .ifPresentOrElse(l -> l.add(strip), () -> lines.add(new ArrayList<>(List.of(strip))));
    }
    List<JoistLine> result = new ArrayList<>();
    for (List<Strip> line : lines) {
      result.add(line("J" + (result.size() + 1), line));
    }
    return result;
  }

  private boolean arePlies(Strip a, Strip b) {
    Interval shared = a.stretch.meet(b.stretch);
    double gap = b.left.at(shared.middle()) - a.right.at(shared.middle());
    return shared.length() >= PLY_OVERLAP * Math.min(a.stretch.length(), b.stretch.length())
        && tolerance.areOneLine(gap);
  }

  private static JoistLine line(String id, List<Strip> plies) {
    Strip first = plies.get(0);
    Strip last = plies.get(plies.size() - 1);
    double from = plies.stream().mapToDouble(p -> p.stretch.from()).min().orElseThrow();
    double to = plies.stream().mapToDouble(p -> p.stretch.to()).max().orElseThrow();
    double depth = plies.stream().mapToDouble(p -> p.member.box().depth()).max().orElseThrow();
    String why =
        plies.size() == 1
            ? "a single joist"
            : plies.size() + " plies that touch (gap at most 6 mm) act as one line";
    return new JoistLine(
        id,
        plies.stream().map(Strip::member).toList(),
        first.left,
        last.right,
        new Interval(from, to),
        first.bottom,
        depth,
        why);
  }

  private Strip strip(Member joist) {
    OrientedBox box = joist.box();
    Vec3 centre = frame.toLocal(box.centre());
    Vec3 axis = along(frame.directionToLocal(box.axis()));
    Vec3 side = acrossTo(frame.directionToLocal(box.side()));
    Vec3 up = frame.directionToLocal(box.up());
    double sideways = axis.x() / axis.y();
    Vec3 right = centre.plus(side.times(box.width() / 2));
    Vec3 left = centre.minus(side.times(box.width() / 2));
    Vec3 under = centre.minus(up.times(Math.signum(up.z()) * box.depth() / 2));
    double half = axis.y() * box.length() / 2;
    return new Strip(
        joist,
        Linear.through(left.y(), left.x(), sideways),
        Linear.through(right.y(), right.x(), sideways),
        new Interval(centre.y() - half, centre.y() + half),
        Linear.through(under.y(), under.z(), axis.z() / axis.y()));
  }

  private static Vec3 along(Vec3 axis) {
    return axis.y() < 0 ? axis.negated() : axis;
  }

  private static Vec3 acrossTo(Vec3 side) {
    return side.x() < 0 ? side.negated() : side;
  }
}
