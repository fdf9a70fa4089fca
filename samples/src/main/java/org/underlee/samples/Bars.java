package org.underlee.samples;

/** Straight members along the axes of a field. */
final class Bars {
  private Bars() {}

  static Solid alongU(Section section, double from, double to, double v, double z) {
    return Solid.square(Frame.of(new Xyz(from, v, z), Xyz.X, Xyz.Y), to - from, section);
  }

  static Solid alongV(Section section, double u, double from, double to, double z) {
    return Solid.square(Frame.of(new Xyz(u, from, z), Xyz.Y, Xyz.X.times(-1)), to - from, section);
  }

  static Solid upright(Section section, double u, double v, double from, double to) {
    return Solid.square(Frame.of(new Xyz(u, v, from), Xyz.Z, Xyz.X), to - from, section);
  }

  /** Height of the middle of a section whose top is at {@code top}. */
  static double topped(Section section, double top) {
    return top - section.depth() / 2;
  }
}
