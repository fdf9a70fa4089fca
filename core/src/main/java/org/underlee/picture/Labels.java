package org.underlee.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Writes what things are called on a finished picture, each where the thing is seen and where there
 * is room: a plate lies in good part on its own thing, and none on another plate.
 */
public final class Labels {
  /** Height of capitals, pixels of a screen without scaling. */
  private static final double CAPITAL = 8;

  /** Free paper about the letters, for capitals 1 high. */
  private static final double SPACE = 0.5;

  /** A plate that lies less than this on what it names would hide more than it says. */
  private static final double ON_ITS_OWN = 0.3;

  /** Where a plate is tried, as shares of what is seen of a thing from above to below. */
  private static final double[] TRIED = {0.5, 0.35, 0.65, 0.2, 0.8};

  private final Image image;
  private final double height;
  private final SeenPixels seen;
  private final List<Plate> placed = new ArrayList<>();

  private Labels(Image image, List<Label> labels, double scale) {
    this.image = image;
    this.height = CAPITAL * scale;
    this.seen = SeenPixels.of(image, labels);
    for (Label label : labels) {
      place(label).ifPresent(placed::add);
    }
  }

  /**
   * A name for some shapes.
   *
   * @param ids of the shapes that it is the name of
   */
  public record Label(String text, Set<Integer> ids) {
    public Label {
      ids = Set.copyOf(ids);
    }
  }

  /** A name in a rectangle of pixels. */
  record Plate(String text, int left, int top, int width, int height) {
    /** Whether less than a pixel is free between this and another. */
    boolean touches(Plate o) {
      return left <= o.left + o.width
          && o.left <= left + width
          && top <= o.top + o.height
          && o.top <= top + height;
    }
  }

  /**
   * The picture with those names for which there is room; the first in the list are placed first.
   *
   * @param scale pixels of the picture for one of a screen without scaling
   */
  public static Image over(Image image, List<Label> labels, double scale, Ink ink) {
    Labels on = new Labels(image, labels, scale);
    return PlateWriter.write(image, on.placed, on.height, ink);
  }

  /** Where the names are written. */
  static List<Plate> places(Image image, List<Label> labels, double scale) {
    return List.copyOf(new Labels(image, labels, scale).placed);
  }

  /** On that of its shapes of which most is seen. */
  private Optional<Plate> place(Label label) {
    int[] pixels =
        label.ids().stream()
            .map(seen::of)
            .max(Comparator.comparingInt(p -> p.length))
            .orElse(new int[0]);
    int width = (int) Math.ceil((StrokeFont.BUILT_IN.width(label.text()) + 2 * SPACE) * height);
    int high = (int) Math.ceil((1 + 2 * SPACE) * height);
    if (pixels.length < ON_ITS_OWN * width * high) {
      return Optional.empty();
    }
    for (double share : TRIED) {
      int pixel = pixels[(int) (share * (pixels.length - 1))];
      Plate plate = about(pixel, label.text(), width, high);
      if (isInPicture(plate)
          && isOnItsOwn(plate, label)
          && placed.stream().noneMatch(plate::touches)) {
        return Optional.of(plate);
      }
    }
    return Optional.empty();
  }

  /** In the middle of what is seen of the thing to both sides of a pixel, and above and below. */
  private Plate about(int pixel, String text, int width, int high) {
    int x = pixel % image.width();
    int y = pixel / image.width();
    int middleX = x + (reach(x, y, 1, 0, width / 2) - reach(x, y, -1, 0, width / 2)) / 2;
    int middleY = y + (reach(x, y, 0, 1, high / 2) - reach(x, y, 0, -1, high / 2)) / 2;
    return new Plate(text, middleX - width / 2, middleY - high / 2, width, high);
  }

  /** How many pixels further the same thing is seen, and never more than so many. */
  private int reach(int x, int y, int stepX, int stepY, int most) {
    int id = image.id(x, y);
    int far = 0;
    while (far < most && has(x + (far + 1) * stepX, y + (far + 1) * stepY, id)) {
      far++;
    }
    return far;
  }

  private boolean has(int x, int y, int id) {
    return x >= 0 && y >= 0 && x < image.width() && y < image.height() && image.id(x, y) == id;
  }

  private boolean isInPicture(Plate p) {
    return p.left >= 0
        && p.top >= 0
        && p.left + p.width <= image.width()
        && p.top + p.height <= image.height();
  }

  private boolean isOnItsOwn(Plate p, Label label) {
    int own = 0;
    for (int y = p.top; y < p.top + p.height; y++) {
      for (int x = p.left; x < p.left + p.width; x++) {
        own += label.ids().contains(image.id(x, y)) ? 1 : 0;
      }
    }
    return own >= ON_ITS_OWN * p.width * p.height;
  }
}
