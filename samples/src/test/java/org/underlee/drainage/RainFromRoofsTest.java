package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.RainData;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.InputException;
import org.underlee.framing.Field;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.Onto;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.Checked;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.RainFromRoofs;
import org.underlee.run.Resync;
import org.underlee.run.Resynced;
import org.underlee.run.Survey;
import org.underlee.run.SurveyRequest;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;
import org.underlee.step.StepFile;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;

/**
 * Rain of a roof that comes onto a deck at one place, against drops and against hand calculation.
 */
class RainFromRoofsTest {
  private static final Survey HARBOUR =
      DeckRun.survey(IfcEmitter.emit(SampleDecks.all().get(1), Mix.PLAIN), "harbour.ifc");

  private static Design design(List<Onto> onto) {
    Scope scope = new Scope(Optional.empty(), Optional.empty(), Wishes.NONE.with(onto));
    return DeckRun.design(
        HARBOUR, scope, KitReader.builtIn(), RainData.builtIn().service(RainData.ANYWHERE));
  }

  /** In the middle of the bay with this number, one metre from its high end. */
  private static Vec2 inBay(int number) {
    var bays = HARBOUR.bays().get(0);
    var bay = bays.bays().get(number);
    double v = bay.stretch().from() + 1;
    Vec3 at =
        bays.field()
            .frame()
            .apply(new Vec3((bay.left().centre(v) + bay.right().centre(v)) / 2, v, 0));
    return new Vec2(at.x(), at.y());
  }

  private static double drained(Design design) {
    return design.proof().outlets().stream().mapToDouble(OutletShare::area).sum();
  }

  @Test
  void allOfItReachesAnOutletWhereDropsOfItDo() {
    Onto onto = new Onto(12, inBay(1));
    Design with = design(List.of(onto));
    DrainCase one = DrainCases.of(HARBOUR.bays(), with.layout(), List.of(onto)).get(0);
    DropMarch march = new DropMarch(one);
    Arrival there = one.arrivals().get(0);
    for (int i = 0; i < 20; i++) {
      assertThat(march.drop(there.u(), there.v(), new Random(i)).outlet()).isPresent();
    }
    assertThat(with.proof().added()).isEqualTo(12);
    assertThat(with.proof().area()).isCloseTo(design(List.of()).proof().area(), within(1e-9));
    assertThat(drained(with)).isCloseTo(drained(design(List.of())) + 12, within(1e-9));
  }

  @Test
  void whatComesInGoesOut() {
    DrainProof proof = design(List.of(new Onto(12, inBay(1)), new Onto(7, inBay(2)))).proof();
    double leaks = proof.leaks().stream().mapToDouble(Leak::area).sum();
    assertThat(proof.drained() + leaks).isCloseTo(proof.area() + 19, within(1e-9));
  }

  @Test
  void itIsInTheShareOfTheBayThatItComesDownIn() {
    double before = ofBay(design(List.of()), "B2");
    assertThat(ofBay(design(List.of(new Onto(12, inBay(1)))), "B2"))
        .isCloseTo(before + 12, within(1e-9));
  }

  private static double ofBay(Design design, String bay) {
    return design.proof().outlets().stream()
        .mapToDouble(o -> o.bays().getOrDefault(bay, 0.0))
        .sum();
  }

  /** 12 m² in rain of 8 in/h (NSPC's design rate) are 12 · 203.2 = 2438.4 litres an hour. */
  @Test
  void aFindingTellsItsLitresByHandCalculation() {
    Finding told =
        design(List.of(new Onto(12, inBay(1)))).findings().stream()
            .filter(f -> f.rule().id().equals("roof-drains-onto-deck"))
            .findFirst()
            .orElseThrow();
    assertThat(told.message()).contains("counted in");
    Quantity flow = told.measure().orElseThrow().measured();
    assertThat(flow.kind()).isEqualTo(Kind.DRIP);
    assertThat(flow.si() * 1000 * 3600).isCloseTo(2438.4, within(1e-6));
    assertThat(design(List.of()).findings())
        .noneMatch(f -> f.rule().id().equals("roof-drains-onto-deck"));
  }

  @Test
  void aLargeRoofAsksForMoreOutletsOrIsToldToBeTooMuch() {
    Design plain = design(List.of());
    Design large = design(List.of(new Onto(300, inBay(1))));
    assertThat(outlets(large) > outlets(plain) || tellsTooSmall(large)).isTrue();
    assertThat(tellsTooSmall(plain)).isFalse();
  }

  private static long outlets(Design design) {
    return design.layout().parts().stream().filter(p -> p.kind() == PartKind.OUTLET).count();
  }

  private static boolean tellsTooSmall(Design design) {
    return design.findings().stream().anyMatch(f -> f.rule().id().endsWith("-too-small"));
  }

  @Test
  void theModelKeepsItAndTheCheckOfTheModelCountsItIn() {
    Design design = design(List.of(new Onto(12, inBay(1))));
    Checked checked =
        DeckRun.check(
            design.written().bytes(), "drained.ifc", SurveyRequest.PLAIN, Optional.empty());
    assertThat(checked.proof().added()).isEqualTo(12);
    assertThat(checked.proof().dryFraction()).isCloseTo(design.proof().dryFraction(), within(5e-4));
    assertThat(checked.findings()).anyMatch(f -> f.rule().id().equals("roof-drains-onto-deck"));
  }

  @Test
  void aPlaceThatIsOnNoDeckAfterANewExportIsToldAndCountedNowhere() {
    Onto onto = new Onto(12, new Vec2(inBay(1).x() + 100, inBay(1).y()));
    byte[] old = design(List.of(onto, new Onto(7, inBay(1)))).written().bytes();
    Resynced again =
        Resync.of(
            StepFile.of(IfcEmitter.emit(SampleDecks.all().get(1), Mix.PLAIN), "new.ifc"),
            StepFile.of(old, "old.ifc"),
            List.of(),
            Optional.empty(),
            Optional.empty());
    assertThat(again.decisions())
        .filteredOn(d -> d.name().equals("also drains"))
        .extracting(Resynced.Decision::kept)
        .containsExactly(false, true);
    assertThat(again.design().proof().added()).isEqualTo(7);
    Field field = HARBOUR.bays().get(0).field();
    double away = Math.abs(field.frame().toLocal(onto.place()).x() - field.across().to());
    assertThat(again.design().findings())
        .filteredOn(f -> f.rule().id().equals("roof-drains-past-deck"))
        .singleElement()
        .satisfies(
            f ->
                assertThat(f.message(UnitSystem.METRIC))
                    .contains("12.00 m²", field.id(), Quantity.length(away).in(UnitSystem.METRIC)));
  }

  /**
   * A slab that is a roof, over the balcony's third bay and more: 1.5 m of eave, 4.3 m to the
   * ridge.
   */
  private static final String ROOF =
      """
      #990001=IFCCARTESIANPOINT((1000.,0.,0.));
      #990002=IFCDIRECTION((1.,0.,0.));
      #990003=IFCDIRECTION((0.,1.,0.));
      #990004=IFCAXIS2PLACEMENT3D(#990001,#990002,#990003);
      #990005=IFCLOCALPLACEMENT(#24,#990004);
      #990006=IFCCARTESIANPOINT((-4000.,6000.));
      #990007=IFCCARTESIANPOINT((-4000.,5800.));
      #990008=IFCCARTESIANPOINT((300.,3650.));
      #990009=IFCCARTESIANPOINT((300.,3850.));
      #990010=IFCPOLYLINE((#990006,#990007,#990008,#990009,#990006));
      #990011=IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$,#990010);
      #990012=IFCAXIS2PLACEMENT3D(#46,$,$);
      #990013=IFCEXTRUDEDAREASOLID(#990011,#990012,#7,1500.);
      #990014=IFCSHAPEREPRESENTATION(#11,'Body','SweptSolid',(#990013));
      #990015=IFCPRODUCTDEFINITIONSHAPE($,$,(#990014));
      #990016=IFCSLAB('0aiyc8ggVJUS1wK64rT6zz',#5,'Main roof',$,$,#990005,#990015,$,.ROOF.);
      """;

  /** By hand: 1.5 · 4.3 = 6.45 m². */
  @Test
  void aRoofOfTheModelIsOfferedByItsAreaAndCountedInAsItIsTyped() throws IOException {
    Path root = Path.of(System.getProperty("underlee.root", "."));
    String plain = Files.readString(root.resolve("samples/harbour-balcony/harbour-balcony.ifc"));
    int end = plain.lastIndexOf("ENDSEC;");
    byte[] model =
        (plain.substring(0, end) + ROOF + plain.substring(end)).getBytes(StandardCharsets.UTF_8);
    Survey survey = DeckRun.survey(model, "roof.ifc");
    Finding told =
        DeckRun.design(survey, Scope.OUTSIDE, KitReader.builtIn()).findings().stream()
            .filter(f -> f.rule().id().equals("eave-over-deck"))
            .findFirst()
            .orElseThrow();
    assertThat(told.message()).contains("6.45 m²", "Main roof", "1500 mm of its eave");
    Fix.Option option = told.fix().orElseThrow().action().orElseThrow().options().get(0);
    List<Onto> typed =
        Stream.of(option.value().split(" ")).map(text -> RainFromRoofs.on(survey, text)).toList();
    assertThat(typed.stream().mapToDouble(Onto::area).sum()).isCloseTo(6.45, within(0.02));
    Scope scope = new Scope(Optional.empty(), Optional.empty(), Wishes.NONE.with(typed));
    Design with = DeckRun.design(survey, scope, KitReader.builtIn());
    assertThat(with.findings()).noneMatch(f -> f.rule().id().equals("eave-over-deck"));
    assertThat(with.proof().added()).isCloseTo(6.45, within(0.02));
  }

  @Test
  void aPlaceBesideEveryDeckOrNoAreaIsRefused() {
    assertThatThrownBy(() -> RainFromRoofs.on(HARBOUR, "12m2@900,900"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no deck at the place");
    assertThatThrownBy(() -> RainFromRoofs.on(HARBOUR, "12m2")).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> RainFromRoofs.on(HARBOUR, "0m2@1,1"))
        .isInstanceOf(InputException.class);
  }

  @Test
  void anAreaInSquareFeetIsReadByTheExactFoot() {
    Onto onto = Onto.parse("100ft2@3.2,-1.5");
    assertThat(onto.area()).isCloseTo(9.290304, within(1e-12));
    assertThat(Onto.parse(onto.text())).isEqualTo(onto);
  }
}
