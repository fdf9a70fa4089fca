package org.underlee.picture;

/** Draws faces that are seen, one by one. */
final class FacePainter {
  /**
   * At a cosine below this (3° from edge-on) the rounding of corners moves a surface's depth so
   * much that it must be held between its corners' depths.
   */
  private static final double GRAZING = 0.05;

  private final FrameView view;
  private final SurfaceModel model;
  private final ScreenPlaces places;
  private final float[] facing;
  private final Projection projection;
  private final NearClip clip;
  private final double[] corners = new double[9];
  private final double[] normal = new double[3];
  private final double[] fields = new double[TriangleFill.FIELDS];

  FacePainter(FrameView view) {
    this.view = view;
    model = view.model();
    places = view.store().places;
    facing = view.store().facing;
    projection = view.projection();
    clip = new NearClip(projection);
  }

  /** Draws what the layer has of those in its band. */
  void paint(BandLists faces, int band, Layer layer) {
    int end = faces.from(band + 1);
    for (int i = faces.from(band); i < end; i++) {
      paint(faces.number(i), layer);
    }
  }

  private void paint(int f, Layer layer) {
    int turn = facing[f] > 0 ? 1 : -1;
    projection.directionToView(model.normals, 3 * f, turn, normal);
    int shape = model.faceShape[f];
    int colour = Colours.lit(view.colours().surface(shape), Light.on(normal));
    int a = model.corners[3 * f];
    int b = model.corners[3 * f + 1];
    int c = model.corners[3 * f + 2];
    if (places.isPlain(a) && places.isPlain(b) && places.isPlain(c)) {
      places.copy(a, corners, 0);
      places.copy(b, corners, 3);
      places.copy(c, corners, 6);
      fill(f, corners, 3, 6, layer, colour, model.shapeId[shape]);
      return;
    }
    int count = clip.triangle(model, f, corners);
    for (int i = 1; i + 1 < count; i++) {
      fill(f, clip.screen(), 3 * i, 3 * i + 3, layer, colour, model.shapeId[shape]);
    }
  }

  private void fill(int f, double[] p, int b, int c, Layer layer, int colour, int id) {
    TriangleFill.putCorners(p, 0, b, c, fields, 0);
    if (Math.abs(facing[f]) > GRAZING) {
      int place = 3 * model.corners[3 * f];
      projection.plane(normal, model.xyz, place, fields, TriangleFill.DEPTH);
    } else {
      DepthPlane.through(p, 0, b, c).put(fields, TriangleFill.DEPTH);
    }
    TriangleFill.draw(layer, fields, 0, colour, id);
  }
}
