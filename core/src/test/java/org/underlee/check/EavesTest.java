package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.TimberDeck;
import org.underlee.layout.Onto;
import org.underlee.layout.Wishes;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Roofs over a deck of joists from y = 0 to 3 m and x = 0 to 1.638 m, their tops at 2.684 m; by
 * hand: a roof falls to an eave over the deck with all of its plan above the strip that is over it.
 */
class EavesTest {
  private static List<Finding> found(CheckInput input) {
    return new Eaves().of(input).findings();
  }

  private static CheckInput with(BuildingElement... later) {
    List<BuildingElement> elements = new ArrayList<>(CheckDecks.deck().elements());
    elements.addAll(Arrays.asList(later));
    CheckInput plain = CheckCases.plain();
    return new CheckInput(
        plain.fields(), elements, plain.layout(), plain.storm(), plain.proved(), plain.data());
  }

  private static List<Onto> offered(Finding finding) {
    Fix.Option option = finding.fix().orElseThrow().action().orElseThrow().options().get(0);
    assertThat(option.name()).isEqualTo("--also-drains");
    return Arrays.stream(option.value().split(" ")).map(Onto::parse).toList();
  }

  private static double area(Finding finding) {
    return offered(finding).stream().mapToDouble(Onto::area).sum();
  }

  /** By hand: 1 m of eave and 4.3 m from the ridge, seen from above: 4.3 m². */
  @Test
  void theAreaThatFallsToAnEaveIsOfferedByHandCalculation() {
    Finding told = found(with(RoofsOver.falling(0.2, 1.2, 0.3))).get(0);
    assertThat(area(told)).isCloseTo(4.3, within(0.015));
    assertThat(told.message(UnitSystem.METRIC))
        .contains("rain of 4.30 m²", "House roof", "falls off 1000 mm of its eave");
    assertThat(offered(told)).hasSize(3).allMatch(o -> Math.abs(o.at().y() - 0.3) < 1e-3);
    double moment = offered(told).stream().mapToDouble(o -> o.area() * o.at().x()).sum();
    assertThat(moment / area(told)).isCloseTo(0.7, within(0.005));
  }

  /**
   * By hand: of 3 m of eave from x = 1 the deck is under what lies before its last joist's middle.
   */
  @Test
  void onlyTheStripOverTheDeckCounts() {
    double edge = CheckCases.plain().fields().get(0).field().across().to();
    Finding told = found(with(RoofsOver.falling(1, 4, 0.3))).get(0);
    assertThat(area(told)).isCloseTo((edge - 1) * 4.3, within(0.025 * 4.3 + 0.01));
  }

  @Test
  void whatIsToldOrLedAwayOrFallsElsewhereIsNoMatter() {
    BuildingElement roof = RoofsOver.falling(0.2, 1.2, 0.3);
    CheckInput input = with(roof);
    Wishes told = Wishes.NONE.with(offered(found(input).get(0)));
    assertThat(found(input.with(told))).isEmpty();
    BuildingElement gutter =
        new TimberDeck()
            .bar("IfcPipeSegment", "Roof gutter", 0, 0.3, 3.6, 1.4, 0.4, 3.7)
            .elements()
            .get(0);
    assertThat(found(with(roof, gutter))).isEmpty();
    assertThat(found(with(RoofsOver.falling(0.2, 1.2, -0.3)))).as("eave short of it").isEmpty();
    assertThat(found(with(RoofsOver.roof(0.2, 1.2, 1, 6, -3, 4)))).as("falls away").isEmpty();
    assertThat(found(with(RoofsOver.roof(0.2, 1.2, -4, 6, 0.3, 5.99)))).as("flat").isEmpty();
  }

  @Test
  void whatRunsOntoALowerRoofStaysThere() {
    BuildingElement lower = RoofsOver.roof(-1, 3, 0, 3.4, 5, 3.0);
    List<Finding> found = found(with(RoofsOver.falling(0.2, 1.2, 0.3), lower));
    assertThat(found).isEmpty();
  }
}
