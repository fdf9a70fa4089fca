package org.underlee.layout;

import org.underlee.kit.DrainValue;
import org.underlee.kit.DrapeValue;
import org.underlee.kit.Kit;
import org.underlee.kit.PanValue;
import org.underlee.kit.SheetValue;

/**
 * How far from the ends of a clear run the parts of a family begin and stop, metres.
 *
 * @param head from what bounds the high end to the head of what catches the water
 * @param rail by how much what carries it is shorter than the clear run
 * @param setback by how much it stops short of what carries it
 */
record Ends(double head, double rail, double setback) {
  static Ends of(Kit kit) {
    return switch (kit.family()) {
      case PANS ->
          new Ends(
              kit.get(DrainValue.HEAD_GAP),
              kit.get(PanValue.RAIL_END_GAP),
              kit.get(PanValue.PAN_DRIP_SETBACK));
      case DRAPE -> new Ends(kit.get(DrainValue.HEAD_GAP), kit.get(DrapeValue.TROUGH_END_GAP), 0);
      case SHEET -> new Ends(kit.get(DrainValue.HEAD_GAP), kit.get(SheetValue.SHEET_END_GAP), 0);
    };
  }

  /** From the low-end line back to where the water drips. */
  double drip() {
    return rail - head + setback;
  }
}
