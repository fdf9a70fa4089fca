package org.underlee.panel.model;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Vec3;
import org.underlee.picture.DeckPicture;
import org.underlee.picture.DeckPicture.Family;
import org.underlee.picture.Image;
import org.underlee.picture.Look;
import org.underlee.picture.Paint;
import org.underlee.picture.Palette;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Shape;

/**
 * The 3-D picture: prepared and drawn beside the screen's thread. A picture that is asked for while
 * one is being drawn is drawn after it, and all those in between are left out.
 */
public final class Picture3d implements AutoCloseable {
  /** How a view is called, and from where it looks in the frame of the first field. */
  public enum View {
    FROM_BELOW("From below", -0.5, 0.75, -0.75),
    FROM_ABOVE("From above", -0.5, 0.75, 0.7),
    TOP("Top", 0, 0, 1),
    BOTTOM("Underside", 0, 0, -1),
    FRONT("Front", 0, 1, 0),
    SIDE("Side", -1, 0, 0);

    private final String words;
    private final double across;
    private final double along;
    private final double up;

    View(String words, double across, double along, double up) {
      this.words = words;
      this.across = across;
      this.along = along;
      this.up = up;
    }

    private Vec3 eye() {
      return new Vec3(across, along, up);
    }

    @Override
    public String toString() {
      return words;
    }
  }

  private static final Paint SELECTED = Paint.solid(0xe0813a);
  private static final int THREADS = 2;

  /** What to draw: everything that a frame depends on. */
  private record Request(
      Prepared prepared,
      Orbit orbit,
      RasterSettings settings,
      Set<Family> shown,
      Set<Integer> selected,
      Tone tone) {}

  private final Executor screen;
  private final Newest preparing;
  private final Newest drawing;
  private boolean again;
  private boolean fineAgain;
  private final ReadOnlyObjectWrapper<Optional<Image>> image =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Tone> tone = new SimpleObjectProperty<>(Tone.LIGHT);
  private final Set<Family> shown = EnumSet.allOf(Family.class);
  private @Nullable Prepared prepared;
  private final ReadOnlyLongWrapper shownEdition = new ReadOnlyLongWrapper();
  private @Nullable Orbit orbit;
  private @Nullable Result result;
  private Optional<Orbit> fitted = Optional.empty();
  private Set<Item> selection = Set.of();
  private int width;
  private int height;
  private boolean drawingNow;

  public Picture3d(Executor screen) {
    this.screen = screen;
    preparing = new Newest("preparing a picture", screen);
    drawing = new Newest("drawing", screen);
    tone.addListener((o, before, now) -> redraw(true));
  }

  /** The newest picture. */
  public ReadOnlyObjectProperty<Optional<Image>> image() {
    return image.getReadOnlyProperty();
  }

  /** {@link Result#edition} of what the newest picture shows. */
  public ReadOnlyLongProperty shownEdition() {
    return shownEdition.getReadOnlyProperty();
  }

  public ObjectProperty<Tone> tone() {
    return tone;
  }

  public boolean isShown(Family family) {
    return shown.contains(family);
  }

  public void show(Family family, boolean visible) {
    if (visible ? shown.add(family) : shown.remove(family)) {
      redraw(true);
    }
  }

  /**
   * Takes over a new result; the view stays where it is, unless it is of another model.
   *
   * @param fine whether to draw finely, and not as coarse as for a hand that drags
   */
  public void show(Result next, boolean fine) {
    boolean sameModel = result != null && result.isOfSameModelAs(next);
    if (result != null && result.showsSameAs(next)) {
      result = next;
      redraw(fine);
      return;
    }
    boolean fit = !sameModel || hasPartsNow(next);
    result = next;
    Prepared before = prepared;
    preparing.follow(
        () -> before == null ? Prepared.of(next) : before.next(next),
        p -> prepared(p, fit, fine),
        e -> image.set(Optional.empty()));
  }

  /** A view of the framing alone that nobody has turned makes room for what hangs below it. */
  private boolean hasPartsNow(Result next) {
    return result != null
        && !result.isLaidOut()
        && next.isLaidOut()
        && Optional.ofNullable(orbit).equals(fitted);
  }

  private void prepared(Prepared p, boolean fit, boolean fine) {
    prepared = p;
    if (fit || orbit == null) {
      look(View.FROM_BELOW);
    }
    redraw(fine);
  }

  public void resize(int pixelsWide, int pixelsHigh) {
    if (pixelsWide != width || pixelsHigh != height) {
      boolean first = width == 0;
      width = pixelsWide;
      height = pixelsHigh;
      if (first && prepared != null) {
        look(View.FROM_BELOW);
      }
      redraw(true);
    }
  }

  /** Looks at the whole deck from a usual side. */
  public void look(View view) {
    List<Vec3> subject = prepared == null ? List.of() : prepared.subject();
    if (subject.isEmpty() || result == null || width == 0) {
      return;
    }
    Vec3 eye =
        result
            .survey()
            .framing()
            .fields()
            .findFirst()
            .map(f -> f.frame().direction(view.eye()))
            .orElse(view.eye());
    orbit = Orbit.around(eye, subject, (double) width / height);
    fitted = Optional.of(orbit);
    redraw(true);
  }

  /** The view as it is turned by hand; empty before there is a picture. */
  public Optional<Orbit> orbit() {
    return Optional.ofNullable(orbit);
  }

  /** Moves the view by hand: drawn coarser until {@link #settle}. */
  public void move(Orbit next) {
    orbit = next;
    redraw(false);
  }

  /** Draws finely what a moving hand left coarse. */
  public void settle() {
    redraw(true);
  }

  public void select(Set<Item> items) {
    selection = Set.copyOf(items);
    redraw(true);
  }

  /** What is at a pixel. */
  public Optional<Item> pick(int x, int y) {
    DeckPicture shownNow = prepared == null ? null : prepared.picture();
    return image
        .get()
        .filter(i -> x >= 0 && y >= 0 && x < i.width() && y < i.height())
        .map(i -> i.id(x, y))
        .filter(id -> id > 0 && shownNow != null && id <= shownNow.subjects().size())
        .map(id -> item(java.util.Objects.requireNonNull(shownNow).subject(id)));
  }

  private static Item item(DeckPicture.Subject subject) {
    return subject.isPart() ? new Item.OfPart(subject.id()) : new Item.OfElement(subject.id());
  }

  private void redraw(boolean fine) {
    if (drawingNow) {
      again = true;
      fineAgain = fine;
      return;
    }
    Prepared now = prepared;
    if (now == null || orbit == null || width < 2 || height < 2) {
      return;
    }
    drawingNow = true;
    RasterSettings settings = new RasterSettings(width, height, fine ? 2 : 1, THREADS);
    Request request =
        new Request(
            now,
            orbit,
            settings,
            EnumSet.copyOf(shown.isEmpty() ? EnumSet.noneOf(Family.class) : shown),
            Highlight.ids(now.picture(), selection, result),
            tone.get());
    drawing.run(
        () -> draw(request), i -> drawn(i, request.prepared.edition()), e -> drawingNow = false);
  }

  private void drawn(Image drawn, long of) {
    drawingNow = false;
    image.set(Optional.of(drawn));
    shownEdition.set(of);
    if (again) {
      again = false;
      boolean fine = fineAgain;
      screen.execute(() -> redraw(fine));
    }
  }

  private static Image draw(Request r) {
    Look look = new Look(r.tone.pictureBackground(), s -> paint(s, r));
    return r.prepared.renderer().draw(r.orbit.camera(), r.settings, look);
  }

  private static Paint paint(Shape shape, Request r) {
    Family family = r.prepared.picture().subject(shape.id()).family();
    if (!r.shown.contains(family)) {
      return Look.HIDDEN;
    }
    if (r.selected.contains(shape.id())) {
      return SELECTED;
    }
    return family == Family.SURROUNDINGS && r.tone.isDark()
        ? Palette.CONTEXT.faded(0.16)
        : shape.paint();
  }

  @Override
  public void close() {
    preparing.close();
    drawing.close();
  }
}
