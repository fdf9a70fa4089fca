package org.underlee.report.packet;

import java.util.Locale;

/** Sheets that a packet is printed on: ANSI Y14.1 and ISO 216, upright, in millimetres. */
public enum Paper {
  LETTER(215.9, 279.4),
  A4(210, 297),
  TABLOID(279.4, 431.8),
  A3(297, 420);

  private final double widthMm;
  private final double heightMm;

  Paper(double widthMm, double heightMm) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  public double widthMm() {
    return widthMm;
  }

  public double heightMm() {
    return heightMm;
  }

  /** The word used on the command line. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
