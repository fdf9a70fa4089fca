package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.flow.RainData;
import org.underlee.geom.Vec2;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;

/** Words that stand on a pipe's circle can be read as little as the circle. */
class PlanTextsTest {
  private static final Path SAMPLES = Path.of(System.getProperty("underlee.root", "."), "samples");

  /** At 1:50, as the sheet of a deck of some metres is. */
  private static final double METRES_PER_MM = 0.05;

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void noTextOfThePlanStandsOnTheCircleOfAPipeOrOnBlocking(UnitSystem units) {
    Survey survey = DeckRun.survey(sample("pine-deck"));
    Layout layout = layout(survey);
    PlanDrawing plan =
        DeckPlan.of(survey.bays(), Optional.of(layout), units, "x").orElseThrow().at(50);
    List<PlanItem> circles =
        plan.items().stream()
            .filter(i -> i instanceof PlanItem.Circle && i.style().equals(PlanStyle.CROSSING))
            .toList();
    List<PlanItem> texts = plan.items().stream().filter(PlanItem.Label.class::isInstance).toList();
    assertThat(circles).isNotEmpty();
    assertThat(texts).hasSizeGreaterThan(20);
    List<PlanItem> blocking =
        plan.items().stream().filter(i -> i.style().equals(PlanStyle.BLOCKING)).toList();
    assertThat(blocking).isNotEmpty();
    for (PlanItem taken : Stream.concat(circles.stream(), blocking.stream()).toList()) {
      assertThat(texts).noneMatch(t -> meet(t, taken, METRES_PER_MM));
    }
    Vec2 onIt = ((PlanItem.Circle) circles.get(0)).centre();
    PlanItem there =
        new PlanItem.Label(onIt, "1:96", 1.8, PlanItem.Anchor.MIDDLE, 90, PlanStyle.FALL);
    assertThat(meet(there, circles.get(0), METRES_PER_MM)).as("one that does is noticed").isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void inAPlanOfOneFieldNoTextStandsOnAnotherOrOnTheGutter(String sample) {
    Survey survey = DeckRun.survey(sample(sample));
    Optional<Layout> layout = Optional.of(layout(survey));
    for (FieldBays field : survey.bays()) {
      PlanDrawing plan =
          onPaper(DeckPlan.of(List.of(field), layout, UnitSystem.METRIC, "x").orElseThrow());
      assertThat(plan.legibleOn(paper(plan)).items()).hasSameSizeAs(plan.items());
      double perMm = paper(plan).denominator() / 1000;
      List<PlanItem> gutters =
          plan.items().stream().filter(i -> i.style().equals(PlanStyle.GUTTER)).toList();
      assertThat(gutters).isNotEmpty();
      assertThat(plan.items().stream().filter(PlanItem.Label.class::isInstance))
          .noneMatch(t -> gutters.stream().anyMatch(g -> meet(t, g, perMm)));
    }
  }

  @Test
  void anOverviewNamesEachFieldAndItsFirstAndLastBayAndNoTextStandsOnAnother() {
    Survey survey = DeckRun.survey(sample("hillside-terrace"));
    PlanDrawing plan =
        onPaper(DeckOverview.of(survey.bays(), layout(survey), UnitSystem.METRIC, "x"));
    List<String> texts = texts(plan);
    assertThat(survey.bays()).hasSize(3);
    assertThat(texts).contains("F1", "F2", "F3");
    for (FieldBays field : survey.bays()) {
      int last = field.bays().size() - 1;
      assertThat(texts).contains("B1", field.bays().get(last).id());
    }
    assertThat(plan.legibleOn(paper(plan)).items()).hasSameSizeAs(plan.items());
    PlanDrawing all =
        onPaper(
            DeckPlan.of(survey.bays(), Optional.of(layout(survey)), UnitSystem.METRIC, "x")
                .orElseThrow());
    assertThat(all.legibleOn(paper(all)).items().size())
        .as("with all texts in one drawing some would")
        .isLessThan(all.items().size());
  }

  @Test
  void aPlanOfSeveralFieldsSaysWhichIsWhichAndOfOneDoesNot() {
    Survey survey = DeckRun.survey(sample("hillside-terrace"));
    Optional<Layout> layout = Optional.of(layout(survey));
    PlanDrawing all =
        onPaper(DeckPlan.of(survey.bays(), layout, UnitSystem.METRIC, "x").orElseThrow());
    assertThat(texts(all.legibleOn(paper(all)))).contains("F1", "F2", "F3");
    PlanDrawing bare =
        onPaper(DeckPlan.of(survey.bays(), Optional.empty(), UnitSystem.METRIC, "x").orElseThrow());
    assertThat(texts(bare.legibleOn(paper(bare))))
        .containsAll(survey.bays().stream().map(b -> b.field().id()).toList());
    List<FieldBays> one = survey.bays().subList(0, 1);
    assertThat(texts(DeckPlan.of(one, layout, UnitSystem.METRIC, "x").orElseThrow().at(50)))
        .contains("B1")
        .doesNotContain("F1");
  }

  @Test
  void aTextWithoutRoomIsLeftOutWithTheLineFromIt() {
    PlanBuilder plan = new PlanBuilder();
    plan.leader(new Vec2(0, 0), new Vec2(1, 1), "the first text");
    plan.leader(new Vec2(0.5, 0), new Vec2(1.01, 1.01), "the second text");
    PlanDrawing drawing = plan.build("x");
    assertThat(drawing.items()).hasSize(4);
    PlanDrawing legible = drawing.legibleOn(PlanSheet.of(drawing, 50, 5));
    assertThat(legible.items()).containsExactlyElementsOf(drawing.items().subList(0, 2));
  }

  private static List<String> texts(PlanDrawing plan) {
    return plan.items().stream()
        .filter(PlanItem.Label.class::isInstance)
        .map(l -> ((PlanItem.Label) l).text())
        .toList();
  }

  private static Path sample(String name) {
    return SAMPLES.resolve(name).resolve(name + ".ifc");
  }

  private static Layout layout(Survey survey) {
    return DeckRun.layOut(
        survey, Scope.OUTSIDE, KitReader.builtIn(), RainData.builtIn().service(RainData.ANYWHERE));
  }

  private static PlanDrawing onPaper(ScaledDrawing plan) {
    return plan.at(PlanSheet.fitting(plan, 270, 150, 5, PlanSheet.METRIC_SCALES).denominator());
  }

  /** An A4 sheet on its side, less its margins. */
  private static PlanSheet paper(PlanDrawing plan) {
    return PlanSheet.fitting(plan, 270, 150, 5, PlanSheet.METRIC_SCALES);
  }

  private static boolean meet(PlanItem a, PlanItem b, double metresPerMm) {
    List<Vec2> p = reach(a, metresPerMm);
    List<Vec2> q = reach(b, metresPerMm);
    return least(p, true) < most(q, true)
        && least(q, true) < most(p, true)
        && least(p, false) < most(q, false)
        && least(q, false) < most(p, false);
  }

  private static List<Vec2> reach(PlanItem item, double metresPerMm) {
    List<Vec2> all = new ArrayList<>();
    PlanReach.of(item, metresPerMm, all);
    return all;
  }

  private static double least(List<Vec2> all, boolean x) {
    return all.stream().mapToDouble(p -> x ? p.x() : p.y()).min().orElseThrow();
  }

  private static double most(List<Vec2> all, boolean x) {
    return all.stream().mapToDouble(p -> x ? p.x() : p.y()).max().orElseThrow();
  }
}
