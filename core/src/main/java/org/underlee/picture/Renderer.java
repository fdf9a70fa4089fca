package org.underlee.picture;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;
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

  /** Of the last picture, for the next one, which may be of the next scene. */
  private final AtomicReference<@Nullable FrameStore> spare;

  private Renderer(Scene scene, SurfaceModel model, AtomicReference<@Nullable FrameStore> spare) {
    this.scene = scene;
    this.model = model;
    this.spare = spare;
  }

  /** Finds the scene's edges and outsides, once. */
  public static Renderer of(Scene scene) {
    return new Renderer(scene, SurfaceModel.of(scene), new AtomicReference<>());
  }

  /**
   * A renderer of a scene that has meshes in common with this one's: what was found of those is
   * used again.
   */
  public Renderer with(Scene next) {
    return new Renderer(next, SurfaceModel.of(next, model), spare);
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
    FrameStore store =
        Optional.ofNullable(spare.getAndSet(null))
            .filter(s -> s.fits(model))
            .orElseGet(() -> new FrameStore(model));
    FrameView view = FrameView.of(model, camera, settings, look, store);
    BandPainter painter =
        new BandPainter(settings, model.tie, look.background(), notes(view.projection(), settings));
    try (Workers workers = new Workers(settings.threads())) {
      new Frame(view).prepare(workers);
      workers.runEach(painter.bands(), () -> painting(painter, new BandContent(view)));
    }
    spare.set(store);
    return painter.image();
  }

  private static IntConsumer painting(BandPainter painter, BandContent content) {
    return band -> painter.paint(band, content::draw);
  }

  private ScreenTriangles notes(Projection projection, RasterSettings settings) {
    int fine = settings.fineness();
    ScreenTriangles to = new ScreenTriangles(settings.width() * fine, settings.height() * fine);
    FlatPen pen = new FlatPen(to);
    for (Note note : scene.notes()) {
      Vec3 p = note.at().minus(model.centre);
      double[] at = {p.x(), p.y(), p.z()};
      projection.toView(at, 0, at, 0);
      if (projection.beforeNear(at[2]) >= 0) {
        projection.toScreen(at, 0, at, 0);
        pen.note(at[0], at[1], note.text(), note.height() * fine);
      }
    }
    return to;
  }
}
