package org.underlee.picture;

import java.util.Set;

/**
 * Draws a rim around some shapes of a finished picture, just inside of where they are seen, so that
 * they stand out by more than their colour.
 */
public final class Rim {
  private static final int OPAQUE = 0xff000000;

  private final Image image;
  private final int[] ids;
  private final boolean[] chosen;

  private Rim(Image image, Set<Integer> chosen) {
    this.image = image;
    ids = image.ownIds();
    this.chosen = new boolean[chosen.stream().mapToInt(Integer::intValue).max().orElse(0) + 1];
    chosen.forEach(id -> this.chosen[id] = true);
  }

  /**
   * The picture with the rim, with the same things to pick.
   *
   * @param shapes ids of the shapes that are within it together
   * @param rgb its colour, {@code 0xRRGGBB}
   * @param wide pixels of the picture
   */
  public static Image around(Image image, Set<Integer> shapes, int rgb, int wide) {
    return shapes.isEmpty() ? image : new Rim(image, shapes).drawn(OPAQUE | rgb, wide);
  }

  private Image drawn(int argb, int wide) {
    int[] pixels = image.pixels();
    for (int y = 0; y < image.height(); y++) {
      for (int x = 0; x < image.width(); x++) {
        if (has(x, y) && isAtBorder(x, y, wide)) {
          pixels[y * image.width() + x] = argb;
        }
      }
    }
    return image.recoloured(pixels);
  }

  private boolean isAtBorder(int x, int y, int wide) {
    return !(has(x - wide, y) && has(x + wide, y) && has(x, y - wide) && has(x, y + wide));
  }

  /** The picture's own border is no border of what goes on beyond it. */
  private boolean has(int x, int y) {
    if (x < 0 || x >= image.width() || y < 0 || y >= image.height()) {
      return true;
    }
    int id = ids[y * image.width() + x];
    return id < chosen.length && chosen[id];
  }
}
