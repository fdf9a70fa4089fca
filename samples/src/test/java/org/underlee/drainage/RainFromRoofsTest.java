package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.RainData;
import org.underlee.finding.Finding;
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
