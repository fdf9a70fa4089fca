package org.underlee.picture;

import org.underlee.geom.Vec3;

/**
 * Draws a scene on the CPU: flat-shaded surfaces with a depth buffer, creases and outlines as
 * lines, faded context seen through, and an id for each pixel. No display, no graphics card, no
 * fonts; the pixels are the same on every machine and for every number of threads.
 *
 * <p>A renderer holds the scene prepared, so that turning the view costs only the drawing. It may
 * be used from several threads at once.
 */
public final class Renderer {
  private final Scene scene;
  private final SurfaceModel model;

  private Renderer(Scene scene, SurfaceModel model) {
    this.scene = scene;
    this.model = model;
  }

  /** Finds the scene's edges and outsides, once. */
  public static Renderer of(Scene scene) {
    return new Renderer(scene, SurfaceModel.of(scene));
  }

  /**
   * A renderer of a scene that has meshes in common with this one's: what was found of those is
   * used again.
   */
  public Renderer with(Scene next) {
    return new Renderer(next, SurfaceModel.of(next, model));
  }

  public Scene scene() {
    return scene;
  }

  /** One picture of a scene. */
  public static Image draw(Scene scene, Camera camera, RasterSettings settings) {
    return of(scene).draw(camera, settings);
  }

  /**
   * One picture from one side. A pixel's id is that of the nearest solid shape at the sample just
   * right of and below its middle (at its middle when the fineness is odd), or, where there is
   * none, of the nearest faded one.
   */
  public Image draw(Camera camera, RasterSettings settings) {
    return draw(camera, settings, Look.PLAIN);
  }

  /** As {@link #draw(Camera, RasterSettings)}, seen in another way. */
  public Image draw(Camera camera, RasterSettings settings, Look look) {
    Frame frame = new Frame(model, camera, settings, look);
    ScreenTriangles notes = notes(frame.projection(), settings);
    BandPainter painter = new BandPainter(settings, model.tie, frame::draw, notes);
    try (Workers workers = new Workers(settings.threads())) {
      frame.prepare(workers);
      workers.run(painter.bands(), painter::paint);
    }
    return painter.image();
  }

  private ScreenTriangles notes(Projection projection, RasterSettings settings) {
    int fine = settings.fineness();
    ScreenTriangles to = new ScreenTriangles(settings.width() * fine, settings.height() * fine);
    FlatPen pen = new FlatPen(to);
    for (Note note : scene.notes()) {
      Vec3 p = note.at().minus(model.centre);
      double[] at = {p.x(), p.y(), p.z()};
      projection.toView(at, at, 0);
      if (projection.beforeNear(at, 0) >= 0) {
        projection.toScreen(at, 0, at, 0);
        pen.note(at[0], at[1], note.text(), note.height() * fine);
      }
    }
    return to;
  }
}
