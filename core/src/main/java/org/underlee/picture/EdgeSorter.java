package org.underlee.picture;

import org.underlee.picture.BandLists.Gathered;

/** Finds which edges are drawn from the viewer's side, and in which bands they may leave a mark. */
final class EdgeSorter {
  private final FrameView view;
  private final SurfaceModel model;
  private final ScreenPlaces places;
  private final float[] facing;
  private final int rowsOfBand;
  private final double thickness;
  private final NearClip clip;
  private final double[] ends = new double[9];
  private final Gathered solid = new Gathered(FrameStore.CHUNK);
  private final Gathered faded = new Gathered(FrameStore.CHUNK);

  EdgeSorter(FrameView view) {
    this.view = view;
    model = view.model();
    places = view.store().places;
    facing = view.store().facing;
    rowsOfBand = view.rowsOfBand();
    thickness = EdgePainter.LINE * view.settings().fineness();
    clip = new NearClip(view.projection());
  }

  void sort(int chunk) {
    solid.clear();
    faded.clear();
    int end = Math.min(model.edgeCount(), (chunk + 1) * FrameStore.CHUNK);
    ShapeColours colours = view.colours();
    for (int e = chunk * FrameStore.CHUNK; e < end; e++) {
      int shape = model.edgeShape[e];
      if (!colours.isHidden(shape) && shows(e, shape)) {
        gather(e, colours.isSolid(shape) ? solid : faded);
      }
    }
    view.store().lines.get(chunk).take(solid, view.bands());
    view.store().fadedLines.get(chunk).take(faded, view.bands());
  }

  /** Whether an edge is drawn from here, but for what other parts hide of it. */
  private boolean shows(int e, int shape) {
    int faceB = model.edgeFaces[2 * e + 1];
    boolean towardA = facing[model.edgeFaces[2 * e]] > 0;
    boolean towardB = faceB == FeatureEdges.NO_FACE ? towardA : facing[faceB] > 0;
    if (!model.edgeCrease[e]) {
      return towardA != towardB;
    }
    return towardA || towardB || !model.oneSided[shape];
  }

  private void gather(int e, Gathered to) {
    int a = model.edgeEnds[2 * e];
    int b = model.edgeEnds[2 * e + 1];
    if (places.isPlain(a) && places.isPlain(b)) {
      double sample = 1.0 / Projection.SUBSAMPLES;
      gather(
          e,
          sample * Math.min(places.x[a], places.x[b]),
          sample * Math.max(places.x[a], places.x[b]),
          sample * Math.min(places.y[a], places.y[b]),
          sample * Math.max(places.y[a], places.y[b]),
          to);
    } else if (clip.line(model, e, ends)) {
      double[] p = clip.screen();
      gather(
          e,
          Math.min(p[0], p[3]),
          Math.max(p[0], p[3]),
          Math.min(p[1], p[4]),
          Math.max(p[1], p[4]),
          to);
    }
  }

  private void gather(int e, double left, double right, double upper, double lower, Gathered to) {
    int first = Math.max(0, (int) Math.floor(upper - thickness));
    int last = Math.min(view.height() - 1, (int) Math.floor(lower + thickness));
    if (first <= last && right >= -thickness && left <= view.width() + thickness) {
      to.add(e, first / rowsOfBand, last / rowsOfBand);
    }
  }
}
