package org.underlee.picture;

import org.underlee.geom.Vec3;

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
    Vec3 normal =
        projection.directionToView(
            turn * model.normals[3 * f],
            turn * model.normals[3 * f + 1],
            turn * model.normals[3 * f + 2]);
    int shape = model.faceShape[f];
    int colour = Colours.lit(view.colours().surface(shape), Light.on(normal));
    int a = model.corners[3 * f];
    int b = model.corners[3 * f + 1];
    int c = model.corners[3 * f + 2];
    if (places.isPlain(a) && places.isPlain(b) && places.isPlain(c)) {
      places.copy(a, corners, 0);
      places.copy(b, corners, 3);
      places.copy(c, corners, 6);
      fill(f, normal, corners, 3, 6, layer, colour, model.shapeId[shape]);
      return;
    }
    int count = clip.triangle(model, f, corners);
    for (int i = 1; i + 1 < count; i++) {
      fill(f, normal, clip.screen(), 3 * i, 3 * i + 3, layer, colour, model.shapeId[shape]);
    }
  }

  private void fill(int f, Vec3 normal, double[] p, int b, int c, Layer layer, int colour, int id) {
    boolean flat = Math.abs(facing[f]) > GRAZING;
    DepthPlane plane =
        flat
            ? projection.plane(normal, model.xyz, 3 * model.corners[3 * f])
            : DepthPlane.through(p, 0, b, c);
    TriangleFill.put(p, 0, b, c, plane, fields, 0);
    TriangleFill.draw(layer, fields, 0, colour, id);
  }
}
