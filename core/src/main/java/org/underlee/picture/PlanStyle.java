package org.underlee.picture;

import java.util.List;
import java.util.OptionalInt;

/**
 * How a thing in a plan looks; its name is the class in SVG.
 *
 * @param name lower-case letters, digits and hyphens
 * @param line colour of lines and text, {@code 0xRRGGBB}
 * @param lineMm width of lines on paper
 * @param fill colour of areas, and of the plate behind a text
 * @param dashMm lengths on paper drawn and left out by turns; empty for an unbroken line
 */
public record PlanStyle(
    String name, int line, double lineMm, OptionalInt fill, List<Double> dashMm) {
  public static final PlanStyle CONTEXT = lined("context", 0x9aa3aa, 0.18).filled(0xf0f1f1);
  public static final PlanStyle JOIST = lined("joist", 0x7a5f38, 0.18).filled(0xecd9b8);
  public static final PlanStyle BEAM = lined("beam", 0x7a5f38, 0.35).dashed(3, 1);
  public static final PlanStyle LEDGER = lined("ledger", 0x7a5f38, 0.25).filled(0xdcc299);
  public static final PlanStyle POST = lined("post", 0x5c4526, 0.35).filled(0xb58d5c);
  public static final PlanStyle BLOCKING = lined("blocking", 0x7a5f38, 0.18).filled(0xf3e6cd);
  public static final PlanStyle PAN = lined("pan", 0x54798c, 0.25).filled(0xdbe9f0);

  /** By turns for outlets of one field, each with what it drains. */
  public static final List<PlanStyle> PANS =
      List.of(
          PAN,
          lined("pan-2", 0x54798c, 0.25).filled(0xe2eed6),
          lined("pan-3", 0x54798c, 0.25).filled(0xeadff0));

  /** Below the plies of a joist: seen through them. */
  public static final PlanStyle STRIP = lined("strip", 0x54798c, 0.25).dashed(2, 1);

  public static final PlanStyle RAIL = lined("rail", 0x3f6378, 0.18).filled(0x9fbccb);
  public static final PlanStyle NOTCH = lined("notch", 0xa5341d, 0.5);
  public static final PlanStyle GUTTER = lined("gutter", 0x2c565c, 0.3).filled(0x9cc0c4);
  public static final PlanStyle DOWNSPOUT = lined("downspout", 0x2c565c, 0.35).filled(0xffffff);
  public static final PlanStyle CROSSING = lined("crossing", 0x9c4a1f, 0.3).filled(0xf4d2bd);
  public static final PlanStyle ALERT = lined("alert", 0xc23b22, 0.4).filled(0xf7c9bf);

  /** Of the way that water takes to where it gets through. */
  public static final PlanStyle LEAK = lined("leak", 0xc23b22, 0.35).dashed(1.4, 0.8);

  /** Across deck that is not drained. */
  public static final PlanStyle OPEN = lined("open", 0x8a6d3b, 0.18);

  /** What the reader has selected. */
  public static final PlanStyle CHOSEN = lined("chosen", 0xc96a1f, 0.7).filled(0xf9dcc0);

  /** Around what the reader has selected where it is drawn itself. */
  public static final PlanStyle CHOSEN_LINE = lined("chosen-line", 0xc96a1f, 0.9);

  public static final PlanStyle FALL = lined("fall", 0x1d5f8a, 0.3);
  public static final PlanStyle GUTTER_FALL = lined("gutter-fall", 0x1d5f8a, 0.2).filled(0xffffff);
  public static final PlanStyle DIMENSION = lined("dimension", 0x4a555e, 0.18);
  public static final PlanStyle NOTE = lined("note", Palette.INK, 0.25);
  public static final PlanStyle TAG = lined("tag", Palette.INK, 0.25).filled(0xffffff);

  /**
   * @throws IllegalArgumentException when the name is no class name or the width is not above zero
   */
  public PlanStyle {
    if (!name.matches("[a-z][a-z0-9-]*")) {
      throw new IllegalArgumentException(
          "a style name is lower-case letters, digits and hyphens, got '" + name + "'");
    }
    if (!(lineMm > 0)) {
      throw new IllegalArgumentException(
          "the style '" + name + "' has a line of " + lineMm + " mm");
    }
    dashMm = List.copyOf(dashMm);
  }

  public static PlanStyle lined(String name, int line, double lineMm) {
    return new PlanStyle(name, line, lineMm, OptionalInt.empty(), List.of());
  }

  public PlanStyle filled(int rgb) {
    return new PlanStyle(name, line, lineMm, OptionalInt.of(rgb), dashMm);
  }

  public PlanStyle dashed(double drawnMm, double openMm) {
    return new PlanStyle(name, line, lineMm, fill, List.of(drawnMm, openMm));
  }
}
