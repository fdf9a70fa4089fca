package org.underlee.picture;

/**
 * A model as it is seen in one picture.
 *
 * @param store where what is worked out for the picture goes
 * @param settings the picture's size
 */
record FrameView(
    SurfaceModel model,
    Projection projection,
    ShapeColours colours,
    FrameStore store,
    RasterSettings settings) {

  static FrameView of(
      SurfaceModel model, Camera camera, RasterSettings settings, Look look, FrameStore store) {
    int fine = settings.fineness();
    Projection projection =
        new Projection(camera, model.centre, settings.width() * fine, settings.height() * fine);
    return new FrameView(model, projection, new ShapeColours(model.shapes, look), store, settings);
  }

  /** In samples. */
  int width() {
    return settings.width() * settings.fineness();
  }

  /** In samples. */
  int height() {
    return settings.height() * settings.fineness();
  }

  int bands() {
    return BandPainter.bands(settings);
  }

  /** How many rows of samples a band has. */
  int rowsOfBand() {
    return BandPainter.rows(settings) * settings.fineness();
  }
}
