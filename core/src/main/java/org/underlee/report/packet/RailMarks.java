package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.Cut;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Point;
import org.underlee.report.packet.SeatMarks.Row;

/** Marks of the seats of side rails: the upper face of their ledges. */
record RailMarks(Job.Place place) {

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Bay bay : place.served()) {
      row(new BayFace(bay, true)).ifPresent(rows::add);
      row(new BayFace(bay, false)).ifPresent(rows::add);
    }
    return rows;
  }

  private Optional<Row> row(BayFace face) {
    List<Part> rails =
        place.partsIn(face.bay()).stream()
            .filter(p -> p.kind() == PartKind.SIDE_RAIL && isAt(face, p))
            .sorted(Comparator.comparingDouble(p -> along(p).get(0).y()))
            .toList();
    if (rails.isEmpty()) {
      return Optional.empty();
    }
    Vec3 low = along(rails.get(rails.size() - 1)).get(1);
    MarkMaker at = face.maker(place, low.y());
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < rails.size(); i++) {
      marks.add(at.mark(i == 0 ? Point.HIGH_END : Point.JOINT, along(rails.get(i)).get(0)));
      marks.addAll(notches(at, rails.get(i)));
    }
    Vec3 high = along(rails.get(0)).get(0);
    marks.addAll(at.bends(high, low, face.bay().turns(high.y(), low.y())));
    marks.add(at.mark(Point.LOW_END, low));
    marks.sort(Comparator.comparingDouble(Mark::fromHouse));
    return Optional.of(
        new Row(place, Optional.of(face.bay()), face.line(), rails, marks, at.beam()));
  }

  private List<Mark> notches(MarkMaker at, Part rail) {
    Vec3 from = along(rail).get(0);
    Vec3 to = along(rail).get(1);
    double length = to.minus(from).length();
    List<Mark> marks = new ArrayList<>();
    for (Cut cut : rail.cuts()) {
      if (cut instanceof Cut.Notch n) {
        double end = n.from() + n.length();
        marks.add(at.mark(Point.NOTCH_FROM, MarkMaker.between(from, to, n.from() / length)));
        marks.add(at.mark(Point.NOTCH_TO, MarkMaker.between(from, to, end / length)));
      }
    }
    return marks;
  }

  /** The two ends of a rail's seat, the upper one first, in the field's frame. */
  private List<Vec3> along(Part rail) {
    Extrusion leg = rail.bodies().get(0);
    List<Vec2> ring = leg.section().outer();
    double from = ring.stream().mapToDouble(Vec2::x).min().orElseThrow();
    double to = ring.stream().mapToDouble(Vec2::x).max().orElseThrow();
    Vec3 a = place.local(leg.frame().apply(new Vec3(from, 0, 0)));
    Vec3 b = place.local(leg.frame().apply(new Vec3(to, 0, 0)));
    return a.y() <= b.y() ? List.of(a, b) : List.of(b, a);
  }

  private boolean isAt(BayFace face, Part rail) {
    Vec3 end = along(rail).get(0);
    Bay bay = face.bay();
    double middle = (bay.leftFace().at(end.y()) + bay.rightFace().at(end.y())) / 2;
    return end.x() < middle == face.left();
  }
}
