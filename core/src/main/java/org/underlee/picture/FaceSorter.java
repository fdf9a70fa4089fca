package org.underlee.picture;

import org.underlee.picture.BandLists.Gathered;

/** Finds which faces are seen from the viewer's side, and in which bands they cover samples. */
final class FaceSorter {
  private static final int HALF = Projection.SUBSAMPLES / 2;

  private final FrameView view;
  private final Projection projection;
  private final SurfaceModel model;
  private final ScreenPlaces places;
  private final int width;
  private final int height;
  private final int rowsOfBand;
  private final NearClip clip;
  private final double[] corners = new double[9];
  private final Gathered solid = new Gathered(FrameStore.CHUNK);
  private final Gathered faded = new Gathered(FrameStore.CHUNK);

  FaceSorter(FrameView view) {
    this.view = view;
    projection = view.projection();
    model = view.model();
    places = view.store().places;
    width = view.width();
    height = view.height();
    rowsOfBand = view.rowsOfBand();
    clip = new NearClip(projection);
  }

  void sort(int chunk) {
    solid.clear();
    faded.clear();
    int end = Math.min(model.faceCount(), (chunk + 1) * FrameStore.CHUNK);
    ShapeColours colours = view.colours();
    float[] facing = view.store().facing;
    for (int f = chunk * FrameStore.CHUNK; f < end; f++) {
      int shape = model.faceShape[f];
      if (!colours.isHidden(shape)) {
        float cosine = (float) projection.facing(model, f, model.oneSided[shape]);
        facing[f] = cosine;
        if (cosine > 0 || (cosine < 0 && !model.oneSided[shape])) {
          gather(f, colours.isSolid(shape) ? solid : faded);
        }
      }
    }
    view.store().faces.get(chunk).take(solid, view.bands());
    view.store().fadedFaces.get(chunk).take(faded, view.bands());
  }

  private void gather(int f, Gathered to) {
    int a = model.corners[3 * f];
    int b = model.corners[3 * f + 1];
    int c = model.corners[3 * f + 2];
    if (places.isPlain(a) && places.isPlain(b) && places.isPlain(c)) {
      int[] x = places.x;
      int[] y = places.y;
      gather(
          f,
          firstCentre(Math.min(x[a], Math.min(x[b], x[c]))),
          firstCentre(Math.max(x[a], Math.max(x[b], x[c]))),
          firstCentre(Math.min(y[a], Math.min(y[b], y[c]))),
          firstCentre(Math.max(y[a], Math.max(y[b], y[c]))),
          to);
    } else {
      gatherCut(f, to);
    }
  }

  private void gatherCut(int f, Gathered to) {
    int count = clip.triangle(model, f, corners);
    if (count > 0) {
      Span x = Span.of(clip.screen(), 0, count);
      Span y = Span.of(clip.screen(), 1, count);
      gather(
          f,
          TriangleFill.firstCentre(x.low),
          TriangleFill.firstCentre(x.high),
          TriangleFill.firstCentre(y.low),
          TriangleFill.firstCentre(y.high),
          to);
    }
  }

  private record Span(double low, double high) {
    static Span of(double[] p, int axis, int count) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < count; i++) {
        low = Math.min(low, p[3 * i + axis]);
        high = Math.max(high, p[3 * i + axis]);
      }
      return new Span(low, high);
    }
  }

  /** Takes a face that covers the centre of a sample, or may do so. */
  private void gather(int f, int left, int right, int upper, int lower, Gathered to) {
    int first = Math.max(0, upper);
    int end = Math.min(height, lower);
    if (first < end && Math.max(0, left) < Math.min(width, right)) {
      to.add(f, first / rowsOfBand, (end - 1) / rowsOfBand);
    }
  }

  /** The number of the first row or column whose centre is at or after a place. */
  private static int firstCentre(int place) {
    return -Math.floorDiv(HALF - place, Projection.SUBSAMPLES);
  }
}
