package org.underlee.panel.model;

/** The panel's colour schemes. */
public enum Tone {
  LIGHT("Light", 0xf4f3ef),
  DARK("Dark", 0x1d2326),
  CONTRAST("High contrast", 0x000000);

  private final String words;
  private final int pictureBackground;

  Tone(String words, int pictureBackground) {
    this.words = words;
    this.pictureBackground = pictureBackground;
  }

  public String words() {
    return words;
  }

  /** Behind a 3-D picture, {@code 0xRRGGBB}. */
  public int pictureBackground() {
    return pictureBackground;
  }

  public boolean isDark() {
    return this != LIGHT;
  }

  public Tone next() {
    return switch (this) {
      case LIGHT -> DARK;
      case DARK -> CONTRAST;
      case CONTRAST -> LIGHT;
    };
  }
}
