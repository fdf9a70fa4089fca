package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Place;
import org.underlee.finding.Rule;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.DryZone;
import org.underlee.panel.model.FindingList.Grouping;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Findings: in groups with counts, accepted for their numbers, put right in plain words. */
class FindingsTest {
  private static final Rule RULE = new Rule("too-flat", Level.WARNING, "test", "when it is flat");

  @TempDir Path folder;

  private static Finding flat(double fall, String... bays) {
    List<Subject> subjects =
        Stream.of(bays)
            .map(b -> new Subject("deck-1/field-1", b, Place.NOWHERE, Optional.empty()))
            .toList();
    return new Finding(
        RULE,
        subjects,
        Words.of("the pans fall %s.", Quantity.fall(fall)),
        Place.NOWHERE,
        Optional.of(new Measure(Quantity.fall(fall), Quantity.fall(1.0 / 48))),
        Optional.empty());
  }

  private static Decisions accepted(Finding finding) {
    TreeMap<String, Acceptance> all = new TreeMap<>();
    Told.of(finding).forEach(t -> all.put(t.key(), new Acceptance("agreed", t.text(), t.past())));
    return Decisions.FIRST.accepting(all);
  }

  private static Standing.State state(Finding now, Decisions decisions) {
    return Standing.of(now, decisions.accepted()).state();
  }

  @Test
  void whatWasAcceptedStaysSoWithBetterNumbersAndIsMarkedAndIsOpenAgainWithWorseOnes() {
    Decisions decisions = accepted(flat(1.0 / 96, "B3"));
    assertThat(state(flat(1.0 / 96, "B3"), decisions)).isEqualTo(Standing.State.ACCEPTED);
    assertThat(state(flat(1.0 / 90, "B3"), decisions)).isEqualTo(Standing.State.OTHER_NUMBERS);
    assertThat(state(flat(1.0 / 120, "B3"), decisions)).isEqualTo(Standing.State.WORSE);
    assertThat(Standing.of(flat(1.0 / 120, "B3"), decisions.accepted()).isAccepted()).isFalse();
    assertThat(state(flat(1.0 / 96, "B4"), decisions)).isEqualTo(Standing.State.OPEN);
  }

  @Test
  void eachBayIsAcceptedByItselfHoweverFindingsAreTold() {
    Decisions decisions = accepted(flat(1.0 / 96, "B3", "B4"));
    assertThat(state(flat(1.0 / 96, "B4"), decisions)).isEqualTo(Standing.State.ACCEPTED);
    assertThat(state(flat(1.0 / 96, "B4", "B3"), decisions)).isEqualTo(Standing.State.ACCEPTED);
    assertThat(state(flat(1.0 / 96, "B4", "B5"), decisions)).isEqualTo(Standing.State.IN_PART);
  }

  @Test
  void otherWordsOfTheSameRuleAreAnotherFinding() {
    Decisions decisions = accepted(flat(1.0 / 96, "B3"));
    Finding other =
        new Finding(
            RULE,
            flat(1.0 / 96, "B3").subjects(),
            Words.of("the gutter falls %s.", Quantity.fall(1.0 / 96)),
            Place.NOWHERE,
            Optional.empty(),
            Optional.empty());
    assertThat(state(other, decisions)).isEqualTo(Standing.State.OPEN);
  }

  @Test
  void whatAnOlderFileHoldsIsFoundAgainWithTheSameNumbersAndMarkedWithOthers() {
    Finding then = flat(1.0 / 96, "B3");
    Decisions old = Decisions.FIRST.accepting("too-flat: " + then.message(), "agreed");
    assertThat(state(then, old)).isEqualTo(Standing.State.ACCEPTED);
    Standing now = Standing.of(flat(1.0 / 90, "B3"), old.accepted());
    assertThat(now.state()).as("nobody knows whether it got worse").isEqualTo(Standing.State.WORSE);
    assertThat(now.kept().orElseThrow().of()).isEqualTo(then.message());
    assertThat(state(flat(1.0 / 96, "B4"), old)).isEqualTo(Standing.State.OPEN);
    assertThat(old.reopening(now.keys()).accepted()).isEmpty();
  }

  private static FindingList.Row row(Finding finding, Decisions decisions) {
    return FindingList.rows(
            List.of(new Noticed(finding, List.of())),
            decisions,
            UnitSystem.METRIC,
            Optional.empty())
        .get(0);
  }

  private static List<String> heads(List<FindingList.Row> rows, Grouping grouping) {
    FindingList.Filter all = new FindingList.Filter("", EnumSet.allOf(Level.class), grouping);
    return FindingList.entries(rows, all).stream()
        .filter(FindingList.Head.class::isInstance)
        .map(FindingList.Head.class::cast)
        .map(h -> h.words() + " " + h.count())
        .toList();
  }

  @Test
  void groupsHaveHeadsThatCountAndPlacesComeInTheOrderInWhichPeopleCount() {
    Decisions decisions = accepted(flat(1.0 / 96, "B3"));
    List<FindingList.Row> rows =
        Stream.of(
                flat(1.0 / 96, "B10"),
                flat(1.0 / 96, "B2"),
                flat(1.0 / 96, "B3"),
                flat(1.0 / 90, "B3"),
                flat(1.0 / 96, "B1", "B2"))
            .map(f -> row(f, decisions))
            .toList();
    assertThat(heads(rows, Grouping.BY_PLACE))
        .containsExactly(
            "deck-1/field-1, B2 1",
            "deck-1/field-1, B3 2",
            "deck-1/field-1, B10 1",
            "deck-1/field-1, several places 1");
    assertThat(heads(rows, Grouping.BY_RULE)).containsExactly("too-flat 5");
    assertThat(heads(rows, Grouping.BY_LEVEL))
        .containsExactly("Warnings 3", "Accepted for other numbers 1", "Accepted 1");
    FindingList.Filter errors = new FindingList.Filter("", Set.of(Level.ERROR), Grouping.BY_PLACE);
    assertThat(FindingList.entries(rows, errors)).isEmpty();
  }

  private static Fix.Action action(String name, String value) {
    return new Fix.Action(List.of(new Fix.Option(name, value)), Words.of("so it is"));
  }

  @Test
  void fixesAreSaidInPlainWordsAndAllThatThePanelDecidesCanBeDone() {
    FixWords words = new FixWords(Names.NONE, UnitSystem.METRIC);
    assertThat(words.of(action("--fall", "1:64"))).isEqualTo("Set the fall to 1:64");
    assertThat(words.of(action("--both-ways", "deck-1/field-1@2.36m")))
        .isEqualTo("Let field 1 fall both ways from 2360 mm off its high end");
    assertThat(words.of(action("--also-drains", "12m2@3.2,1.5 7m2@4,1.5")))
        .isEqualTo("Count the rain of 19.00 m² of roof too");
    assertThat(words.of(action("--boards-off", ""))).isEqualTo("Say that the boards are off");
    Decisions off = FindingList.fixed(Decisions.FIRST, action("--boards-off", "")).orElseThrow();
    assertThat(off.boardsOff()).isTrue();
    String zone = "0.0,0.0 3.6,0.0 3.6,2.4";
    Decisions dry = FindingList.fixed(Decisions.FIRST, action("--dry-zone", zone)).orElseThrow();
    assertThat(dry.wishes().dryZone().orElseThrow().text()).isEqualTo(zone);
    assertThat(FindingList.fixed(Decisions.FIRST, action("--view", "top"))).isEmpty();
  }

  @Test
  void theBoardsAreSaidToBeOffByTheFixOfTheirFinding() throws Exception {
    try (OpenPanel panel = new OpenPanel("pine-deck", folder)) {
      panel.model.session().decide("drape", d -> d.withKit("membrane-drape"));
      panel.whole();
      FindingList.Row on = panel.row("boards-on-the-joists");
      assertThat(on.fix()).contains("Say that the boards are off");
      panel.model.findings().fix(on);
      assertThat(panel.whole().decisions().boardsOff()).isTrue();
    }
  }

  @Test
  void theDryZoneIsDrawnOnByTheFixOfItsFinding() throws Exception {
    try (OpenPanel panel = new OpenPanel("pine-deck", folder)) {
      DryZone zone = inside(panel.whole(), 2);
      panel.model.session().decide("dry", d -> d.withDryZone(Optional.of(zone)));
      Result one = panel.whole();
      FindingList.Row splashed = panel.row("dry-zone-splashed");
      assertThat(splashed.fix()).contains("Draw the dry zone on past the joist");
      panel.model.findings().fix(splashed);
      assertThat(served(panel.whole())).isGreaterThan(served(one));
    }
  }

  private static int served(Result result) {
    return result.layout().fields().get(0).bays().size();
  }

  /** A strip in the middle of a bay, as wide as the bay. */
  private static DryZone inside(Result result, int number) {
    FieldBays field = result.survey().bays().get(0);
    Bay bay = field.bays().get(number);
    double v = bay.stretch().middle();
    List<Vec2> ring =
        Stream.of(
                new Vec3(bay.leftFace().at(v), v, 0),
                new Vec3(bay.rightFace().at(v), v, 0),
                new Vec3(bay.rightFace().at(v), v + 1, 0),
                new Vec3(bay.leftFace().at(v), v + 1, 0))
            .map(field.field().frame()::apply)
            .map(p -> new Vec2(Math.round(p.x() * 1e4) / 1e4, Math.round(p.y() * 1e4) / 1e4))
            .toList();
    return new DryZone(List.of(ring));
  }

  @Test
  void aFindingIsToldInFullWithItsPriceAndItsAnswer() throws Exception {
    try (OpenPanel panel = new OpenPanel("pine-deck", folder)) {
      FindingList.Row flat = panel.row("net-fall-low");
      assertThat(flat.fix()).contains("Set the fall to 1:64");
      Inspection told = Inspection.of(flat, UnitSystem.METRIC);
      String all = told.toString();
      assertThat(all)
          .contains(
              flat.message(),
              flat.advice(),
              flat.price().orElseThrow(),
              flat.finding().rule().meaning());
      assertThat(told.name()).isEqualTo("net-fall-low");
    }
  }

  @Test
  void anAcceptedFindingOutlivesASteeperFallMarkedAndIsReopened() throws Exception {
    try (OpenPanel panel = new OpenPanel("pine-deck", folder)) {
      panel.model.findings().accept(panel.row("net-fall-low"), " ");
      assertThat(panel.model.session().decisions().get().accepted()).isEmpty();
      panel.model.findings().accept(panel.row("net-fall-low"), "it is a short deck");
      panel.whole();
      assertThat(panel.row("net-fall-low").accepted()).contains("it is a short deck");
      panel.model.setFall(OptionalDouble.of(90));
      panel.whole();
      FindingList.Row steeper = panel.row("net-fall-low");
      assertThat(steeper.standing().state()).isEqualTo(Standing.State.OTHER_NUMBERS);
      assertThat(steeper.answer()).isEqualTo("accepted for other numbers: it is a short deck");
      panel.model.setFall(OptionalDouble.of(100));
      panel.whole();
      assertThat(panel.row("net-fall-low").standing().state()).isEqualTo(Standing.State.WORSE);
      panel.model.findings().acceptAgain(panel.row("net-fall-low"));
      panel.whole();
      assertThat(panel.row("net-fall-low").standing().state()).isEqualTo(Standing.State.ACCEPTED);
      panel.model.findings().reopen(panel.row("net-fall-low"));
      panel.whole();
      assertThat(panel.row("net-fall-low").standing().state()).isEqualTo(Standing.State.OPEN);
      assertThat(panel.model.session().decisions().get().accepted()).isEmpty();
    }
  }

  @Test
  void aFindingGoneToIsInHandUntilSomethingElseIsSelected() throws Exception {
    try (OpenPanel panel = new OpenPanel("pine-deck", folder)) {
      FindingList.Row one = panel.row("single-outlet");
      panel.model.findings().goTo(one);
      assertThat(panel.model.findings().inHand()).contains(one);
      assertThat(panel.model.selection().get()).containsExactlyElementsOf(one.places());
      panel.model.select(Set.of(new Item.OfBay("deck-1/field-1", "B3")));
      assertThat(panel.model.findings().inHand()).isEmpty();
      assertThat(panel.model.findings().about(new Item.OfField("deck-1/field-1"))).contains(one);
    }
  }

  @Test
  void theOutlineSaysHowFarABayIsDrainedAndHowManyFindingsThereAre()
      throws IOException, InterruptedException {
    try (OpenPanel panel = new OpenPanel("pine-deck", folder)) {
      Outline field = panel.model.lists().get().decks().get(0).inside().get(0);
      assertThat(field.state()).isEqualTo(Outline.State.PARTLY);
      assertThat(field.note()).contains("24.3 sq ft not drained");
      Outline bay = field.inside().get(2);
      assertThat(bay.state()).isEqualTo(Outline.State.PARTLY);
      assertThat(bay.note()).startsWith("1' 8 1/4\" open, ");
      long open =
          panel.rows().stream()
              .filter(r -> r.places().contains(new Item.OfField("deck-1/field-1")))
              .count();
      assertThat((long) field.found().count()).isGreaterThanOrEqualTo(open).isPositive();
      assertThat(field.found().worst()).contains(Level.WARNING);
      assertThat(field.spoken()).contains("partly", "the worst a warning");
      FindingList.Row one = panel.row("single-outlet");
      panel.model.findings().accept(one, "enough here");
      panel.whole();
      assertThat(panel.model.lists().get().decks().get(0).inside().get(0).found().count())
          .isEqualTo(field.found().count() - 1);
      panel.model.session().decide("open", d -> d.turning(new Item.OfBay("deck-1/field-1", "B3")));
      panel.whole();
      Outline left = panel.model.lists().get().decks().get(0).inside().get(0).inside().get(2);
      assertThat(left.state()).isEqualTo(Outline.State.OPEN);
    }
  }
}
