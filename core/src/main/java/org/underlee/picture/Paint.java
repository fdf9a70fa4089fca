package org.underlee.picture;

/**
 * How a surface looks.
 *
 * @param rgb {@code 0xRRGGBB}, as seen in full light
 * @param opacity 1 for a solid part; less for context, which is seen and picked through
 */
public record Paint(int rgb, double opacity) {
  /**
   * @throws IllegalArgumentException when the colour has more than 24 bits or the opacity is not
   *     above 0 and at most 1
   */
  public Paint {
    if (rgb >>> 24 != 0) {
      throw new IllegalArgumentException(
          "the colour 0x" + Integer.toHexString(rgb) + " is not 0xRRGGBB");
    }
    if (!(opacity > 0 && opacity <= 1)) {
      throw new IllegalArgumentException("an opacity is above 0 and at most 1, got " + opacity);
    }
  }

  public static Paint solid(int rgb) {
    return new Paint(rgb, 1);
  }

  public Paint faded(double share) {
    return new Paint(rgb, share);
  }

  public boolean isSolid() {
    return opacity == 1;
  }
}
