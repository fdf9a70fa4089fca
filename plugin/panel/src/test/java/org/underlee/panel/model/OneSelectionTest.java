package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.geom.Vec2;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanPlaces;

/** What is selected in one place is selected, told and brought into view in all. */
class OneSelectionTest {
  private static final Item.OfBay BAY = new Item.OfBay("deck-1/field-1", "B3");

  @TempDir Path folder;
  private OpenPanel panel;
  private Result result;

  @BeforeEach
  void open() throws IOException, InterruptedException {
    panel = new OpenPanel("pine-deck", folder);
    result = panel.whole();
    panel.until(() -> panel.model.picture().orbit().isPresent());
  }

  @AfterEach
  void close() {
    panel.close();
  }

  private Part part(PartKind kind) {
    return result.layout().parts().stream().filter(p -> p.kind() == kind).findFirst().orElseThrow();
  }

  @Test
  void aDeckLightsUpAllThatHangsInItAndAFieldWithoutPartsItsJoists() {
    Set<String> parts = result.layout().parts().stream().map(Part::id).collect(Collectors.toSet());
    assertThat(Highlight.names(new Item.OfDeck("deck-1"), result)).isEqualTo(parts);
    assertThat(Highlight.names(new Item.OfField("deck-1/field-1"), result)).isEqualTo(parts);
    Decisions elsewhere = result.decisions().withDeck(Optional.of("deck-9"));
    Result bare =
        new Result(
            elsewhere,
            result.survey(),
            new org.underlee.layout.Layout(result.layout().kit(), List.of(), List.of()),
            9,
            Optional.empty(),
            Progress.LAID_OUT);
    Set<String> joists =
        result.survey().bays().get(0).field().lines().stream()
            .flatMap(l -> l.plies().stream())
            .map(m -> m.id())
            .collect(Collectors.toSet());
    assertThat(Highlight.names(new Item.OfDeck("deck-1"), bare)).isEqualTo(joists);
  }

  @Test
  void theHostIsToldOfPartsByTheGlobalIdsThatTheyAreWrittenWithAndTellsThemBack() {
    Part pan = part(PartKind.PAN);
    Map<String, String> written = result.design().orElseThrow().globalIds();
    panel.model.select(Set.of(new Item.OfPart(pan.id())));
    assertThat(panel.host.told.get(panel.host.told.size() - 1))
        .containsExactly(written.get(pan.id()));
    panel.model.select(Set.of(BAY));
    assertThat(panel.host.told.get(panel.host.told.size() - 1))
        .hasSizeGreaterThan(1)
        .isSubsetOf(written.values());

    panel.host.selecting.accept(Set.of(String.valueOf(written.get(pan.id()))));
    assertThat(panel.model.selection().get()).containsExactly(new Item.OfPart(pan.id()));
  }

  @Test
  void eachLineOfTheTakeoffLeadsToAllItsPieces() {
    List<Table> takeoff = panel.model.lists().get().takeoff();
    for (Table.Line line : takeoff.get(0).lines()) {
      assertThat(line.items()).hasSize(Integer.parseInt(line.cells().get(3)));
    }
    assertThat(takeoff.get(1).lines()).isNotEmpty();
    for (Table.Line line : takeoff.get(1).lines()) {
      assertThat(line.items())
          .as("%s", line.cells())
          .hasSize(Integer.parseInt(line.cells().get(4)));
    }
    assertThat(takeoff.get(2).lines()).isNotEmpty();
    assertThat(takeoff.get(2).lines()).allSatisfy(l -> assertThat(l.items()).isNotEmpty());
  }

  @Test
  void linesAboutTheSelectionAreKnownAndOthersAreNot() {
    Part pan = part(PartKind.PAN);
    List<Table.Line> cuts = panel.model.lists().get().takeoff().get(1).lines();
    panel.model.select(Set.of(new Item.OfPart(pan.id())));
    assertThat(cuts.stream().filter(l -> panel.model.about().touches(l.items()))).hasSize(1);
    assertThat(
            panel
                .model
                .about()
                .touches(List.of(new Item.OfBay(pan.field(), pan.bay().orElseThrow()))))
        .isTrue();
    assertThat(panel.model.about().touches(List.of(new Item.OfField(pan.field())))).isFalse();
    panel.model.select(Set.of(new Item.OfDeck("deck-1")));
    assertThat(cuts).allSatisfy(l -> assertThat(panel.model.about().touches(l.items())).isTrue());
    panel.model.select(Set.of());
    assertThat(cuts).noneSatisfy(l -> assertThat(panel.model.about().touches(l.items())).isTrue());
  }

  private Orbit orbit() {
    return panel.model.picture().orbit().orElseThrow();
  }

  @Test
  void goingToWhatIsOutOfSightTurnsNothingAndBringsItIntoThe3dPicture() {
    Orbit whole = orbit();
    panel.model.selecting().goTo(Set.of(BAY));
    assertThat(orbit()).as("it was in sight").isEqualTo(whole);
    Orbit away = new Orbit(whole.turn(), whole.rise(), whole.target(), 0.5).moved(9, 9);
    panel.model.picture().move(away);
    panel.model.select(Set.of(BAY));
    assertThat(orbit()).as("a hand that points in a picture is there already").isEqualTo(away);
    panel.model.selecting().goTo(Set.of(BAY));
    assertThat(orbit().turn()).isEqualTo(away.turn());
    assertThat(orbit().target().minus(whole.target()).length())
        .isLessThan(away.target().minus(whole.target()).length());
    assertThat(orbit().height()).isGreaterThan(away.height()).isLessThan(whole.height());

    panel.model.picture().move(away);
    panel.model.selecting().goTo(Set.of(BAY));
    assertThat(orbit()).as("chosen again, it is gone to again").isNotEqualTo(away);
  }

  @Test
  void lookingAtTheSelectionFillsThe3dPictureWithItAndCutsNothingAway() {
    Orbit whole = orbit();
    panel.model.select(Set.of(new Item.OfPart(part(PartKind.OUTLET).id())));
    panel.model.selecting().look();
    assertThat(orbit().height()).isLessThan(whole.height() / 4);
    assertThat(panel.model.picture().section().get().on()).isFalse();
  }

  @Test
  void thePlanGoesToTheSelectedBayAndSaysWhatIsPointedAt() throws InterruptedException {
    FlatPicture plan = panel.model.drawings().plan();
    panel.until(() -> plan.image().get().isPresent());
    Vec2 middle = middle(BAY);
    plan.move(5000, 0);
    assertThat(plan.pixel(middle).x()).isGreaterThan(800);
    panel.model.selecting().goTo(Set.of(BAY));
    panel.until(() -> plan.pixel(middle).x() < 800);
    assertThat(plan.pixel(middle).x()).isBetween(0.0, 800.0);
    assertThat(plan.pixel(middle).y()).isBetween(0.0, 600.0);

    panel.model.select(Set.of());
    panel.model.selecting().pickInPlan(middle);
    assertThat(panel.model.selection().get()).containsExactly(BAY);
    String joist = result.survey().bays().get(0).field().lines().get(0).plies().get(0).id();
    panel.model.selecting().pickInPlan(onEdge());
    assertThat(panel.model.selection().get())
        .isNotEmpty()
        .allMatch(i -> i instanceof Item.OfElement || i instanceof Item.OfPart)
        .as("not the bay, but the joist %s or what hangs at it", joist);
    panel.model.selecting().pickInPlan(new Vec2(1e3, 1e3));
    assertThat(panel.model.selection().get()).isEmpty();
  }

  private Vec2 middle(Item.OfBay bay) {
    List<Vec2> ring =
        PlanPlaces.outlines(result.survey().bays())
            .get(new PlanPlaces.BayAt(bay.field(), bay.bay()));
    return ring.stream().reduce(new Vec2(0, 0), Vec2::plus).times(1.0 / ring.size());
  }

  /** In a joist beside the first bay: just outside of the bay's outline. */
  private Vec2 onEdge() {
    Vec2 a = middle(new Item.OfBay("deck-1/field-1", "B1"));
    Vec2 b = middle(new Item.OfBay("deck-1/field-1", "B2"));
    return a.plus(b).times(0.5);
  }

  /** Whether the section that is drawn by now is the one with the assembly. */
  private boolean isAPartAt400(FlatPicture section) {
    for (int y = 0; y < 600; y += 2) {
      Optional<Item> there = panel.model.drawings().inSection(section.place(400, y));
      if (there.filter(Item.OfPart.class::isInstance).isPresent()) {
        return true;
      }
    }
    return false;
  }

  @Test
  void theSectionSaysWhichPartIsPointedAt() throws InterruptedException {
    FlatPicture section = panel.model.drawings().section();
    panel.model.selecting().goTo(Set.of(BAY));
    panel.until(() -> panel.model.drawings().sectionName().get().startsWith("B3"));
    panel.until(() -> section.image().get().isPresent());
    panel.until(() -> isAPartAt400(section));
    Set<Item> hit = new java.util.LinkedHashSet<>();
    for (int y = 0; y < 600; y += 2) {
      panel.model.selecting().pickInSection(section.place(400, y));
      hit.addAll(panel.model.selection().get());
    }
    assertThat(hit)
        .anyMatch(i -> i instanceof Item.OfPart)
        .anyMatch(i -> i instanceof Item.OfElement);
  }
}
