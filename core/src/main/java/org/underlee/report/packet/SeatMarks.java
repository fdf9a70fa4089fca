package org.underlee.report.packet;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;

/**
 * Where what is hung is marked on the joists. Heights are taken from the parts as they lie in the
 * model, against the underside of the joist at the same station, so that crown, bow and fall are
 * all in them. What is marked depends on the family: a rail's seat, the line where a trough leaves
 * the joist's face, the upper face of each batten.
 */
final class SeatMarks {
  private SeatMarks() {}

  /** Why something is marked there. */
  enum Point {
    HIGH_END,
    NOTCH_FROM,
    NOTCH_TO,
    JOINT,
    BEND,
    BATTEN,
    LOW_END;

    String key() {
      return "mark.point." + name().toLowerCase(Locale.ROOT);
    }

    /** As in files: {@code high-end}. */
    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * One mark.
   *
   * @param at its place in the field's frame
   * @param fromHouse from what bounds the bay's high end, level
   * @param fromBeam to the face at the low end that the gutter hangs before, level
   * @param height above the joist's bottom there
   * @param overBeam height above the datum at the beam: see {@link BeamDatum}
   */
  record Mark(
      Point point, Vec3 at, double fromHouse, double fromBeam, double height, double overBeam) {}

  /**
   * The marks along one joist face, from the high end to the low end.
   *
   * @param bay empty where what is hung runs below all joists
   * @param parts the pieces that are set to them, uphill first
   * @param beam what they are measured from at the low end
   */
  record Row(
      Job.Place place,
      Optional<Bay> bay,
      JoistLine line,
      List<Part> parts,
      List<Mark> marks,
      BeamDatum beam) {
    Mark first() {
      return marks.get(0);
    }

    Mark last() {
      return marks.get(marks.size() - 1);
    }

    List<Mark> between() {
      return marks.size() < 2 ? List.of() : marks.subList(1, marks.size() - 1);
    }

    /** Whether someone who stands below the bay needs it. */
    boolean isAt(Bay other) {
      return bay.isPresent()
          ? bay.get().equals(other)
          : line.equals(other.left()) || line.equals(other.right());
    }
  }

  /** In the order in which one walks along the field: each joist line's faces one after another. */
  static List<Row> of(Job.Place place) {
    List<Row> rows =
        new java.util.ArrayList<>(
            switch (place.family()) {
              case PANS -> new RailMarks(place).rows();
              case DRAPE -> new TroughMarks(place).rows();
              case SHEET -> new BattenMarks(place).rows();
            });
    List<JoistLine> lines = place.field().lines();
    rows.sort(Comparator.comparingInt((Row r) -> lines.indexOf(r.line)));
    return rows;
  }
}
