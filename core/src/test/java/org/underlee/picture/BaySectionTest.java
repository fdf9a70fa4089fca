package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.flow.RainData;
import org.underlee.geom.Vec2;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** The long section of the pine deck; its measures are in samples/pine-deck/README.md. */
class BaySectionTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root", "."), "samples/pine-deck/pine-deck.ifc");

  private static Survey survey;
  private static Layout layout;

  @BeforeAll
  static void layOutTheSample() {
    survey = DeckRun.survey(SAMPLE);
    layout =
        DeckRun.layOut(
            survey,
            Scope.OUTSIDE,
            KitReader.builtIn(),
            RainData.builtIn().service(RainData.ANYWHERE));
  }

  private static PlanDrawing section(String bay, UnitSystem units) {
    return BaySection.of(survey.bays().get(0), bay, Optional.of(layout.fields().get(0)), units)
        .at(50);
  }

  private static List<String> texts(PlanDrawing drawing) {
    return drawing.items().stream()
        .filter(PlanItem.Label.class::isInstance)
        .map(i -> ((PlanItem.Label) i).text())
        .toList();
  }

  @Test
  void itIsDimensionedByWhatWasMeasured() {
    // clear run 141 in; 7 1/4 in joists; blocking of even bays at 61 3/4 in
    assertThat(texts(section("B6", UnitSystem.IMPERIAL)))
        .contains("11' 9\"", "7 1/4\"", "5' 1 3/4\"", "1:96 (1/8 in per ft)")
        .contains("high seat 3/8\" below joist bottom", "low seat 1 11/16\" below joist bottom")
        .anyMatch(t -> t.startsWith("gutter "))
        .anyMatch(t -> t.endsWith("to the ground"))
        .anyMatch(t -> t.startsWith("Pipe"));
    assertThat(texts(section("B6", UnitSystem.METRIC))).contains("3581 mm", "184 mm");
  }

  @Test
  void framingAndPartsAreInIt() {
    List<String> styles =
        section("B6", UnitSystem.METRIC).items().stream().map(i -> i.style().name()).toList();
    assertThat(styles)
        .contains("joist", "ledger", "blocking", "sheet", "rail", "gutter", "crossing");
  }

  @Test
  void withoutAnAssemblyTheFramingIsStillDrawn() {
    FieldBays bays = survey.bays().get(0);
    PlanDrawing bare = BaySection.of(bays, "B1", Optional.empty(), UnitSystem.METRIC).at(50);
    assertThat(texts(bare)).contains("3581 mm").noneMatch(t -> t.contains("seat"));
  }

  @Test
  void theNotchesForTheBlockingAreDrawnWhereTheyAreAndDimensioned() {
    PlanDrawing section = section("B6", UnitSystem.METRIC);
    assertThat(texts(section)).contains("R1, R2 notched 1543 mm to 1594 mm, 80 mm deep");
    double high = survey.bays().get(0).bays().get(5).stretch().from();
    assertThat(section.items().stream().filter(i -> i.style().equals(PlanStyle.NOTCH)))
        .hasSize(2)
        .allSatisfy(
            i -> {
              List<Vec2> edges = ((PlanItem.Line) i).points();
              assertThat(edges.get(1).x() - high).isCloseTo(1.5434, within(1e-3));
              assertThat(edges.get(2).x() - edges.get(1).x()).isCloseTo(0.0501, within(1e-4));
              assertThat(
                      Lengths.millimetres((edges.get(0).y() - edges.get(1).y()) / BaySection.TALL))
                  .isEqualTo("80 mm");
            });
  }

  @Test
  void aBayThatIsNotThereIsRefused() {
    assertThatThrownBy(() -> section("B99", UnitSystem.METRIC))
        .isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void thePlanKnowsWhichBayIsAtAPlace() {
    PlanDrawing plan =
        DeckPlan.of(survey.bays(), Optional.of(layout), UnitSystem.METRIC, "x")
            .orElseThrow()
            .at(50);
    for (PlanItem item : plan.items()) {
      if (item instanceof PlanItem.Label tag && tag.text().matches("B\\d+")) {
        assertThat(PlanPlaces.bayAt(survey.bays(), tag.at()))
            .contains(new PlanPlaces.BayAt("deck-1/field-1", tag.text()));
      }
    }
    assertThat(PlanPlaces.bayAt(survey.bays(), new Vec2(1e3, 1e3))).isEmpty();
    assertThat(PlanPlaces.bayAt(List.of(), new Vec2(0, 0))).isEmpty();
  }

  @Test
  void aChosenBayIsMarked() {
    PlanDrawing plan =
        plan(List.of(new PlanPlaces.BayAt("deck-1/field-1", "B3")), Set.of()).drawing().at(50);
    assertThat(plan.items().stream().filter(i -> i.style().equals(PlanStyle.CHOSEN))).hasSize(1);
  }

  private PlanThings plan(List<PlanPlaces.BayAt> bays, Set<String> things) {
    DeckPlan.Marks marks = new DeckPlan.Marks(bays, things);
    return DeckPlan.of(
            survey.bays(), Optional.of(layout), UnitSystem.METRIC, "x", marks, Optional.empty())
        .orElseThrow();
  }

  private static long marked(PlanDrawing drawing) {
    return drawing.items().stream().filter(i -> i.style().equals(PlanStyle.CHOSEN_LINE)).count();
  }

  @Test
  void aChosenPartOrJoistIsMarkedInThePlanAndFoundWhereItIsDrawn() {
    String outlet = id(PartKind.OUTLET);
    String strap = id(PartKind.STRAP);
    String joist = survey.bays().get(0).field().lines().get(0).plies().get(0).id();
    assertThat(marked(plan(List.of(), Set.of()).drawing().at(50))).isZero();
    for (String id : List.of(outlet, strap, joist)) {
      PlanThings plan = plan(List.of(), Set.of(id));
      assertThat(marked(plan.drawing().at(50))).as(id).isPositive();
      assertThat(plan.reach(Set.of(id))).as(id).isNotEmpty();
    }
    PlanThings plan = plan(List.of(), Set.of());
    assertThat(plan.at(middle(plan.reach(Set.of(outlet))))).contains(outlet);
    assertThat(plan.at(new Vec2(1e3, 1e3))).isEmpty();
  }

  @Test
  void aChosenPartIsMarkedInTheSectionAndFoundWhereItIsDrawn() {
    String pan =
        layout.parts().stream()
            .filter(p -> p.kind() == PartKind.PAN && p.bay().equals(Optional.of("B3")))
            .map(Part::id)
            .findFirst()
            .orElseThrow();
    PlanThings section = things(Set.of(pan));
    assertThat(marked(section.drawing().at(50))).isPositive();
    assertThat(marked(things(Set.of("another")).drawing().at(50))).isZero();
    PlanThings.Thing drawn =
        section.things().stream().filter(t -> t.id().equals(pan)).findFirst().orElseThrow();
    assertThat(section.at(inside(drawn))).contains(pan);
  }

  private static Vec2 inside(PlanThings.Thing thing) {
    List<Vec2> ring = thing.outline().outer();
    double x = ring.stream().mapToDouble(Vec2::x).average().orElseThrow();
    double low = ring.stream().mapToDouble(Vec2::y).min().orElseThrow();
    double high = ring.stream().mapToDouble(Vec2::y).max().orElseThrow();
    return IntStream.range(0, 4000)
        .mapToObj(i -> new Vec2(x, low + (high - low) * i / 4000))
        .filter(thing::covers)
        .skip(1)
        .findFirst()
        .orElseThrow();
  }

  private PlanThings things(Set<String> marked) {
    Optional<FieldLayout> own = Optional.of(layout.fields().get(0));
    return BaySection.of(survey.bays().get(0), "B3", own, UnitSystem.METRIC, marked);
  }

  private String id(PartKind kind) {
    return layout.parts().stream()
        .filter(p -> p.kind() == kind)
        .map(Part::id)
        .findFirst()
        .orElseThrow();
  }

  private static Vec2 middle(List<Vec2> ring) {
    Vec2 sum = ring.stream().reduce(new Vec2(0, 0), Vec2::plus);
    return sum.times(1.0 / ring.size());
  }
}
