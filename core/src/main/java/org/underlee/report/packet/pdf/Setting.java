package org.underlee.report.packet.pdf;

import java.util.List;

/**
 * How large a sheet is set.
 *
 * @param scale of all letters, pictures and drawings that are not at full size; 1 is the usual
 */
record Setting(double scale) {
  /**
   * From the usual to the tightest: table cells stay at 7.6 points, the least read at arm's length.
   */
  static final List<Double> SCALES = List.of(1.0, 0.96, 0.92, 0.87);

  static final double LEADING = 1.32;

  private static final double TITLE = 17;
  private static final double HEAD = 11.5;
  private static final double BODY = 10;
  private static final double CELL = 8.8;

  double title() {
    return TITLE;
  }

  double head() {
    return HEAD * scale;
  }

  double body() {
    return BODY * scale;
  }

  double cell() {
    return CELL * scale;
  }

  /** From line to line of body text, mm. */
  double bodyStep() {
    return mm(body()) * LEADING;
  }

  /** From line to line of cells, notes and captions, mm. */
  double cellStep() {
    return mm(cell()) * LEADING;
  }

  static double mm(double points) {
    return points / Pen.POINTS_PER_MM;
  }
}
