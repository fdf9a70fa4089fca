package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.underlee.bay.Bay;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Point;
import org.underlee.report.packet.SeatMarks.Row;

/** Marks of the lines where a trough's floor leaves the joists' faces. */
record TroughMarks(Job.Place place) {
  /** Corners this near are at one station. */
  private static final double SAME = 1e-6;

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Bay bay : place.served()) {
      place.partsIn(bay).stream()
          .filter(p -> p.kind() == PartKind.MEMBRANE)
          .forEach(
              p -> {
                rows.add(row(new BayFace(bay, true), p));
                rows.add(row(new BayFace(bay, false), p));
              });
    }
    return rows;
  }

  private Row row(BayFace face, Part trough) {
    Vec3 high = corner(trough, face.left(), false);
    Vec3 low = corner(trough, face.left(), true);
    MarkMaker at = face.maker(place, low.y());
    List<Mark> marks = new ArrayList<>();
    marks.add(at.mark(Point.HIGH_END, high));
    marks.addAll(at.bends(high, low, face.bay().turns(high.y(), low.y())));
    marks.add(at.mark(Point.LOW_END, low));
    return new Row(place, Optional.of(face.bay()), face.line(), List.of(trough), marks, at.beam());
  }

  /** Where the floor's underside meets a face; its halves are the first two bodies. */
  private Vec3 corner(Part trough, boolean left, boolean low) {
    Mesh half = trough.bodies().get(left ? 0 : 1).mesh();
    List<Vec3> points =
        IntStream.range(0, half.vertexCount()).mapToObj(i -> place.local(half.vertex(i))).toList();
    Comparator<Vec3> station = Comparator.comparingDouble(Vec3::y);
    double end =
        (low ? points.stream().max(station) : points.stream().min(station)).orElseThrow().y();
    Comparator<Vec3> outward = Comparator.comparingDouble(p -> left ? p.x() : -p.x());
    return points.stream()
        .filter(p -> Math.abs(p.y() - end) < SAME)
        .sorted(Comparator.comparingDouble(Vec3::z))
        .min(outward)
        .orElseThrow();
  }
}
