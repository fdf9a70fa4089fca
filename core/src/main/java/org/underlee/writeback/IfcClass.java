package org.underlee.writeback;

import org.underlee.layout.PartKind;

/**
 * What a kind of part is in IFC: the mapping of design section 4.
 *
 * @param predefined without dots
 */
record IfcClass(IfcFamily family, String predefined) {
  static IfcClass of(PartKind kind) {
    return switch (kind) {
      case PAN, COLLAR_PIECE, SADDLE, SHEET, FLASHING, RIDGE_CAP ->
          new IfcClass(IfcFamily.PLATE, "SHEET");
      case SIDE_RAIL, HEAD_RAIL, PLY_STRIP, BATTEN, CAP_STRIP ->
          new IfcClass(IfcFamily.MEMBER, "MEMBER");
      case TAPE, MEMBRANE -> new IfcClass(IfcFamily.COVERING, "MEMBRANE");
      case GUTTER -> new IfcClass(IfcFamily.SEGMENT, "GUTTER");
      case DOWNSPOUT -> new IfcClass(IfcFamily.SEGMENT, "RIGIDSEGMENT");
      case OUTLET -> new IfcClass(IfcFamily.FITTING, "EXIT");
      case ELBOW -> new IfcClass(IfcFamily.FITTING, "BEND");
      case END_CAP -> new IfcClass(IfcFamily.FITTING, "OBSTRUCTION");
      case HANGER, STRAP, BATTEN_HANGER -> new IfcClass(IfcFamily.ACCESSORY, "BRACKET");
      case FASTENER -> new IfcClass(IfcFamily.FASTENER, "SCREW");
    };
  }
}
