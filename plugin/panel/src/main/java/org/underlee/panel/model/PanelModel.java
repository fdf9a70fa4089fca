package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.SimpleObjectProperty;
import org.underlee.panel.host.Host;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/** The whole panel without a screen: one model, one selection, one history, one list of words. */
public final class PanelModel implements AutoCloseable {
  private final Memory memory;
  private final Keeper keeper;
  private final Session session;
  private final Picture3d picture;
  private final Drawings drawings;
  private final Listing listing;
  private final Saving saving;
  private final ForTheSite forTheSite;
  private final Services services;
  private final ServiceFiles serviceFiles;
  private final Dropped dropped;
  private final Choices choices;
  private final AlsoDecided alsoDecided;
  private final Resyncing resyncing;
  private final RolesGiven roles;
  private final Selecting selecting;
  private final StayDry stayDry;
  private final OutletHand outlets;
  private final Offer offer;
  private final RecentFiles recent;
  private final Ratings ratings;
  private final OwnKit ownKit;
  private final Running running;
  private final FindingDesk findings;
  private final Newest rehearsing;
  private final ReadOnlyObjectWrapper<Optional<Lists>> rehearsed =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<UnitSystem> units = new SimpleObjectProperty<>(UnitSystem.METRIC);
  private final ObjectProperty<Settings> settings;

  /**
   * @param screen runs what it is given on the screen's thread, later
   */
  public PanelModel(Host host, Memory memory, Executor screen) {
    this.memory = memory;
    keeper = new Keeper(memory, screen);
    session = new Session(screen);
    picture = new Picture3d(screen);
    drawings = new Drawings(screen);
    listing = new Listing(screen);
    saving = new Saving(host, session, screen);
    forTheSite = new ForTheSite(session, saving, units);
    serviceFiles = new ServiceFiles(session);
    dropped = new Dropped(session, serviceFiles, this::open);
    services = new Services(session, saving, units, screen);
    alsoDecided = new AlsoDecided(session);
    choices = new Choices(session, units, screen);
    resyncing = new Resyncing(session, saving, units, screen);
    roles = new RolesGiven(session);
    selecting = new Selecting(host, session, picture, drawings, roles);
    stayDry = new StayDry(session, screen);
    outlets = new OutletHand(session, selecting.selection()::get);
    offer = new Offer(session);
    ratings = new Ratings(session, screen);
    ownKit = new OwnKit(session, screen);
    running = Running.of(session, saving, services, choices, resyncing);
    findings = new FindingDesk(session, selecting, listing.lists(), units);
    rehearsing = new Newest("rehearsing", screen);
    settings = new SimpleObjectProperty<>(memory.settings());
    recent = new RecentFiles(settings, session.model(), this::open, screen);
    setTone(settings.get().tone());
    session.workAt(selecting::field);
    session.keepPaceWith(picture.preparedEdition()::get);
    picture.preparedEdition().addListener((o, before, now) -> session.pictured());
    session
        .result()
        .addListener(
            (o, before, now) -> {
              now.ifPresentOrElse(this::show, this::clear);
              listing.show(now, units.get());
            });
    session.decisions().addListener((o, before, now) -> keep(now));
    running.words().addListener((o, before, now) -> host.progress(now, now.isEmpty() ? 1 : -1));
    settings.addListener((o, before, now) -> keeper.keep(now));
    drawings.letters(settings.get().letters());
    settings.addListener((o, before, now) -> drawings.letters(now.letters()));
    host.onOpen(this::open);
    host.onSelect(selecting::selectElements);
    host.openModel().ifPresent(this::open);
  }

  /** All that runs and can be stopped. */
  public Running running() {
    return running;
  }

  public RecentFiles recent() {
    return recent;
  }

  public Ratings ratings() {
    return ratings;
  }

  public OwnKit ownKit() {
    return ownKit;
  }

  public Session session() {
    return session;
  }

  public Drawings drawings() {
    return drawings;
  }

  public Services services() {
    return services;
  }

  public ServiceFiles serviceFiles() {
    return serviceFiles;
  }

  public AlsoDecided alsoDecided() {
    return alsoDecided;
  }

  public Dropped dropped() {
    return dropped;
  }

  public Choices choices() {
    return choices;
  }

  public Resyncing resyncing() {
    return resyncing;
  }

  public RolesGiven roles() {
    return roles;
  }

  public StayDry stayDry() {
    return stayDry;
  }

  public OutletHand outlets() {
    return outlets;
  }

  public Offer offer() {
    return offer;
  }

  public Saving saving() {
    return saving;
  }

  public ForTheSite forTheSite() {
    return forTheSite;
  }

  public Picture3d picture() {
    return picture;
  }

  /** The one selection, wherever it was made. */
  public ReadOnlyObjectProperty<Set<Item>> selection() {
    return selecting.selection();
  }

  public ObjectProperty<UnitSystem> units() {
    return units;
  }

  public ObjectProperty<Settings> settings() {
    return settings;
  }

  /** Why decisions and settings could not be kept, and what to do; empty where they are. */
  public ReadOnlyStringProperty notKept() {
    return keeper.lost();
  }

  /** While nothing is open: makes ready what opening a model needs. */
  public void rehearse() {
    rehearsing.run(Rehearsal::run, l -> rehearsed.set(Optional.of(l)), e -> {});
  }

  /** Lists of no model, for the screen to make ready with; empty before they are there. */
  public ReadOnlyObjectProperty<Optional<Lists>> rehearsed() {
    return rehearsed.getReadOnlyProperty();
  }

  /** Opens a model with what was decided about it when it was last open. */
  public void open(Path file) {
    settings.set(settings.get().opened(file));
    select(Set.of());
    session.open(file, memory.decisions(file).orElse(Decisions.FIRST));
  }

  private void keep(Decisions decisions) {
    session.model().get().ifPresent(m -> keeper.keep(m, decisions));
  }

  private void clear() {
    picture.clear();
    drawings.clear();
  }

  private void show(Result result) {
    boolean other =
        picture.image().get().isEmpty()
            || session.result().get().map(r -> r.design().isEmpty()).orElse(true);
    if (other) {
      units.set(settings.get().units().orElseGet(() -> unitsOf(result)));
    }
    picture.show(result, !session.isDragging());
    drawings.show(result, units.get(), selection().get());
  }

  /** Sets the colours of the panel and of its pictures. */
  public void setTone(Tone tone) {
    picture.tone().set(tone);
    drawings.plan().tone().set(tone);
    drawings.section().tone().set(tone);
    settings.set(settings.get().withTone(tone));
  }

  /** Shows lengths in these units from now on. */
  public void setUnits(UnitSystem system) {
    settings.set(settings.get().withUnits(system));
    units.set(system);
    listing.show(session.result().get(), system);
    session.result().get().ifPresent(r -> drawings.show(r, system, selection().get()));
  }

  private static UnitSystem unitsOf(Result result) {
    String unit = result.survey().source().lengthUnit().toUpperCase(Locale.ROOT);
    return unit.contains("FOOT") || unit.contains("INCH") ? UnitSystem.IMPERIAL : UnitSystem.METRIC;
  }

  /** Selects items here and, where they are elements of the model, in the host. */
  public void select(Set<Item> items) {
    selecting.select(items);
  }

  /** What can be done with the selection. */
  public Selecting selecting() {
    return selecting;
  }

  /** What the selection touches. */
  public About about() {
    return new About(selection().get(), lists().get().above());
  }

  /** What was found, and what can be done about it. */
  public FindingDesk findings() {
    return findings;
  }

  public void setFall(OptionalDouble runPerFall) {
    session.decide("Set the fall", d -> d.withRunPerFall(runPerFall));
  }

  public void dragFall(double runPerFall) {
    session.drag("Set the fall", d -> d.withRunPerFall(OptionalDouble.of(runPerFall)));
  }

  /** The newest result as a tree and as tables. */
  public ReadOnlyObjectProperty<Lists> lists() {
    return listing.lists();
  }

  /** What is to be read where pictures are while there are none; else empty. */
  public String insteadOfPictures() {
    if (session.result().get().isPresent() || session.model().get().isEmpty()) {
      return "";
    }
    return session
        .problem()
        .get()
        .map(Problem::words)
        .orElseGet(() -> session.busyWith().get().isEmpty() ? "" : session.busyWith().get() + " …");
  }

  /** How the design stands, in one line. */
  public String summary() {
    return session
        .result()
        .get()
        .flatMap(Result::design)
        .map(
            d ->
                d.layout().parts().size()
                    + " parts   ·   "
                    + new Quantity(d.proof().dryFraction(), Quantity.Kind.SHARE).in(units.get())
                    + " of the deck drained")
        .orElse("");
  }

  @Override
  public void close() {
    session.close();
    picture.close();
    drawings.close();
    listing.close();
    services.close();
    choices.close();
    resyncing.close();
    stayDry.close();
    ratings.close();
    recent.close();
    ownKit.close();
    saving.close();
    rehearsing.close();
    keeper.close();
  }
}
