package org.underlee.picture;

/** Draws edges that are seen, one by one, on solid shapes or on faded ones. */
final class EdgePainter {
  /** Width of lines on solid parts, in pixels, and on faded ones. */
  static final double LINE = 1.15;

  private static final double FADED_LINE = 0.8;

  /** Steeper than this (about 83° to the viewer) a face is too thin on the screen to matter. */
  private static final double STEEPEST = 8;

  /** Below this a cosine is no longer divided by. */
  private static final double EDGE_ON = 1e-6;

  private final FrameView view;
  private final SurfaceModel model;
  private final ScreenPlaces places;
  private final float[] facing;
  private final Projection projection;
  private final NearClip clip;
  private final double thickness;
  private final LinePen pen;
  private final double[] scratch = new double[9];
  private final double[] ends = new double[6];

  EdgePainter(FrameView view, boolean solid) {
    this.view = view;
    model = view.model();
    places = view.store().places;
    facing = view.store().facing;
    projection = view.projection();
    clip = new NearClip(projection);
    thickness = (solid ? LINE : FADED_LINE) * view.settings().fineness();
    pen = new LinePen(thickness);
  }

  /** Draws what the layer has of those in its band. */
  void paint(BandLists edges, int band, Layer layer) {
    int end = edges.from(band + 1);
    for (int i = edges.from(band); i < end; i++) {
      paint(edges.number(i), layer);
    }
  }

  private void paint(int e, Layer layer) {
    int a = model.edgeEnds[2 * e];
    int b = model.edgeEnds[2 * e + 1];
    if (places.isPlain(a) && places.isPlain(b)) {
      places.copy(a, ends, 0);
      places.copy(b, ends, 3);
    } else {
      clip.line(model, e, scratch);
      System.arraycopy(clip.screen(), 0, ends, 0, 6);
    }
    double larger = projection.magnificationAtDepth(Math.max(ends[2], ends[5]));
    double sample = projection.metresPerSample() * larger;
    double own = sample * (1 + steepness(e) * (thickness / 2 + 1)) + model.tie;
    int shape = model.edgeShape[e];
    int colour = view.colours().line(shape);
    pen.draw(layer, ends, own, sample / 2 + model.tie, colour, model.shapeId[shape]);
  }

  /** The greatest slope away from the viewer of the faces in sight beside an edge. */
  private double steepness(int e) {
    boolean all = !model.oneSided[model.edgeShape[e]];
    int faceB = model.edgeFaces[2 * e + 1];
    double a = cosine(model.edgeFaces[2 * e], all);
    double least = faceB == FeatureEdges.NO_FACE ? a : Math.min(a, cosine(faceB, all));
    return Math.min(STEEPEST, Math.sqrt(1 - least * least) / Math.max(least, EDGE_ON));
  }

  /** Of a face that is not in sight, as if it faced the viewer: it is not steep. */
  private double cosine(int face, boolean fromBehindToo) {
    float cosine = facing[face];
    return cosine > 0 || fromBehindToo ? Math.min(1, Math.abs(cosine)) : 1;
  }
}
