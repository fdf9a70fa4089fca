package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.framing.Framing;
import org.underlee.framing.Role;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** Pictures of decks: what is in them, not how they are drawn. */
class DeckSceneTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root", "."), "samples/pine-deck/pine-deck.ifc");

  private static Design design;

  @BeforeAll
  static void designTheSample() {
    design = DeckRun.design(DeckRun.survey(SAMPLE), Scope.OUTSIDE, KitReader.builtIn());
  }

  private static Shape called(Scene scene, String label) {
    return scene.shapes().stream().filter(s -> s.label().equals(label)).findFirst().orElseThrow();
  }

  @Test
  void framingIsPaintedByItsRoleBoardsAreLeftOutAndWhatIsFarAwayToo() {
    TimberDeck deck =
        TimberDeck.plain(4)
            .bar("IfcPlate", "plank", 0, 1, TimberDeck.Z + TimberDeck.D, 1.2, 1.14, 2.712)
            .bar("IfcColumn", "far away", 30, 30, 0, 30.1, 30.1, 3)
            .pipe("IfcPipeSegment", "pipe", new Vec3(0.2, 1, 0), new Vec3(0.2, 1, 3), 0.1);
    Framing framing = deck.frame();
    assertThat(framing.roleOf("plank")).contains(Role.DECK_BOARD);
    Scene scene = DeckScene.of(framing, deck.elements(), Optional.empty());
    assertThat(called(scene, "j1").paint()).isEqualTo(Palette.JOIST);
    assertThat(called(scene, "rim").paint()).isEqualTo(Palette.LEDGER);
    assertThat(called(scene, "pipe").paint()).isEqualTo(Palette.PIPE);
    assertThat(called(scene, "house").paint()).isEqualTo(Palette.CONTEXT);
    assertThat(scene.shapes()).extracting(Shape::label).doesNotContain("plank", "far away");
    assertThat(scene.shapes()).extracting(Shape::id).doesNotHaveDuplicates();
  }

  @Test
  void everyPartWithABodyIsInTheSceneUnderItsLabel() {
    Scene scene =
        DeckScene.of(
            design.survey().framing(),
            design.survey().model().elements(),
            Optional.of(design.layout()));
    List<String> labels = scene.shapes().stream().map(Shape::label).toList();
    List<Part> bodies =
        design.layout().parts().stream().filter(p -> !p.bodies().isEmpty()).toList();
    assertThat(labels).containsAll(bodies.stream().map(Part::label).toList());
    Scene bare =
        DeckScene.of(
            design.survey().framing(), design.survey().model().elements(), Optional.empty());
    assertThat(scene.shapes()).hasSize(bare.shapes().size() + bodies.size());
  }

  @Test
  void aModelWithoutADeckShowsAllThatIsThere() {
    TimberDeck walls = new TimberDeck().wall();
    Scene scene = DeckScene.of(walls.frame(), walls.elements(), Optional.empty());
    assertThat(scene.shapes()).extracting(Shape::label).containsExactly("house");
    assertThat(DeckScene.fromBelow(walls.frame(), Optional.empty(), scene, 1.6)).isNotNull();
  }

  @Test
  void aViewFromBelowShowsPansAndOneFromAboveDoesNotShowThemFirst() {
    Scene scene =
        DeckScene.of(
            design.survey().framing(),
            design.survey().model().elements(),
            Optional.of(design.layout()));
    RasterSettings small = RasterSettings.of(320, 200);
    Camera below =
        DeckScene.fromBelow(
            design.survey().framing(), Optional.of(design.layout()), scene, small.aspect());
    Camera above = DeckScene.fromAbove(design.survey().framing(), scene, small.aspect());
    assertThat(Renderer.draw(scene, below, small)).isNotEqualTo(Renderer.draw(scene, above, small));
  }

  @Test
  void theDownspoutIsSeenFromBelowAndNotHiddenBehindItsPost() {
    Scene scene =
        DeckScene.of(
            design.survey().framing(),
            design.survey().model().elements(),
            Optional.of(design.layout()));
    RasterSettings settings = RasterSettings.of(320, 200);
    Camera camera =
        DeckScene.fromBelow(
            design.survey().framing(), Optional.of(design.layout()), scene, settings.aspect());
    Camera other =
        DeckScene.fromBelow(design.survey().framing(), Optional.empty(), scene, settings.aspect());
    assertThat(seen(scene, camera, settings)).isGreaterThan(2 * seen(scene, other, settings));
  }

  /** Pixels of the downspout. */
  private static long seen(Scene scene, Camera camera, RasterSettings settings) {
    String label =
        design.layout().parts().stream()
            .filter(p -> p.kind() == PartKind.DOWNSPOUT)
            .findFirst()
            .orElseThrow()
            .label();
    int id =
        scene.shapes().stream().filter(s -> s.label().equals(label)).findFirst().orElseThrow().id();
    Image image = Renderer.draw(scene, camera, settings);
    return Arrays.stream(image.ids()).filter(i -> i == id).count();
  }

  private static Stream<PlanItem.Label> labels(PlanDrawing plan) {
    return plan.items().stream()
        .filter(PlanItem.Label.class::isInstance)
        .map(PlanItem.Label.class::cast);
  }

  private static PlanDrawing plan(boolean drained, UnitSystem units) {
    return DeckPlan.of(
            design.survey().bays(),
            drained ? Optional.of(design.layout()) : Optional.empty(),
            units,
            "pine-deck")
        .orElseThrow()
        .at(50);
  }

  @Test
  void thePlanNamesEveryBayWithItsClearWidth() {
    List<String> texts =
        labels(plan(false, UnitSystem.IMPERIAL)).map(PlanItem.Label::text).toList();
    design
        .survey()
        .bays()
        .forEach(
            f ->
                f.bays()
                    .forEach(
                        b ->
                            assertThat(texts)
                                .contains(b.id(), Lengths.feetInches(b.clearWidthHigh()))));
    assertThat(texts).noneMatch(t -> t.startsWith("1:"));
  }

  @Test
  void aDrainedPlanShowsAFallArrowForEachBayThatHasAPart() {
    PlanDrawing plan = plan(true, UnitSystem.METRIC);
    long served =
        design.layout().parts().stream().flatMap(p -> p.bay().stream()).distinct().count();
    long falls =
        labels(plan).filter(l -> l.style() == PlanStyle.FALL && l.text().startsWith("1:")).count();
    assertThat(falls).isEqualTo(served).isPositive();
    assertThat(plan.items())
        .filteredOn(i -> i.style() == PlanStyle.FALL && i instanceof PlanItem.Arrow)
        .hasSize((int) served)
        .allSatisfy(
            a -> {
              // the house is at the top of the sheet: water goes down
              PlanItem.Arrow arrow = (PlanItem.Arrow) a;
              assertThat(arrow.to().y()).isLessThan(arrow.from().y());
            });
    assertThat(areas(plan, PlanStyle.PAN))
        .isEqualTo(parts(PartKind.PAN) + parts(PartKind.COLLAR_PIECE));
    // below doubled joists, which they do not hide
    assertThat(areas(plan, PlanStyle.STRIP)).isEqualTo(parts(PartKind.PLY_STRIP)).isPositive();
    assertThat(PlanStyle.STRIP.fill()).isEmpty();
  }

  private static long areas(PlanDrawing plan, PlanStyle style) {
    return plan.items().stream()
        .filter(i -> i.style() == style && i instanceof PlanItem.Area)
        .count();
  }

  private static long parts(PartKind kind) {
    return design.layout().parts().stream().filter(p -> p.kind() == kind).count();
  }

  @Test
  void theWidthOfABayDoesNotStandOnThePipeInIt() {
    PlanDrawing plan = plan(true, UnitSystem.IMPERIAL);
    PlanItem.Circle pipe =
        plan.items().stream()
            .filter(i -> i instanceof PlanItem.Circle && i.style() == PlanStyle.CROSSING)
            .map(PlanItem.Circle.class::cast)
            .findFirst()
            .orElseThrow();
    double halfOfTheText = 0.15;
    assertThat(labels(plan).filter(l -> l.style() == PlanStyle.NOTE && l.turn() != 0))
        .isNotEmpty()
        .allSatisfy(
            l -> {
              boolean beside = Math.abs(l.at().x() - pipe.centre().x()) > 2 * pipe.radius() + 0.05;
              double along = Math.abs(l.at().y() - pipe.centre().y());
              assertThat(beside || along > pipe.radius() + halfOfTheText).as(l.text()).isTrue();
            });
  }

  @Test
  void aModelWithoutAFieldHasNoPlanAndTheEmptySheetSaysSo() {
    assertThat(DeckPlan.of(List.of(), Optional.empty(), UnitSystem.METRIC, "x")).isEmpty();
    assertThat(labels(DeckPlan.empty("house.ifc")).map(PlanItem.Label::text))
        .containsExactly("No joists found in house.ifc");
  }
}
