package org.underlee.drainage.flow;

import org.underlee.units.Flows;
import org.underlee.units.Lengths;

/**
 * Heads and flows at openings, in SI. The head is the depth of still water over the opening's sill.
 *
 * <p>Source: FHWA HEC-22, 4th edition (2024), 7.3 and 10.3; EN 12056-3 and the Francis weir from
 * memory.
 */
public final class Outlets {
  /** Metres per second squared. */
  static final double GRAVITY = 9.80665;

  private static final double ROOT_2G = Math.sqrt(2 * GRAVITY);

  /** HEC-22 7.3: flow over the edge of an opening. */
  private static final double WEIR = 0.37;

  /** HEC-22 7.3: flow over the edge of a slot. */
  public static final double SLOT_WEIR = 0.31;

  /** HEC-22 7.3: a slot under water. */
  public static final double SLOT = 0.80;

  /** HEC-22 10.3: a square-edged hole under water. */
  public static final double SQUARE_EDGED = 0.60;

  /** Francis: cubic feet per second over a foot of sharp crest at a foot of head. */
  private static final double FRANCIS =
      3.33 * Flows.CUBIC_FOOT_PER_SECOND / Math.pow(Lengths.FOOT, 2.5);

  private Outlets() {}

  public static double weirFlow(double perimeter, double head) {
    return weirFlow(WEIR, perimeter, head);
  }

  public static double weirFlow(double coefficient, double perimeter, double head) {
    return coefficient * ROOT_2G * perimeter * Math.pow(head, 1.5);
  }

  public static double orificeFlow(double coefficient, double area, double head) {
    return coefficient * area * ROOT_2G * Math.sqrt(head);
  }

  public static double orificeArea(double coefficient, double flow, double head) {
    return flow / orificeFlow(coefficient, 1, head);
  }

  /** The smaller of weir and orifice. */
  public static double flow(Opening opening, double head) {
    return Math.min(
        weirFlow(opening.perimeter(), head), orificeFlow(SQUARE_EDGED, opening.area(), head));
  }

  /** The head at which an opening passes a flow: the greater of weir and orifice. */
  public static double head(Opening opening, double flow) {
    double overEdge = Math.pow(flow / weirFlow(opening.perimeter(), 1), 2.0 / 3);
    double submerged = flow / orificeFlow(SQUARE_EDGED, opening.area(), 1);
    return Math.max(overEdge, submerged * submerged);
  }

  /** A slot in a side wall that is open above, by Francis with two end contractions. */
  public static double scupperFlow(double width, double head) {
    return FRANCIS * Math.max(0, width - 0.2 * head) * Math.pow(head, 1.5);
  }

  /** EN 12056-3, a round outlet: weir up to half its diameter of head, then orifice. */
  static double enFlow(Opening opening, double head) {
    double h = head / Lengths.MM;
    double litres;
    if (opening instanceof Opening.Round round) {
      double d = round.diameter() / Lengths.MM;
      litres = h <= d / 2 ? d * Math.pow(h, 1.5) / 7500 : d * d * Math.sqrt(h) / 15000;
    } else {
      double edge = opening.perimeter() / Lengths.MM;
      double area = opening.area() / (Lengths.MM * Lengths.MM);
      litres = Math.min(edge * Math.pow(h, 1.5) / 24000, area * Math.sqrt(h) / 12000);
    }
    return litres * Flows.LITRE_PER_SECOND;
  }
}
