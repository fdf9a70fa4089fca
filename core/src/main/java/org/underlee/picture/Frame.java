package org.underlee.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.underlee.geom.Vec3;

/**
 * One view of a model, brought to the screen: what each band then draws. Work is cut into numbered
 * chunks whose results stay in order, so the picture does not depend on the number of threads.
 */
final class Frame {
  private static final int CHUNK = 4096;

  /** Width of lines on solid parts, in pixels, and on faded ones. */
  private static final double LINE = 1.15;

  private static final double FADED_LINE = 0.8;

  /** How much darker than its surface a line is. */
  private static final double INK = 0.3;

  private static final double FADED_INK = 0.55;

  /** Steeper than this (about 83° to the viewer) a face is too thin on the screen to matter. */
  private static final double STEEPEST = 8;

  /**
   * At a cosine below this (3° from edge-on) the rounding of corners moves a surface's depth so
   * much that it must be held between its corners' depths.
   */
  private static final double GRAZING = 0.05;

  private final SurfaceModel model;
  private final Paint[] paints;
  private final boolean[] hidden;
  private final int background;
  private final Projection projection;
  private final int width;
  private final int height;
  private final int fineness;
  private final double[] view;
  private final double[] screen;
  private final float[] facing;
  private final boolean hasFaded;
  private final List<ScreenTriangles> triangles = new ArrayList<>();
  private final List<ScreenTriangles> fadedTriangles = new ArrayList<>();
  private final List<ScreenLines> lines = new ArrayList<>();
  private final List<ScreenLines> fadedLines = new ArrayList<>();

  Frame(SurfaceModel model, Camera camera, RasterSettings settings, Look look) {
    this.model = model;
    paints = look.of(model);
    hidden = new boolean[paints.length];
    for (int s = 0; s < hidden.length; s++) {
      hidden[s] = paints[s].equals(Look.HIDDEN);
    }
    background = look.background();
    fineness = settings.fineness();
    width = settings.width() * fineness;
    height = settings.height() * fineness;
    projection = new Projection(camera, model.centre, width, height);
    view = new double[3 * model.vertexCount()];
    screen = new double[3 * model.vertexCount()];
    facing = new float[model.faceCount()];
    hasFaded = Arrays.stream(paints).anyMatch(p -> !p.isSolid() && !p.equals(Look.HIDDEN));
    for (int i = 0; i < chunks(model.faceCount()); i++) {
      triangles.add(new ScreenTriangles(width, height));
      fadedTriangles.add(new ScreenTriangles(width, height));
    }
    for (int i = 0; i < chunks(model.edgeCount()); i++) {
      lines.add(new ScreenLines(width, height, LINE * fineness));
      fadedLines.add(new ScreenLines(width, height, FADED_LINE * fineness));
    }
  }

  Projection projection() {
    return projection;
  }

  void prepare(Workers workers) {
    workers.run(chunks(model.vertexCount()), this::placeVertices);
    workers.run(triangles.size(), this::placeFaces);
    workers.run(lines.size(), this::placeEdges);
  }

  /** Draws a band: solid parts, then, seen through, the faded ones. */
  void draw(Layer layer, Supplier<Layer> more) {
    triangles.forEach(t -> t.draw(layer));
    lines.forEach(l -> l.draw(layer));
    layer.background(background);
    if (hasFaded) {
      Layer faded = more.get();
      fadedTriangles.forEach(t -> t.draw(faded));
      fadedLines.forEach(l -> l.draw(faded));
      layer.lay(faded);
    }
  }

  private static int chunks(int count) {
    return (count + CHUNK - 1) / CHUNK;
  }

  private void placeVertices(int chunk) {
    int end = Math.min(model.vertexCount(), (chunk + 1) * CHUNK);
    for (int i = chunk * CHUNK; i < end; i++) {
      projection.toView(model.xyz, view, 3 * i);
      if (projection.beforeNear(view, 3 * i) >= 0) {
        projection.toScreen(view, 3 * i, screen, 3 * i);
      }
    }
  }

  private void placeFaces(int chunk) {
    int end = Math.min(model.faceCount(), (chunk + 1) * CHUNK);
    NearClip clip = new NearClip(projection);
    for (int f = chunk * CHUNK; f < end; f++) {
      Vec3 normal =
          projection.directionToView(
              model.normals[3 * f], model.normals[3 * f + 1], model.normals[3 * f + 2]);
      facing[f] = (float) projection.facing(normal, view, 3 * model.corners[3 * f]);
      int shape = model.faceShape[f];
      if (hidden[shape]) {
        continue;
      }
      if (facing[f] > 0 || (facing[f] < 0 && !model.oneSided[shape])) {
        placeFace(f, facing[f] > 0 ? normal : normal.negated(), chunk, clip);
      }
    }
  }

  private void placeFace(int f, Vec3 normal, int chunk, NearClip clip) {
    Paint paint = paints[model.faceShape[f]];
    ScreenTriangles to = (paint.isSolid() ? triangles : fadedTriangles).get(chunk);
    int a = 3 * model.corners[3 * f];
    int b = 3 * model.corners[3 * f + 1];
    int c = 3 * model.corners[3 * f + 2];
    boolean whole = isInFront(a) && isInFront(b) && isInFront(c);
    if (whole && !to.mayMeet(screen, a, b, c)) {
      return;
    }
    Shape shape = model.shapes.get(model.faceShape[f]);
    int colour = Colours.lit(Colours.withAlpha(paint.rgb(), paint.opacity()), Light.on(normal));
    boolean flat = Math.abs(facing[f]) > GRAZING;
    if (whole) {
      DepthPlane plane =
          flat ? projection.plane(normal, view, a) : DepthPlane.through(screen, a, b, c);
      to.add(screen, a, b, c, plane, colour, shape.id());
      return;
    }
    int corners = clip.triangle(view, a, b, c);
    double[] cut = clip.screen();
    for (int i = 1; i + 1 < corners; i++) {
      if (!to.mayMeet(cut, 0, 3 * i, 3 * i + 3)) {
        continue;
      }
      DepthPlane plane =
          flat ? projection.plane(normal, view, a) : DepthPlane.through(cut, 0, 3 * i, 3 * i + 3);
      to.add(cut, 0, 3 * i, 3 * i + 3, plane, colour, shape.id());
    }
  }

  private boolean isInFront(int at) {
    return projection.beforeNear(view, at) >= 0;
  }

  private void placeEdges(int chunk) {
    int end = Math.min(model.edgeCount(), (chunk + 1) * CHUNK);
    NearClip clip = new NearClip(projection);
    for (int e = chunk * CHUNK; e < end; e++) {
      if (!hidden[model.edgeShape[e]] && shows(e)) {
        placeEdge(e, chunk, clip);
      }
    }
  }

  /** Whether an edge is drawn from here, but for what other parts hide of it. */
  private boolean shows(int e) {
    int faceB = model.edgeFaces[2 * e + 1];
    boolean towardA = facing[model.edgeFaces[2 * e]] > 0;
    boolean towardB = faceB == FeatureEdges.NO_FACE ? towardA : facing[faceB] > 0;
    if (!model.edgeCrease[e]) {
      return towardA != towardB;
    }
    return towardA || towardB || !model.oneSided[model.edgeShape[e]];
  }

  private void placeEdge(int e, int chunk, NearClip clip) {
    int a = 3 * model.edgeEnds[2 * e];
    int b = 3 * model.edgeEnds[2 * e + 1];
    if (!clip.line(view, a, b)) {
      return;
    }
    Shape shape = model.shapes.get(model.edgeShape[e]);
    Paint paint = paints[model.edgeShape[e]];
    boolean solid = paint.isSolid();
    double thickness = (solid ? LINE : FADED_LINE) * fineness;
    double sample =
        projection.metresPerSample() * Math.max(clip.magnification(0), clip.magnification(1));
    double own = sample * (1 + steepness(e) * (thickness / 2 + 1)) + model.tie;
    int colour =
        Colours.lit(
            Colours.withAlpha(paint.rgb(), solid ? 1 : lineOpacity(paint)),
            solid ? INK : FADED_INK);
    (solid ? lines : fadedLines)
        .get(chunk)
        .add(clip.screen(), 0, 3, own, sample / 2 + model.tie, colour, shape.id());
  }

  /** Lines of context are a little stronger than its surfaces, or they would be lost. */
  private static double lineOpacity(Paint paint) {
    return Math.min(1, 1.6 * paint.opacity());
  }

  /** The greatest slope away from the viewer of the faces in sight beside an edge. */
  private double steepness(int e) {
    double steepest = 0;
    for (int k = 0; k < 2; k++) {
      int face = model.edgeFaces[2 * e + k];
      if (face != FeatureEdges.NO_FACE) {
        double cosine = Math.abs(facing[face]);
        boolean seen = facing[face] > 0 || !model.oneSided[model.edgeShape[e]];
        double slope = Math.sqrt(Math.max(0, 1 - cosine * cosine)) / Math.max(cosine, 1e-6);
        steepest = seen ? Math.max(steepest, Math.min(STEEPEST, slope)) : steepest;
      }
    }
    return steepest;
  }
}
