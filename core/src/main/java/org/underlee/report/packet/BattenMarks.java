package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Point;
import org.underlee.report.packet.SeatMarks.Row;

/** Marks of the battens below each joist: their upper faces, which their hangers' feet lie on. */
record BattenMarks(Job.Place place) {
  /** A hanger this near to a joist's face is screwed to it. */
  private static final double TOUCHING = 0.001;

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (JoistLine line : place.field().lines()) {
      List<Box> battens =
          place.parts(PartKind.BATTEN).stream()
              .map(place::box)
              .filter(b -> passesBelow(b, line))
              .sorted(Comparator.comparingDouble(b -> b.centre().y()))
              .toList();
      if (!battens.isEmpty()) {
        rows.add(row(line, battens));
      }
    }
    return rows;
  }

  private static boolean passesBelow(Box batten, JoistLine line) {
    double u = line.centre(batten.centre().y());
    return u > batten.min().x() - TOUCHING && u < batten.max().x() + TOUCHING;
  }

  private Row row(JoistLine line, List<Box> battens) {
    double last = battens.get(battens.size() - 1).centre().y();
    double house =
        place.served().stream()
            .filter(b -> b.left().equals(line) || b.right().equals(line))
            .mapToDouble(b -> b.stretch().from())
            .min()
            .orElse(line.stretch().from());
    BeamDatum beam = BeamDatum.beyond(place.field(), line.centre(last), last, line.stretch().to());
    MarkMaker at = new MarkMaker(house, beam, line::bottomAt);
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < battens.size(); i++) {
      Vec3 middle = battens.get(i).centre();
      Vec3 top = new Vec3(line.centre(middle.y()), middle.y(), battens.get(i).max().z());
      boolean low = i + 1 == battens.size();
      marks.add(at.mark(i == 0 ? Point.HIGH_END : low ? Point.LOW_END : Point.BATTEN, top));
    }
    return new Row(place, Optional.<Bay>empty(), line, hangers(line), marks, beam);
  }

  /** The hangers on a joist, uphill first. */
  private List<Part> hangers(JoistLine line) {
    return place.parts(PartKind.BATTEN_HANGER).stream()
        .filter(p -> touches(place.box(p), line))
        .sorted(Comparator.comparingDouble(p -> place.box(p).centre().y()))
        .toList();
  }

  private static boolean touches(Box hanger, JoistLine line) {
    double v = hanger.centre().y();
    return Math.abs(hanger.min().x() - line.rightAt(v)) < TOUCHING
        || Math.abs(hanger.max().x() - line.leftAt(v)) < TOUCHING;
  }
}
