package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.underlee.geom.Vec2;
import org.underlee.picture.Image;
import org.underlee.picture.Ink;
import org.underlee.picture.PlanRaster;
import org.underlee.picture.ScaledDrawing;

/**
 * A flat drawing in a window that can be moved and zoomed; letters keep their size. All of it is
 * seen until a hand moves or zooms it, and then what the hand has chosen. Drawn beside the screen's
 * thread, the newest wish first.
 */
public final class FlatPicture implements AutoCloseable {
  /** So that letters of a technical drawing (1.8 mm) are 10 pixels high or so. */
  private static final double PIXELS_PER_MM = 5;

  private static final int THREADS = 2;

  private final Newest drawing;
  private final ReadOnlyObjectWrapper<Optional<Image>> image =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Tone> tone = new SimpleObjectProperty<>(Tone.LIGHT);
  private Optional<ScaledDrawing> plan = Optional.empty();
  private Optional<FlatWindow> window = Optional.empty();
  private int width;
  private int height;
  private double pixelScale = 1;
  private double letters = 1;
  private boolean byHand;
  private boolean toFit = true;
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
  public void show(Optional<ScaledDrawing> next, boolean fit) {
    plan = next;
    if (fit) {
      fit();
    } else {
      redraw();
    }
  }

  /** Draws at another size; what a hand has chosen to see stays in the middle. */
  public void resize(int pixelsWide, int pixelsHigh, double scale) {
    if (pixelsWide != width || pixelsHigh != height || scale != pixelScale) {
      width = pixelsWide;
      height = pixelsHigh;
      pixelScale = scale;
      resized();
    }
  }

  /**
   * Writes larger or smaller.
   *
   * @param share of the usual size of letters
   */
  public void letters(double share) {
    if (share != letters) {
      letters = share;
      resized();
    }
  }

  private void resized() {
    if (byHand) {
      window = window.map(w -> w.resized(width, height, pixelsPerMm()));
      redraw();
    } else {
      fit();
    }
  }

  /** Shows the whole drawing. */
  public void fit() {
    byHand = false;
    toFit = true;
    redraw();
  }

  /** Brings places of the drawing into view; nothing happens where there are none. */
  void bring(List<Vec2> places, Bringing how) {
    boolean allComes = toFit && how == Bringing.INTO_VIEW;
    if (!places.isEmpty() && how != Bringing.NOT && !allComes) {
      look(w -> how == Bringing.NEAR ? w.near(places) : w.holding(places));
    }
  }

  private double pixelsPerMm() {
    return PIXELS_PER_MM * pixelScale * letters;
  }

  /** The drawing moved under the hand, in pixels. */
  public void move(double right, double down) {
    look(w -> w.moved(right, down));
  }

  /** Nearer or further; what is at the pixel stays there. */
  public void zoom(double factor, double x, double y) {
    look(w -> w.zoomed(factor, x, y));
  }

  private void look(UnaryOperator<FlatWindow> change) {
    Optional<FlatWindow> next = window.map(change);
    if (!next.equals(window)) {
      window = next;
      byHand = true;
      toFit = false;
      redraw();
    }
  }

  /** What is seen; empty before the first picture. */
  Optional<FlatWindow> window() {
    return window;
  }

  /**
   * The place of the drawing that a pixel shows.
   *
   * @throws java.util.NoSuchElementException before the first picture
   */
  public Vec2 place(double x, double y) {
    return window.orElseThrow().place(x, y);
  }

  /** The pixel that shows a place of the drawing; likewise. */
  public Vec2 pixel(Vec2 place) {
    return window.orElseThrow().pixel(place);
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
    if (width < 2 || height < 2) {
      return;
    }
    busy = true;
    Job job = new Job(plan.get(), seen(), ink(tone.get()));
    drawing.run(job::draw, this::drawn, e -> busy = false);
  }

  /** What to look at; a view that no hand has chosen makes room for what does not fit in it. */
  private Seen seen() {
    Optional<FlatWindow> kept = toFit ? Optional.empty() : window;
    toFit = false;
    double perMm = pixelsPerMm();
    int wide = width;
    int high = height;
    boolean chosen = byHand;
    return d ->
        kept.filter(w -> chosen || w.shows(d))
            .orElseGet(() -> FlatWindow.fitting(d, wide, high, perMm));
  }

  private interface Seen {
    FlatWindow of(ScaledDrawing drawing);
  }

  private record Job(ScaledDrawing plan, Seen seen, Ink ink) {
    Drawn draw() {
      FlatWindow window = seen.of(plan);
      return new Drawn(
          window,
          PlanRaster.draw(
              plan.at(window.denominator()).legibleOn(window.sheet()),
              window.sheet(),
              window.pixelsPerMm(),
              THREADS,
              ink));
    }
  }

  private record Drawn(FlatWindow window, Image image) {}

  private static Ink ink(Tone tone) {
    return switch (tone) {
      case LIGHT -> Ink.DAY;
      case DARK -> Ink.NIGHT;
      case CONTRAST -> Ink.CONTRAST;
    };
  }

  private void drawn(Drawn next) {
    busy = false;
    if (!byHand) {
      window = Optional.of(next.window());
    }
    image.set(plan.map(p -> next.image())); // of a model that is no longer there: nothing
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
