package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.bay.Bay;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.DrainValue;
import org.underlee.kit.PanValue;
import org.underlee.layout.Cut;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/**
 * Where a rail's bearing line is marked on a joist's face. Heights are taken from the rails as they
 * lie in the model, against the underside of the joist at the same station, so that crown, bow and
 * fall are all in them.
 */
final class SeatMarks {
  /** A bearing line is told by its two ends where the wood between is straight to this. */
  private static final double STRAIGHT = 0.0005;

  private SeatMarks() {}

  /** Why something is marked there. */
  enum Point {
    HIGH_END,
    NOTCH_FROM,
    NOTCH_TO,
    JOINT,
    BEND,
    LOW_END;

    String key() {
      return "mark.point." + name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * One mark.
   *
   * @param fromHouse from what bounds the bay's high end, level
   * @param fromBeam from the face at the low end that the gutter hangs before, level
   * @param height of the bearing line above the joist's bottom there
   */
  record Mark(Point point, double fromHouse, double fromBeam, double height) {}

  /**
   * The marks of one rail line, from the high end to the low end.
   *
   * @param rails the pieces, uphill first
   */
  record Row(Job.Place place, Bay bay, JoistLine line, List<Part> rails, List<Mark> marks) {
    Mark first() {
      return marks.get(0);
    }

    Mark last() {
      return marks.get(marks.size() - 1);
    }

    List<Mark> between() {
      return marks.subList(1, marks.size() - 1);
    }
  }

  /** In the order in which one walks along the field: each joist line's faces one after another. */
  static List<Row> of(Job job, Job.Place place) {
    List<Row> rows = new ArrayList<>();
    for (Bay bay : place.served()) {
      for (boolean left : new boolean[] {true, false}) {
        row(job, place, bay, left).ifPresent(rows::add);
      }
    }
    List<JoistLine> lines = place.field().lines();
    rows.sort(Comparator.comparingInt((Row r) -> lines.indexOf(r.line)));
    return rows;
  }

  private static java.util.Optional<Row> row(Job job, Job.Place place, Bay bay, boolean left) {
    List<Part> rails =
        place.partsIn(bay).stream()
            .filter(p -> p.kind() == PartKind.SIDE_RAIL && isLeft(place, bay, p) == left)
            .sorted(Comparator.comparingDouble(p -> along(place, p).get(0).y()))
            .toList();
    if (rails.isEmpty()) {
      return java.util.Optional.empty();
    }
    JoistLine line = left ? bay.left() : bay.right();
    double low = lowFace(job, place, bay, rails);
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < rails.size(); i++) {
      List<Vec3> ends = along(place, rails.get(i));
      Vec3 from = ends.get(0);
      Vec3 to = ends.get(1);
      Maker at = new Maker(bay, left, low);
      marks.add(at.mark(i == 0 ? Point.HIGH_END : Point.JOINT, from));
      double length = to.minus(from).length();
      for (Cut cut : rails.get(i).cuts()) {
        if (cut instanceof Cut.Notch notch) {
          marks.add(at.mark(Point.NOTCH_FROM, between(from, to, notch.from() / length)));
          marks.add(
              at.mark(Point.NOTCH_TO, between(from, to, (notch.from() + notch.length()) / length)));
        }
      }
      if (i == rails.size() - 1) {
        marks.add(at.mark(Point.LOW_END, to));
        at.bends(along(place, rails.get(0)).get(0), to).forEach(marks::add);
      }
    }
    marks.sort(Comparator.comparingDouble(Mark::fromHouse));
    return java.util.Optional.of(new Row(place, bay, line, rails, marks));
  }

  private static Vec3 between(Vec3 from, Vec3 to, double share) {
    return from.plus(to.minus(from).times(share));
  }

  /** Measures one face. */
  private record Maker(Bay bay, boolean left, double lowFace) {
    Mark mark(Point point, Vec3 seat) {
      return new Mark(
          point, seat.y() - bay.stretch().from(), lowFace - seat.y(), seat.z() - bottom(seat.y()));
    }

    double bottom(double v) {
      return left
          ? bay.left().rightmost(v).shape().bottom().at(v)
          : bay.right().leftmost(v).shape().bottom().at(v);
    }

    /** Where the underside leaves the straight line between the ends. */
    List<Mark> bends(Vec3 from, Vec3 to) {
      List<Mark> found = new ArrayList<>();
      for (double v : bay.turns(from.y(), to.y())) {
        double share = (v - from.y()) / (to.y() - from.y());
        double straight = bottom(from.y()) + share * (bottom(to.y()) - bottom(from.y()));
        if (share > 0 && share < 1 && Math.abs(bottom(v) - straight) > STRAIGHT) {
          found.add(mark(Point.BEND, between(from, to, share)));
        }
      }
      return found;
    }
  }

  /** The two ends of a rail's bearing line, the upper one first, in the field's frame. */
  static List<Vec3> along(Job.Place place, Part rail) {
    Extrusion leg = rail.bodies().get(0);
    List<Vec2> ring = leg.section().outer();
    double from = ring.stream().mapToDouble(Vec2::x).min().orElseThrow();
    double to = ring.stream().mapToDouble(Vec2::x).max().orElseThrow();
    Vec3 a = place.local(leg.frame().apply(new Vec3(from, 0, 0)));
    Vec3 b = place.local(leg.frame().apply(new Vec3(to, 0, 0)));
    return a.y() <= b.y() ? List.of(a, b) : List.of(b, a);
  }

  private static boolean isLeft(Job.Place place, Bay bay, Part rail) {
    Vec3 end = along(place, rail).get(0);
    double middle = (bay.leftFace().at(end.y()) + bay.rightFace().at(end.y())) / 2;
    return end.x() < middle;
  }

  /** The station of the face that the low end is measured from: the rails stop short of it. */
  private static double lowFace(Job job, Job.Place place, Bay bay, List<Part> rails) {
    double end = along(place, rails.get(rails.size() - 1)).get(1).y();
    double cosine = 1 / Math.hypot(1, place.layout().fall());
    double head = bay.stretch().from() + job.kit().get(DrainValue.HEAD_GAP);
    return bay.stretch().from() + (end - head) / cosine + job.kit().get(PanValue.RAIL_END_GAP);
  }
}
