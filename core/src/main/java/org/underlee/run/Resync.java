package org.underlee.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Onto;
import org.underlee.layout.Scope;
import org.underlee.run.FramingMatch.Found;
import org.underlee.run.FramingMatch.Placed;
import org.underlee.step.StepFile;
import org.underlee.takeoff.Buying;
import org.underlee.writeback.Provenance;

/**
 * Takes an assembly over into a new export of the designer's model: knows the framing again, keeps
 * what was decided, lays out anew, and says what changed. Bays that stay keep their names, and so
 * their parts keep their GlobalIds.
 */
public final class Resync {
  /** A seat that comes out nearer to the old one than this is the same: a tenth of a millimetre. */
  private static final double SAME_SEAT = 0.0001;

  private static final String ALL = "the assembly";

  private final Survey old;
  private final Design before;
  private final Decisions decisions;
  private final Kit kit;

  private Resync(Survey old, Design before, Decisions decisions, Kit kit) {
    this.old = old;
    this.before = before;
    this.decisions = decisions;
    this.kit = kit;
  }

  /**
   * The new export with the assembly.
   *
   * @param drained the old export with the assembly in it
   * @param services of the new export
   * @param overrides the file beside the new export; where there is none, those of the old one hold
   * @param kit where it is not one of the program's own
   * @throws InputException when a file cannot be used or the old one has no assembly of ours
   */
  public static Resynced of(
      Path export,
      Path drained,
      List<Path> services,
      Optional<Overrides> overrides,
      Optional<Kit> kit) {
    return of(Surveyor.opened(export), Surveyor.opened(drained), services, overrides, kit);
  }

  /** As {@link #of(Path, Path, List, Optional, Optional)}, from what is in memory. */
  public static Resynced of(
      StepFile export,
      StepFile drained,
      List<Path> services,
      Optional<Overrides> overrides,
      Optional<Kit> kit) {
    Decisions decisions = Decisions.in(IfcModel.of(drained));
    SurveyRequest asked = new SurveyRequest(decisions.assume(), decisions.told(), List.of());
    Survey counted = DeckRun.survey(drained, asked);
    Survey old = decisions.names().map(n -> Naming.parse(n).of(counted)).orElse(counted);
    Kit used = decisions.kit(kit);
    Scope scope = decisions.scope();
    Design before = DeckRun.design(old, scope, used, decisions.storm());
    Resync resync = new Resync(old, before, decisions, used);
    return resync.into(export, services, overrides);
  }

  private Resynced into(StepFile export, List<Path> services, Optional<Overrides> given) {
    Optional<Overrides> told =
        given.or(() -> decisions.told().map(o -> Retold.in(o, old.model(), IfcModel.of(export))));
    Survey counted = DeckRun.survey(export, new SurveyRequest(decisions.assume(), told, services));
    Map<Placed, Found> matched = FramingMatch.of(old.bays(), counted.bays());
    Naming naming = KeptNames.of(counted, old.bays(), matched);
    Survey survey = naming.of(counted);
    Scope scope = scope(survey);
    Design design =
        DeckRun.design(
            survey,
            scope,
            DeckRun.layOut(survey, scope, kit, decisions.storm()),
            decisions.storm(),
            Buying.PLAIN,
            kept(naming, survey));
    return new Resynced(
        old.source(),
        design,
        kept(design, given.isPresent(), told),
        Redecided.of(decisions, kit, survey.bays(), counted.bays(), told),
        changes(counted, survey, matched, design));
  }

  /** What a later resync needs: names, and the project that GlobalIds derive from. */
  private Map<String, String> kept(Naming naming, Survey survey) {
    Map<String, String> kept = new TreeMap<>();
    if (!naming.names().isEmpty()) {
      kept.put(Provenance.NAMES, naming.text());
    }
    String project = decisions.project().orElse(old.model().projectGlobalId());
    if (!project.equals(survey.model().projectGlobalId())) {
      kept.put(Provenance.PROJECT, project);
    }
    return kept;
  }

  /** The deck that was asked for, if it is there again. */
  private Scope scope(Survey survey) {
    Optional<String> deck = decisions.scope().deck();
    Set<String> there = new HashSet<>();
    survey.framing().decks().forEach((Deck d) -> there.add(d.id()));
    if (deck.isPresent() && !there.contains(deck.get())) {
      throw new InputException(
          Place.NOWHERE.inFile(survey.source().file()),
          "the assembly was asked for on " + deck.get() + ", which is gone",
          "Run design on the new export and name the deck that is meant with --deck.");
    }
    return decisions.scope();
  }

  private List<Resynced.Decision> kept(Design design, boolean toldAnew, Optional<Overrides> told) {
    List<Resynced.Decision> all = new ArrayList<>();
    boolean sameVersion = decisions.kitVersion().equals(kit.version());
    all.add(
        new Resynced.Decision(
            ALL,
            "kit",
            kit.id() + " " + kit.version(),
            sameVersion,
            sameVersion ? "" : "the kit was " + decisions.kitVersion() + " then"));
    all.add(decision("fall", String.format(Locale.ROOT, "1:%.6g", 1 / kit.fall())));
    decisions.rain().ifPresent(r -> all.add(decision("rain", r)));
    decisions
        .asked()
        .forEach((name, value) -> all.add(decision(name.toLowerCase(Locale.ROOT), value)));
    decisions.scope().wishes().onto().forEach(o -> all.add(roof(o, design.survey())));
    decisions
        .scope()
        .wishes()
        .tables()
        .ifPresent(t -> all.add(decision("capacity tables", CapacityTables.named(t))));
    decisions.assumed().ifPresent(a -> all.add(decision("assumed framing", a)));
    decisions.told().ifPresent(o -> all.add(overrides(o, toldAnew, told)));
    for (FieldLayout field : design.layout().fields()) {
      before.layout().fields().stream()
          .filter(f -> f.field().equals(field.field()))
          .findFirst()
          .ifPresent(f -> all.add(seat(f, field)));
    }
    return all;
  }

  private static Resynced.Decision decision(String name, String value) {
    return new Resynced.Decision(ALL, name, value, true, "");
  }

  private static Resynced.Decision roof(Onto onto, Survey survey) {
    boolean there = RainFromRoofs.isOnDeck(survey, onto);
    String why = there ? "" : "no deck is at that place any more; it is counted nowhere";
    return new Resynced.Decision(ALL, "also drains", onto.text(), there, why);
  }

  private static Resynced.Decision overrides(
      Overrides then, boolean toldAnew, Optional<Overrides> told) {
    int wanted = then.told().globalIds().size();
    int there = told.map(o -> o.told().globalIds().size()).orElse(0);
    String why =
        toldAnew
            ? "the file beside the new export holds in their place"
            : there == wanted ? "" : (wanted - there) + " of the elements are gone";
    return new Resynced.Decision(ALL, "overrides", there + " elements", why.isEmpty(), why);
  }

  private static Resynced.Decision seat(FieldLayout was, FieldLayout is) {
    boolean same = Math.abs(was.seatHigh() - is.seatHigh()) < SAME_SEAT;
    String why =
        same
            ? ""
            : String.format(Locale.ROOT, "it was %.1f mm; what binds it is ", was.seatHigh() * 1000)
                + is.binding();
    String value = String.format(Locale.ROOT, "%.1f mm", is.seatHigh() * 1000);
    return new Resynced.Decision(is.field(), "seat height", value, same, why);
  }

  private List<BayChange> changes(
      Survey counted, Survey survey, Map<Placed, Found> matched, Design design) {
    PartChanges parts = new PartChanges(before.layout(), design.layout());
    List<BayChange> all = new ArrayList<>();
    List<Placed> names = FramingMatch.placed(survey.bays());
    List<Placed> news = FramingMatch.placed(counted.bays());
    Set<Placed> still = new HashSet<>();
    for (int i = 0; i < news.size(); i++) {
      Optional<Found> found = Optional.ofNullable(matched.get(news.get(i)));
      found.ifPresent(f -> still.add(f.old()));
      all.add(BayChanges.of(names.get(i), found, parts));
    }
    for (Placed gone : FramingMatch.placed(old.bays())) {
      if (!still.contains(gone)) {
        all.add(BayChanges.gone(gone, parts));
      }
    }
    return all;
  }
}
