package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.ToDoubleFunction;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Vec2;
import org.underlee.picture.Image;
import org.underlee.picture.Ink;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanRaster;
import org.underlee.picture.PlanSheet;

/**
 * A flat drawing in a window that can be moved and zoomed; letters keep their size. Drawn beside
 * the screen's thread, the newest wish first.
 */
public final class FlatPicture implements AutoCloseable {
  /** So that letters of a technical drawing (1.8 mm) are 10 pixels high or so. */
  private static final double PIXELS_PER_MM = 5;

  private static final double MARGIN_MM = 8;
  private static final double MM = 1000;
  private static final int THREADS = 2;

  /** What is brought near has some room around it. */
  private static final double ROOM = 1.25;

  /** Metres a pixel; a small part is not brought nearer than this. */
  private static final double NEAREST = 0.0005;

  private final Newest drawing;
  private final ReadOnlyObjectWrapper<Optional<Image>> image =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Tone> tone = new SimpleObjectProperty<>(Tone.LIGHT);
  private Optional<PlanDrawing> plan = Optional.empty();
  private @Nullable PlanSheet fitted;
  private Vec2 centre = new Vec2(0, 0);
  private double metresPerPixel;
  private int width;
  private int height;
  private double pixelScale = 1;
  private boolean busy;
  private boolean again;

  public FlatPicture(Executor screen) {
    drawing = new Newest("drawing a plan", screen);
    tone.addListener((o, before, now) -> redraw());
  }

  public ReadOnlyObjectProperty<Optional<Image>> image() {
    return image.getReadOnlyProperty();
  }

  public ObjectProperty<Tone> tone() {
    return tone;
  }

  /**
   * Takes over another drawing.
   *
   * @param fit whether it is another subject, to be seen as a whole
   */
  public void show(Optional<PlanDrawing> next, boolean fit) {
    plan = next;
    if (fit || fitted == null) {
      fit();
    }
    redraw();
  }

  public void resize(int pixelsWide, int pixelsHigh, double scale) {
    if (pixelsWide != width || pixelsHigh != height) {
      width = pixelsWide;
      height = pixelsHigh;
      pixelScale = scale;
      fit();
      redraw();
    }
  }

  /** Shows the whole drawing. */
  public void fit() {
    if (plan.isEmpty() || width < 2 || height < 2) {
      return;
    }
    // letters keep their size, so that they need more room the smaller the drawing is
    double denominator = 1;
    for (int i = 0; i < 40; i++) {
      PlanSheet sheet = PlanSheet.of(plan.get(), denominator, MARGIN_MM);
      double over =
          Math.max(
              sheet.widthMm() * pixelsPerMm() / width, sheet.heightMm() * pixelsPerMm() / height);
      if (over <= 1) {
        break;
      }
      denominator *= Math.max(1.02, Math.sqrt(over));
    }
    PlanSheet sheet = PlanSheet.of(plan.get(), denominator, MARGIN_MM);
    fitted = sheet;
    centre = sheet.low().plus(sheet.high()).times(0.5);
    metresPerPixel = denominator / MM / pixelsPerMm();
  }

  /** Brings places of the drawing into view; nothing happens where there are none. */
  void bring(List<Vec2> places, Bringing how) {
    if (places.isEmpty() || how == Bringing.NOT || !(metresPerPixel > 0)) {
      return;
    }
    Vec2 low = new Vec2(least(places, Vec2::x), least(places, Vec2::y));
    Vec2 high = new Vec2(most(places, Vec2::x), most(places, Vec2::y));
    Vec2 size = high.minus(low);
    double least = Math.max(size.x() / width, size.y() / height) * ROOM;
    boolean isSeen = isSeen(low) && isSeen(high);
    if (how == Bringing.INTO_VIEW && isSeen) {
      return;
    }
    metresPerPixel =
        how == Bringing.NEAR ? Math.max(least, NEAREST) : Math.max(least, metresPerPixel);
    centre = low.plus(high).times(0.5);
    redraw();
  }

  private boolean isSeen(Vec2 place) {
    Vec2 at = pixel(place);
    return at.x() >= 0 && at.y() >= 0 && at.x() <= width && at.y() <= height;
  }

  private static double least(List<Vec2> places, ToDoubleFunction<Vec2> of) {
    return places.stream().mapToDouble(of).min().orElseThrow();
  }

  private static double most(List<Vec2> places, ToDoubleFunction<Vec2> of) {
    return places.stream().mapToDouble(of).max().orElseThrow();
  }

  private double pixelsPerMm() {
    return PIXELS_PER_MM * pixelScale;
  }

  /** The drawing moved under the hand, in pixels. */
  public void move(double right, double down) {
    centre = centre.plus(new Vec2(-right, down).times(metresPerPixel));
    redraw();
  }

  /** Nearer or further; what is at the pixel stays there. */
  public void zoom(double factor, double x, double y) {
    Vec2 under = place(x, y);
    metresPerPixel *= factor;
    Vec2 after = place(x, y);
    centre = centre.plus(under.minus(after));
    redraw();
  }

  /** The place of the drawing that a pixel shows. */
  public Vec2 place(double x, double y) {
    return centre.plus(new Vec2(x - width / 2.0, height / 2.0 - y).times(metresPerPixel));
  }

  /** The pixel that shows a place of the drawing. */
  public Vec2 pixel(Vec2 place) {
    Vec2 beside = place.minus(centre).times(1 / metresPerPixel);
    return new Vec2(width / 2.0 + beside.x(), height / 2.0 - beside.y());
  }

  private void redraw() {
    if (plan.isEmpty()) {
      image.set(Optional.empty());
      return;
    }
    if (busy) {
      again = true;
      return;
    }
    if (width < 2 || height < 2 || !(metresPerPixel > 0)) {
      return;
    }
    busy = true;
    PlanDrawing now = plan.get();
    double half = metresPerPixel / 2;
    Vec2 reach = new Vec2(width * half, height * half);
    PlanSheet window =
        new PlanSheet(metresPerPixel * pixelsPerMm() * MM, centre.minus(reach), centre.plus(reach));
    Ink ink = ink(tone.get());
    double perMm = pixelsPerMm();
    drawing.run(
        () -> PlanRaster.draw(now.legibleOn(window), window, perMm, THREADS, ink),
        this::drawn,
        e -> busy = false);
  }

  private static Ink ink(Tone tone) {
    return switch (tone) {
      case LIGHT -> Ink.DAY;
      case DARK -> Ink.NIGHT;
      case CONTRAST -> Ink.CONTRAST;
    };
  }

  private void drawn(Image next) {
    busy = false;
    image.set(plan.map(p -> next)); // of a model that is no longer there: nothing
    if (again) {
      again = false;
      redraw();
    }
  }

  @Override
  public void close() {
    drawing.close();
  }
}
