package org.underlee.picture;

/** Arithmetic on {@code 0xRRGGBB} and {@code 0xAARRGGBB} colours, by channel. */
final class Colours {
  static final int OPAQUE = 0xff000000;

  private Colours() {}

  /** An opaque colour of channels from 0 to 255. */
  static int opaque(int red, int green, int blue) {
    return OPAQUE | (red << 16) | (green << 8) | blue;
  }

  /** The colour at {@code light} times its brightness, with the alpha unchanged. */
  static int lit(int argb, double light) {
    int lit =
        opaque(
            channel(light * (argb >> 16 & 255)),
            channel(light * (argb >> 8 & 255)),
            channel(light * (argb & 255)));
    return (argb & OPAQUE) | (lit & ~OPAQUE);
  }

  /** The colour that is {@code share} of {@code over} and the rest {@code under}; opaque. */
  static int mix(int under, int over, double share) {
    return opaque(
        mixed(under >> 16 & 255, over >> 16 & 255, share),
        mixed(under >> 8 & 255, over >> 8 & 255, share),
        mixed(under & 255, over & 255, share));
  }

  static int withAlpha(int rgb, double opacity) {
    return (channel(255 * opacity) << 24) | (rgb & ~OPAQUE);
  }

  private static int mixed(int under, int over, double share) {
    return channel(under + (over - under) * share);
  }

  private static int channel(double value) {
    return Math.min(255, (int) (value + 0.5));
  }
}
