package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.underlee.drainage.Leak;
import org.underlee.drainage.OutletShare;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.report.RainInPlan;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

/** The water in a plan: of the pine deck one outlet drains all bays, and beyond the beam none. */
class PlanWaterTest {
  private static final Path SAMPLES = Path.of(System.getProperty("underlee.root", "."), "samples");

  private static Design pine;

  @BeforeAll
  static void designTheSample() {
    pine =
        DeckRun.design(
            DeckRun.survey(SAMPLES.resolve("pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn());
  }

  private static PlanDrawing plan(Optional<PlanRain> rain) {
    return DeckPlan.of(
            pine.survey().bays(),
            Optional.of(pine.layout()),
            UnitSystem.METRIC,
            "x",
            DeckPlan.Marks.NONE,
            rain)
        .orElseThrow()
        .drawing()
        .at(50);
  }

  private static List<String> texts(PlanDrawing plan) {
    return plan.items().stream()
        .filter(PlanItem.Label.class::isInstance)
        .map(l -> ((PlanItem.Label) l).text())
        .toList();
  }

  private static List<PlanItem> of(PlanDrawing plan, PlanStyle style) {
    return plan.items().stream().filter(i -> i.style().equals(style)).toList();
  }

  @Test
  void theGutterHasAnArrowDownItsFallToTheOutlet() {
    PlanDrawing plan = plan(Optional.empty());
    assertThat(texts(plan)).contains("1:192", "O1");
    PlanPlaces places = new PlanPlaces(pine.survey().bays().get(0).field());
    Vec2 outlet =
        places.ofWorld(
            pine.layout().parts().stream()
                .filter(p -> p.kind() == PartKind.OUTLET)
                .findFirst()
                .orElseThrow()
                .bounds()
                .centre());
    List<PlanItem.Arrow> along =
        of(plan, PlanStyle.GUTTER_FALL).stream()
            .filter(PlanItem.Arrow.class::isInstance)
            .map(PlanItem.Arrow.class::cast)
            .toList();
    assertThat(along).hasSize(1);
    assertThat(along.get(0).to().minus(outlet).length())
        .isLessThan(along.get(0).from().minus(outlet).length());
  }

  @Test
  void anOutletSaysWhichBaysItDrains() {
    assertThat(texts(plan(Optional.of(RainInPlan.of(pine.proof()))))).contains("O1 drains B1–B12");
  }

  @Test
  void ofTwoOutletsEachHasItsBaysItsTintAndItsMarkInThem() {
    OutletShare one = pine.proof().outlets().get(0);
    var fields = pine.survey().bays();
    var outlet =
        pine.layout().parts().stream().filter(p -> p.kind() == PartKind.OUTLET).findFirst();
    Catchments.Own first =
        new Catchments.Own(outlet.orElseThrow(), "O1", List.of("B1", "B2", "B4"), 0);
    Catchments.Own second = new Catchments.Own(outlet.orElseThrow(), "O2", List.of("B4", "B5"), 1);
    Catchments both = new Catchments(List.of(first, second));
    assertThat(one.bays()).containsKey("B5");
    assertThat(first.words(fields.get(0))).isEqualTo("O1 drains B1–B2, B4");
    assertThat(both.of("deck-1/field-1", "B4")).containsExactly(first, second);
    PlanBuilder things = new PlanBuilder();
    PlanPlaces places = new PlanPlaces(fields.get(0).field());
    new PlanFraming(things, places, fields, both)
        .draw(Optional.of(pine.layout()), List.of(), Set.of());
    PlanDrawing framing = things.build("x");
    assertThat(of(framing, PlanStyle.PANS.get(1))).isNotEmpty();
    assertThat(of(framing, PlanStyle.PANS.get(0)).size())
        .isGreaterThan(of(framing, PlanStyle.PANS.get(1)).size());
    PlanBuilder words = new PlanBuilder();
    new PlanTexts(fields, Optional.of(pine.layout()), places, UnitSystem.METRIC, both)
        .write(words, PlanRoom.beside(framing, 0.05), 0.05);
    assertThat(texts(words.build("x"))).contains("O1+O2").containsOnlyOnce("O2");
  }

  @Test
  void deckBeyondTheGutterIsHatchedAsNotDrained() {
    PlanDrawing plan = plan(Optional.of(RainInPlan.of(pine.proof())));
    assertThat(texts(plan)).filteredOn("not drained"::equals).hasSizeGreaterThan(1);
    List<Leak> open = pine.proof().leaks().stream().filter(l -> l.cause().isOpenDeck()).toList();
    PlanPlaces places = new PlanPlaces(pine.survey().bays().get(0).field());
    Envelope strip = new Envelope();
    open.forEach(
        l ->
            l.regions()
                .forEach(
                    r ->
                        r.forEach(
                            p ->
                                strip.expandToInclude(
                                    places.ofWorld(p).x(), places.ofWorld(p).y()))));
    Envelope hatched = new Envelope();
    of(plan, PlanStyle.OPEN).stream()
        .flatMap(i -> ((PlanItem.Line) i).points().stream())
        .filter(p -> strip.contains(p.x(), p.y()))
        .forEach(p -> hatched.expandToInclude(p.x(), p.y()));
    assertThat(hatched.getWidth()).isGreaterThan(0.9 * strip.getWidth());
    assertThat(hatched.getHeight()).isGreaterThan(0.9 * strip.getHeight());
    assertThat(of(plan(Optional.empty()), PlanStyle.OPEN)).isEmpty();
  }

  @Test
  void whereRainGetsThroughThereIsAMarkAndTheWayThatItComes() {
    PlanDrawing plan = plan(Optional.of(RainInPlan.of(pine.proof())));
    List<Leak> leaks = pine.proof().leaks().stream().filter(l -> !l.cause().isOpenDeck()).toList();
    assertThat(of(plan, PlanStyle.ALERT)).hasSize(leaks.size() + 1); // and that of the legend
    int ofLegend = of(plan, PlanStyle.LEAK).size();
    Vec3 at = leaks.get(0).at();
    assertThat(of(plan(Optional.of(landing(at, 0.05))), PlanStyle.LEAK)).hasSize(ofLegend);
    PlanDrawing much = plan(Optional.of(landing(at, 0.5)));
    assertThat(of(much, PlanStyle.LEAK)).hasSize(ofLegend + 1);
    PlanPlaces places = new PlanPlaces(pine.survey().bays().get(0).field());
    assertThat(of(much, PlanStyle.LEAK).stream().map(a -> ((PlanItem.Arrow) a).to()))
        .contains(places.ofWorld(at));
  }

  /** Rain that lands on a square a metre away from where it gets through. */
  private static PlanRain landing(Vec3 at, double side) {
    Vec3 corner = at.plus(new Vec3(1, 0, 0));
    List<Vec3> square =
        List.of(
            corner,
            corner.plus(new Vec3(side, 0, 0)),
            corner.plus(new Vec3(side, side, 0)),
            corner.plus(new Vec3(0, side, 0)));
    return new PlanRain(Map.of(), List.of(), List.of(new PlanRain.Through(at, List.of(square))));
  }

  @Test
  void theLegendKeepsItsDistancesOnPaperAtEveryScale() {
    ScaledDrawing plan =
        DeckPlan.of(
                pine.survey().bays(),
                Optional.of(pine.layout()),
                UnitSystem.METRIC,
                "x",
                DeckPlan.Marks.NONE,
                Optional.of(RainInPlan.of(pine.proof())))
            .orElseThrow()
            .drawing();
    for (double scale : List.of(20.0, 50.0, 200.0)) {
      List<PlanItem.Label> labels =
          plan.at(scale).items().stream()
              .filter(PlanItem.Label.class::isInstance)
              .map(PlanItem.Label.class::cast)
              .toList();
      Vec2 bar = at(labels, "2 m");
      Vec2 words = at(labels, "rain gets through here, and its way there");
      assertThat((words.x() - bar.x()) * 1000 / scale).isBetween(18.9, 19.1);
    }
  }

  private static Vec2 at(List<PlanItem.Label> labels, String text) {
    return labels.stream().filter(l -> l.text().equals(text)).findFirst().orElseThrow().at();
  }
}
