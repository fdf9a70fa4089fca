package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;

/** Paints a picture band by band: layers of samples the size of a band, brought down to pixels. */
final class BandPainter {
  private static final int ROWS = 32;

  private final RasterSettings settings;
  private final double tie;
  private final Content content;
  private final ScreenTriangles overlay;
  private final int[] argb;
  private final int[] ids;
  private final int sampleWidth;

  /** Layers that a band is done with, for the next one: one is larger than a processor's cache. */
  private final ConcurrentLinkedQueue<Layer> spare = new ConcurrentLinkedQueue<>();

  /** Draws what is in a band. */
  interface Content {
    /**
     * Covers a band.
     *
     * @param layer to be covered with opaque samples
     * @param more gives empty layers for the same rows
     */
    void draw(Layer layer, Supplier<Layer> more);
  }

  /**
   * A painter of one picture.
   *
   * @param tie see {@link Layer}
   * @param overlay drawn over the content; it cannot be picked
   */
  BandPainter(RasterSettings settings, double tie, Content content, ScreenTriangles overlay) {
    this.settings = settings;
    this.tie = tie;
    this.content = content;
    this.overlay = overlay;
    argb = new int[settings.width() * settings.height()];
    ids = new int[settings.width() * settings.height()];
    sampleWidth = settings.width() * settings.fineness();
  }

  int bands() {
    return (settings.height() + ROWS - 1) / ROWS;
  }

  Image image() {
    return new Image(settings.width(), settings.height(), argb, ids);
  }

  void paint(int band) {
    int first = band * ROWS;
    int rows = Math.min(ROWS, settings.height() - first);
    List<Layer> used = new ArrayList<>();
    Layer layer = layer(first, rows, used);
    content.draw(layer, () -> layer(first, rows, used));
    pickIds(layer, first, rows);
    layer.forgetDepth();
    overlay.draw(layer);
    shrink(layer, first, rows);
    spare.addAll(used);
  }

  private Layer layer(int first, int rows, List<Layer> used) {
    int fine = settings.fineness();
    Layer before = spare.poll();
    Layer layer = before == null ? new Layer(sampleWidth, ROWS * fine, tie) : before;
    layer.start(first * fine, rows * fine);
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
    for (int y = 0; y < rows; y++) {
      for (int x = 0; x < settings.width(); x++) {
        argb[(first + y) * settings.width() + x] = mean(layer, x, y);
      }
    }
  }

  private int mean(Layer layer, int x, int y) {
    int fine = settings.fineness();
    if (fine == 1) {
      return layer.argb(y * sampleWidth + x);
    }
    int count = fine * fine;
    int red = count / 2;
    int green = count / 2;
    int blue = count / 2;
    for (int j = 0; j < fine; j++) {
      int row = (y * fine + j) * sampleWidth + x * fine;
      for (int i = row; i < row + fine; i++) {
        int c = layer.argb(i);
        red += c >> 16 & 255;
        green += c >> 8 & 255;
        blue += c & 255;
      }
    }
    return Colours.opaque(red / count, green / count, blue / count);
  }
}
