package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;

/** Paints a picture band by band: layers of samples the size of a band, brought down to pixels. */
final class BandPainter {
  /** A layer of so many rows of samples stays in a processor's own cache at usual widths. */
  private static final int SAMPLE_ROWS = 32;

  private final RasterSettings settings;
  private final double tie;
  private final int background;
  private final ScreenTriangles overlay;
  private final int[] argb;
  private final int[] ids;
  private final int sampleWidth;

  /** Layers that a band is done with, for the next one. */
  private final ConcurrentLinkedQueue<Layer> spare = new ConcurrentLinkedQueue<>();

  /** Draws what is in a band. */
  interface Content {
    /**
     * Draws on a band.
     *
     * @param layer full of background
     * @param more gives empty layers for the same rows
     */
    void draw(int band, Layer layer, Supplier<Layer> more);
  }

  /**
   * A painter of one picture.
   *
   * @param tie see {@link Layer}
   * @param background {@code 0xRRGGBB}
   * @param overlay drawn over the content; it cannot be picked
   */
  BandPainter(RasterSettings settings, double tie, int background, ScreenTriangles overlay) {
    this.settings = settings;
    this.tie = tie;
    this.background = Colours.OPAQUE | background;
    this.overlay = overlay;
    argb = new int[settings.width() * settings.height()];
    ids = new int[settings.width() * settings.height()];
    sampleWidth = settings.width() * settings.fineness();
  }

  /** How many rows of pixels a band has. */
  static int rows(RasterSettings settings) {
    return Math.max(1, SAMPLE_ROWS / settings.fineness());
  }

  /** How many bands a picture has. */
  static int bands(RasterSettings settings) {
    return (settings.height() + rows(settings) - 1) / rows(settings);
  }

  int bands() {
    return bands(settings);
  }

  Image image() {
    return new Image(settings.width(), settings.height(), argb, ids);
  }

  void paint(int band, Content content) {
    int first = band * rows(settings);
    int rows = Math.min(rows(settings), settings.height() - first);
    List<Layer> used = new ArrayList<>();
    Layer layer = layer(first, rows, background, used);
    content.draw(band, layer, () -> layer(first, rows, 0, used));
    if (overlay.isEmpty() && settings.fineness() == 1) {
      layer.copy(argb, ids);
    } else {
      pickIds(layer, first, rows);
      layer.forgetDepth();
      overlay.draw(layer);
      shrink(layer, first, rows);
    }
    spare.addAll(used);
  }

  private Layer layer(int first, int rows, int colour, List<Layer> used) {
    int fine = settings.fineness();
    Layer before = spare.poll();
    Layer layer = before == null ? new Layer(sampleWidth, rows(settings) * fine, tie) : before;
    layer.start(first * fine, rows * fine, colour);
    used.add(layer);
    return layer;
  }

  private void pickIds(Layer layer, int first, int rows) {
    int fine = settings.fineness();
    for (int y = 0; y < rows; y++) {
      int row = (y * fine + fine / 2) * sampleWidth + fine / 2;
      for (int x = 0; x < settings.width(); x++) {
        ids[(first + y) * settings.width() + x] = layer.id(row + x * fine);
      }
    }
  }

  /** Each pixel is the mean of its samples. */
  private void shrink(Layer layer, int first, int rows) {
    Mean mean = new Mean(settings.fineness());
    for (int y = 0; y < rows; y++) {
      for (int x = 0; x < settings.width(); x++) {
        argb[(first + y) * settings.width() + x] = mean.of(layer, x, y);
      }
    }
  }

  /** Of the samples of a pixel, rounded to the nearest by channel. */
  private record Mean(int fine, int inverse) {
    /** Sums of 64 bytes times this over their number fit in 31 bits, and come out exact. */
    private static final int SHIFT = 20;

    private static final int RED_AND_BLUE = 0xff00ff;

    Mean(int fine) {
      this(fine, (1 << SHIFT) / (fine * fine) + 1);
    }

    int of(Layer layer, int x, int y) {
      int half = fine * fine / 2;
      int redAndBlue = (half << 16) | half;
      int green = half;
      for (int j = 0; j < fine; j++) {
        int row = (y * fine + j) * layer.width() + x * fine;
        for (int i = row; i < row + fine; i++) {
          int c = layer.argb(i);
          redAndBlue += c & RED_AND_BLUE;
          green += c >> 8 & 255;
        }
      }
      return Colours.opaque(part(redAndBlue >>> 16), part(green), part(redAndBlue & 0xffff));
    }

    private int part(int sum) {
      return (sum * inverse) >>> SHIFT;
    }
  }
}
