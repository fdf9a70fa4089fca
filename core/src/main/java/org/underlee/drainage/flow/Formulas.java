package org.underlee.drainage.flow;

import java.util.Optional;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

/**
 * Capacities by formula, in SI. Sources: EN 12056-3:2000, Beij (NBS RP644, 1934) and Wyly and Eaton
 * (NBS Monograph 31, 1961), all from memory; Wyly and Eaton's agrees with each entry of NSPC 2006
 * Table 13.6.1, Beij's with the trade's half-round table, EN's with both within 5 percent.
 */
public final class Formulas {
  /** Filling of a downspout when its capacity was measured. */
  public static final double DOWNSPOUT_FILLING = 7.0 / 24;

  /** The most that EN 12056-3 takes. */
  public static final double EN_FILLING = 0.33;

  /** EN 12056-3: a gutter that is longer than so many depths loses capacity. */
  private static final double SHORT = 50;

  /** The last column of the standard's table of long gutters. */
  private static final double LONGEST = 200;

  /** Loss of a long level gutter at L/W of 50, 75, ... 200. */
  private static final double[] LEVEL = {1, 0.97, 0.93, 0.90, 0.86, 0.83, 0.80};

  /** Falls of the table in mm per m, and its factors at L/W of 100 and of 200. */
  private static final double[] FALLS = {0.004, 0.006, 0.008, 0.010};

  private static final double[] AT_100 = {1.03, 1.08, 1.13, 1.18};
  private static final double[] AT_200 = {1.10, 1.25, 1.40, 1.55};

  /** One inch squared of downspout for 1200 square feet at 1 in per hour. */
  private static final double AREA_RULE = 1200 / 96.25 * Flows.GPM / (Lengths.INCH * Lengths.INCH);

  private Formulas() {}

  /** EN 12056-3: nominal capacity of an eaves gutter that is short and level. */
  public static double enNominal(GutterSection section) {
    double mm2 = Math.pow(section.fullArea() / (Lengths.MM * Lengths.MM), 1.25);
    if (section instanceof HalfRound) {
      return 2.78e-5 * mm2 * Flows.LITRE_PER_SECOND;
    }
    return 3.48e-5 * mm2 * depthFactor(section) * Flows.LITRE_PER_SECOND;
  }

  /**
   * The fourth root is what level flow without friction gives; the standard's chart is not read.
   */
  private static double depthFactor(GutterSection section) {
    return Math.min(1, Math.pow(section.depth() / section.rimWidth(), 0.25));
  }

  /** EN 12056-3: design capacity; empty where the gutter is longer than the table goes. */
  public static Optional<Double> enDesign(GutterSection section, double fall, double length) {
    return enLength(length / section.depth(), fall)
        .map(factor -> 0.9 * enNominal(section) * factor);
  }

  static Optional<Double> enLength(double ratio, double fall) {
    if (ratio > LONGEST) {
      return Optional.empty();
    }
    if (ratio <= SHORT) {
      return Optional.of(1.0);
    }
    int row = FALLS.length - 1;
    while (row >= 0 && FALLS[row] > fall + 1e-12) {
      row--;
    }
    if (row >= 0) {
      return Optional.of(
          ratio <= 100
              ? between(ratio, 50, 1, 100, AT_100[row])
              : between(ratio, 100, AT_100[row], 200, AT_200[row]));
    }
    int cell = (int) Math.min(LEVEL.length - 2, Math.floor((ratio - SHORT) / 25));
    double from = SHORT + 25 * cell;
    return Optional.of(between(ratio, from, LEVEL[cell], from + 25, LEVEL[cell + 1]));
  }

  private static double between(double x, double x0, double y0, double x1, double y1) {
    return y0 + (x - x0) / (x1 - x0) * (y1 - y0);
  }

  /** Beij: a level gutter, half round or, from its depth and mean width, rectangular. */
  public static double beij(GutterSection section, double length) {
    double squareFeetInches;
    if (section instanceof HalfRound half) {
      squareFeetInches = Math.pow(half.diameter() / Lengths.FOOT / 0.0182, 2.5);
    } else {
      double width = section.fullArea() / section.depth();
      double shape = Math.pow(section.depth() / width, -4.0 / 7);
      double feet = Math.pow(length / Lengths.FOOT, 3.0 / 28);
      squareFeetInches = Math.pow(width / Lengths.FOOT / (0.0106 * shape * feet), 14.0 / 5);
    }
    return squareFeetInches / 96.25 * Flows.GPM;
  }

  /** Manning, uniform flow up to the rim: more than a gutter that collects can carry. */
  public static double manning(GutterSection section, double fall, double roughness) {
    double area = section.fullArea();
    double radius = area / section.wettedPerimeter(section.depth());
    return area * Math.cbrt(radius * radius) * Math.sqrt(fall) / roughness;
  }

  /** Wyly and Eaton: a downspout of a diameter, so full. */
  public static double wylyEaton(double diameter, double filling) {
    return 27.8
        * Math.pow(filling, 5.0 / 3)
        * Math.pow(diameter / Lengths.INCH, 8.0 / 3)
        * Flows.GPM;
  }

  /** EN 12056-3: a downpipe, so full, with a wall roughness of 0.25 mm. */
  public static double enDownpipe(double diameter, double filling) {
    return 2.5e-4
        * Math.pow(0.25, -0.167)
        * Math.pow(diameter / Lengths.MM, 2.667)
        * Math.pow(filling, 1.667)
        * Flows.LITRE_PER_SECOND;
  }

  /** The sheet metal trade's rule: one inch squared for 1200 square feet at 1 in per hour. */
  public static double areaRule(double area) {
    return AREA_RULE * area;
  }

  /** Depth of a thin sheet that flows evenly down a pan. */
  public static double sheetDepth(double flow, double width, double fall, double roughness) {
    if (!(fall > 0) || !(width > 0)) {
      throw new IllegalArgumentException(
          "a sheet of width "
              + width
              + " m on a fall of "
              + fall
              + " does not run off; expected both above zero");
    }
    return Math.pow(roughness * flow / width / Math.sqrt(fall), 0.6);
  }
}
