package org.underlee.picture;

import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.picture.Labels.Plate;

/** Writes names on plates with a thin rim over a picture; what can be picked there stays. */
final class PlateWriter {
  private static final int FINENESS = 3;

  private PlateWriter() {}

  /**
   * The picture with the plates on it.
   *
   * @param height of capitals, pixels
   */
  static Image write(Image image, List<Plate> plates, double height, Ink ink) {
    int[] argb = image.pixels();
    for (Plate plate : plates) {
      Image drawn = drawn(plate, height, ink);
      for (int y = 0; y < plate.height(); y++) {
        for (int x = 0; x < plate.width(); x++) {
          argb[(plate.top() + y) * image.width() + plate.left() + x] = drawn.argb(x, y);
        }
      }
    }
    return image.recoloured(argb);
  }

  private static Image drawn(Plate plate, double height, Ink ink) {
    RasterSettings settings = new RasterSettings(plate.width(), plate.height(), FINENESS, 1);
    double wide = plate.width() * FINENESS;
    double high = plate.height() * FINENESS;
    double capital = height * FINENESS;
    ScreenTriangles to = new ScreenTriangles((int) wide, (int) high);
    FlatPen pen = new FlatPen(to);
    int paper = ink.of(Palette.PAPER);
    int line = ink.of(Palette.INK);
    pen.area(Outline.rectangle(FINENESS, FINENESS, wide - FINENESS, high - FINENESS), paper);
    double left = (wide - pen.textWidth(plate.text(), capital)) / 2;
    pen.text(plate.text(), new Vec2(left, (high + capital) / 2), new Vec2(1, 0), capital, line);
    BandPainter painter = new BandPainter(settings, 0, line, to);
    for (int band = 0; band < painter.bands(); band++) {
      painter.paint(band, (b, layer, more) -> {});
    }
    return painter.image();
  }
}
