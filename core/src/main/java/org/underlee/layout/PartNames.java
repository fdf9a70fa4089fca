package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.finding.StopSign;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.units.Words;

/**
 * Makes parts with stable ids and short labels for one field: the same framing gives the same names
 * on every run. Looks at the stop sign with each part, so that a field of many bays need not be
 * laid out to its end.
 *
 * @param field {@code deck-1/field-1}
 * @param number of the field in the model, for labels: {@code F1}
 * @param stop tells when no more parts are wanted
 */
record PartNames(String field, int number, StopSign stop) {

  /** A part of one bay: id {@code deck-1/field-1/B3/pan-1}, label {@code F1-B3-P1}. */
  Part inBay(String bay, PartKind kind, int ordinal, Shape shape, String why) {
    return part(bay + "/", Optional.of(bay), bay + "-", kind, ordinal, shape, why);
  }

  /** A part below a joist line, such as a ply strip. */
  Part atLine(String line, PartKind kind, int ordinal, Shape shape, String why) {
    return part(line + "/", Optional.empty(), line + "-", kind, ordinal, shape, why);
  }

  /** A part of the field as a whole, such as its gutter. */
  Part inField(PartKind kind, int ordinal, Shape shape, String why) {
    return part("", Optional.empty(), "", kind, ordinal, shape, why);
  }

  /** What a part is, apart from its name. */
  record Shape(
      String item,
      double length,
      double width,
      OptionalDouble sheetWidth,
      OptionalDouble sheetLength,
      OptionalDouble fall,
      List<Extrusion> bodies,
      Optional<Outline> section,
      int count,
      List<Cut> cuts,
      List<Derivation> derivations) {

    static Shape of(String item, double length, double width, List<Extrusion> bodies) {
      return new Shape(
          item,
          length,
          width,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          bodies,
          Optional.empty(),
          1,
          List.of(),
          List.of());
    }

    /** Pieces that are counted and not drawn. */
    static Shape counted(String item, int count) {
      return new Shape(
          item,
          0,
          0,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          List.of(),
          Optional.empty(),
          count,
          List.of(),
          List.of());
    }

    Shape foldedFrom(double flatWidth) {
      return new Shape(
          item,
          length,
          width,
          OptionalDouble.of(flatWidth),
          sheetLength,
          fall,
          bodies,
          section,
          count,
          cuts,
          derivations);
    }

    /** Cut this long, for what is folded at the ends. */
    Shape cutTo(double flatLength) {
      return new Shape(
          item,
          length,
          width,
          sheetWidth,
          OptionalDouble.of(flatLength),
          fall,
          bodies,
          section,
          count,
          cuts,
          derivations);
    }

    Shape falling(double dropPerRun) {
      return new Shape(
          item,
          length,
          width,
          sheetWidth,
          sheetLength,
          OptionalDouble.of(dropPerRun),
          bodies,
          section,
          count,
          cuts,
          derivations);
    }

    Shape cutFrom(Outline profile) {
      return new Shape(
          item,
          length,
          width,
          sheetWidth,
          sheetLength,
          fall,
          bodies,
          Optional.of(profile),
          count,
          cuts,
          derivations);
    }

    Shape cut(List<Cut> own) {
      return new Shape(
          item,
          length,
          width,
          sheetWidth,
          sheetLength,
          fall,
          bodies,
          section,
          count,
          own,
          derivations);
    }

    /** Where its numbers come from. */
    Shape derived(List<Derivation> own) {
      return new Shape(
          item, length, width, sheetWidth, sheetLength, fall, bodies, section, count, cuts, own);
    }
  }

  private Part part(
      String path,
      Optional<String> bay,
      String prefix,
      PartKind kind,
      int ordinal,
      Shape s,
      String why) {
    stop.obey();
    return new Part(
        field + "/" + path + kind.word() + "-" + ordinal,
        "F" + number + "-" + prefix + letter(kind) + ordinal,
        kind,
        field,
        bay,
        s.item,
        s.length,
        s.width,
        s.sheetWidth,
        s.sheetLength,
        s.fall,
        s.bodies,
        s.section,
        s.count,
        s.cuts,
        new Why(Words.plain(why), s.derivations));
  }

  private static String letter(PartKind kind) {
    return switch (kind) {
      case PAN -> "P";
      case SIDE_RAIL -> "R";
      case HEAD_RAIL -> "H";
      case RIDGE_CAP -> "W";
      case PLY_STRIP -> "S";
      case COLLAR_PIECE -> "C";
      case SADDLE -> "V";
      case MEMBRANE -> "M";
      case CAP_STRIP -> "Y";
      case SHEET -> "A";
      case BATTEN -> "N";
      case BATTEN_HANGER -> "Q";
      case GUTTER -> "G";
      case OUTLET -> "O";
      case END_CAP -> "E";
      case HANGER -> "K";
      case FLASHING -> "F";
      case DOWNSPOUT -> "D";
      case ELBOW -> "L";
      case STRAP -> "U";
      case TAPE -> "T";
      case FASTENER -> "X";
    };
  }
}
