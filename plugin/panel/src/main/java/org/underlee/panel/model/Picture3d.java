package org.underlee.panel.model;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.picture.DeckPicture;
import org.underlee.picture.DeckPicture.Family;
import org.underlee.picture.Image;
import org.underlee.picture.RasterSettings;

/** The 3-D picture: prepared and drawn beside the screen's thread. */
public final class Picture3d implements AutoCloseable {
  private static final int THREADS = 2;

  private final Newest preparing;
  private final OneAtATime drawing;
  private final SceneMaker maker = new SceneMaker();
  private final ReadOnlyObjectWrapper<Optional<Image>> image =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Tone> tone = new SimpleObjectProperty<>(Tone.LIGHT);
  private final ReadOnlyObjectWrapper<Section> section = new ReadOnlyObjectWrapper<>(Section.OFF);
  private final BooleanProperty labels = new SimpleBooleanProperty(false);
  private final Set<Family> shown = EnumSet.allOf(Family.class);
  private final ReadOnlyLongWrapper shownEdition = new ReadOnlyLongWrapper();
  private final ReadOnlyLongWrapper preparedEdition = new ReadOnlyLongWrapper();
  private SceneMaker.@Nullable Made made;

  /** What the newest picture shows, which may be older than what is made ready. */
  private @Nullable DeckPicture drawnPicture;

  private Optional<Orbit> fitted = Optional.empty();
  private @Nullable Orbit orbit;
  private @Nullable Result result;
  private Set<Item> selection = Set.of();
  private int width;
  private int height;
  private double scale = 1;

  public Picture3d(Executor screen) {
    preparing = new Newest("preparing a picture", screen);
    drawing = new OneAtATime(screen, this::job, this::drawn);
    tone.addListener((o, before, now) -> redraw(true));
    labels.addListener((o, before, now) -> redraw(true));
  }

  /** The newest picture. */
  public ReadOnlyObjectProperty<Optional<Image>> image() {
    return image.getReadOnlyProperty();
  }

  /** {@link Result#edition} of what the newest picture shows. */
  public ReadOnlyLongProperty shownEdition() {
    return shownEdition.getReadOnlyProperty();
  }

  /** {@link Result#edition} of what is ready to be drawn, or could not be made ready. */
  ReadOnlyLongProperty preparedEdition() {
    return preparedEdition.getReadOnlyProperty();
  }

  public ObjectProperty<Tone> tone() {
    return tone;
  }

  /** Which part of the deck is looked into. */
  public ReadOnlyObjectProperty<Section> section() {
    return section.getReadOnlyProperty();
  }

  /** Looks into a part of the deck; not fine while a hand drags. */
  public void cut(Section next, boolean fine) {
    section.set(next);
    prepare(fine);
  }

  /** How large all of it is along an axis, metres; zero before there is a picture. */
  public double size(Section.Axis axis) {
    Box box = made == null ? Box.EMPTY : made.whole().box();
    return box.isEmpty() ? 0 : axis.of(box.size());
  }

  /** Whether names are written where there is room, once the view is still. */
  public BooleanProperty labels() {
    return labels;
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
    boolean samePicture = result != null && result.showsSameAs(next);
    result = next;
    if (samePicture) {
      redraw(fine);
      return;
    }
    if (!sameModel) {
      section.set(Section.OFF);
    }
    prepare(fine);
  }

  /** Another model is being read, or none could be: nothing of the last one stays. */
  void clear() {
    preparing.cancel();
    result = null;
    made = null;
    drawnPicture = null;
    orbit = null;
    section.set(Section.OFF);
    image.set(Optional.empty());
  }

  private void prepare(boolean fine) {
    Result of = result;
    if (of != null) {
      Section within = section.get();
      preparing.follow(() -> maker.make(of, within), m -> prepared(m, fine), e -> failed(of));
    }
  }

  private void failed(Result of) {
    image.set(Optional.empty());
    preparedEdition.set(of.edition());
  }

  private void prepared(SceneMaker.Made next, boolean fine) {
    boolean fit = made == null || isToFit(made.whole().result(), next.whole().result());
    made = next;
    if (fit || orbit == null) {
      look(Viewpoint.FROM_BELOW);
    }
    redraw(fine);
    preparedEdition.set(next.whole().prepared().edition());
  }

  /**
   * Another model is looked at as a whole; and a view of the framing alone that nobody has turned
   * makes room for what hangs below it.
   */
  private boolean isToFit(Result before, Result now) {
    return !before.isOfSameModelAs(now)
        || (!before.isLaidOut() && now.isLaidOut() && Optional.ofNullable(orbit).equals(fitted));
  }

  /**
   * Draws at another size.
   *
   * @param pixelsWide of the screen itself (likewise high)
   * @param screenScale of these for one of a screen without scaling
   */
  public void resize(int pixelsWide, int pixelsHigh, double screenScale) {
    if (pixelsWide != width || pixelsHigh != height || screenScale != scale) {
      boolean first = width == 0;
      width = pixelsWide;
      height = pixelsHigh;
      scale = screenScale;
      if (first && made != null) {
        look(Viewpoint.FROM_BELOW);
      }
      redraw(true);
    }
  }

  /** Looks at the whole deck from a usual side. */
  public void look(Viewpoint from) {
    if (made != null) {
      lookFrom(made.whole().frame().direction(from.eye()));
    }
  }

  /** Looks at the whole deck from where it is looked at now. */
  public void showAll() {
    orbit().map(Orbit::toViewer).ifPresent(this::lookFrom);
  }

  private void lookFrom(Vec3 eye) {
    List<Vec3> subject = made == null || width == 0 ? List.of() : made.whole().subject();
    if (!subject.isEmpty()) {
      orbit = Orbit.around(eye, subject, (double) width / height);
      fitted = Optional.of(orbit);
      redraw(true);
    }
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

  void select(Set<Item> items, Bringing how) {
    selection = Set.copyOf(items);
    bring(how);
    redraw(true);
  }

  /** Moves the view to what is selected, from the same side; not when that is not drawn. */
  private void bring(Bringing how) {
    Orbit from = orbit;
    if (made == null || from == null || width == 0 || how == Bringing.NOT) {
      return;
    }
    List<Vec3> points =
        made.whole().corners(Highlight.ids(made.whole().picture(), selection, result));
    if (!points.isEmpty()) {
      orbit = from.brought(points, (double) width / height, how);
    }
  }

  public boolean hasSelection() {
    return !selection.isEmpty();
  }

  /**
   * Goes near what is selected, with the section box around it; nothing happens when that is not
   * drawn.
   */
  public void lookInto() {
    Orbit from = orbit;
    if (made != null && from != null) {
      made.whole()
          .around(Highlight.ids(made.whole().picture(), selection, result))
          .ifPresent(
              near -> {
                orbit = Orbit.around(from.toViewer(), near.subject(), (double) width / height);
                cut(near.section(), true);
              });
    }
  }

  /** What is at a pixel. */
  public Optional<Item> pick(int x, int y) {
    DeckPicture shownNow = drawnPicture;
    if (shownNow == null) {
      return Optional.empty();
    }
    return image
        .get()
        .filter(i -> x >= 0 && y >= 0 && x < i.width() && y < i.height())
        .map(i -> i.id(x, y))
        .filter(id -> id > 0 && id <= shownNow.subjects().size())
        .map(id -> item(shownNow.subject(id)));
  }

  private static Item item(DeckPicture.Subject subject) {
    return subject.isPart() ? new Item.OfPart(subject.id()) : new Item.OfElement(subject.id());
  }

  private void redraw(boolean fine) {
    drawing.draw(fine);
  }

  private void drawn(PictureJob job, Image drawn) {
    if (made == null) {
      return; // of a model that is no longer there
    }
    drawnPicture = job.picture();
    image.set(Optional.of(drawn));
    shownEdition.set(job.edition());
  }

  private Optional<PictureJob> job(boolean fine) {
    SceneMaker.Made of = made;
    Orbit from = orbit;
    return of == null || from == null || width < 2 || height < 2
        ? Optional.empty()
        : Optional.of(job(of, from, fine));
  }

  private PictureJob job(SceneMaker.Made of, Orbit from, boolean fine) {
    return new PictureJob(
        of.renderer(),
        of.whole().picture(),
        of.whole().prepared().edition(),
        from,
        new RasterSettings(width, height, fine ? 2 : 1, THREADS),
        EnumSet.copyOf(shown.isEmpty() ? EnumSet.noneOf(Family.class) : shown),
        Highlight.ids(of.whole().picture(), selection, result),
        Optional.of(of.whole().result().layout()).filter(l -> fine && labels.get()),
        scale,
        tone.get());
  }

  @Override
  public void close() {
    preparing.close();
    drawing.close();
  }
}
