package org.underlee.picture;

/** The paper and pens of a flat drawing: which colour a style's colour comes out as. */
public interface Ink {
  /** On white paper, as the styles are. */
  Ink DAY = rgb -> rgb;

  /**
   * On dark paper: light becomes dark and dark light, while a blue stays a blue. What was white
   * comes out as {@code 0x1d2326}.
   */
  Ink NIGHT = Ink::atNight;

  /** For eyes that need it: black paper, and nothing on it darker than the middle. */
  Ink CONTRAST = rgb -> rgb == Palette.PAPER ? 0 : strong(atNight(rgb), rgb);

  int of(int rgb);

  private static int atNight(int rgb) {
    int red = rgb >> 16 & 255;
    int green = rgb >> 8 & 255;
    int blue = rgb & 255;
    int least = Math.min(red, Math.min(green, blue));
    int most = Math.max(red, Math.max(green, blue));
    // keeps hue and the spread between the channels, and turns the lightness round
    int shift = 255 - most - least;
    return (night(red + shift, 0x1d) << 16)
        | (night(green + shift, 0x23) << 8)
        | night(blue + shift, 0x26);
  }

  private static int night(int channel, int paper) {
    int kept = Math.max(0, Math.min(255, channel));
    return paper + kept * (255 - paper) / 255;
  }

  /** Lines and letters, which are dark on white paper, come out at full strength. */
  private static int strong(int night, int day) {
    int light = Math.max(day >> 16 & 255, Math.max(day >> 8 & 255, day & 255));
    return light < 0x80 ? 0xffffff : night;
  }
}
