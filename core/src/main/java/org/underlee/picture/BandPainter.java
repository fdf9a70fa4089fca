package org.underlee.picture;

/** Paints a picture band by band: layers of samples the size of a band, brought down to pixels. */
final class BandPainter {
  private static final int ROWS = 32;

  private final RasterSettings settings;
  private final Frame frame;
  private final ScreenTriangles notes;
  private final double tie;
  private final int[] argb;
  private final int[] ids;
  private final int sampleWidth;

  BandPainter(RasterSettings settings, Frame frame, ScreenTriangles notes, double tie) {
    this.settings = settings;
    this.frame = frame;
    this.notes = notes;
    this.tie = tie;
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
    Layer solid = layer(first, rows);
    frame.drawSolid(solid);
    solid.background(Palette.BACKGROUND);
    if (frame.hasFaded()) {
      Layer faded = layer(first, rows);
      frame.drawFaded(faded);
      solid.lay(faded);
    }
    pickIds(solid, first, rows);
    solid.forgetDepth();
    notes.draw(solid);
    shrink(solid, first, rows);
  }

  private Layer layer(int first, int rows) {
    int fine = settings.fineness();
    Layer layer = new Layer(sampleWidth, rows * fine, tie);
    layer.start(first * fine, rows * fine);
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
