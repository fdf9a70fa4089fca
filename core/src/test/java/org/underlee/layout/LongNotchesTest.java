package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.framing.TimberDeck;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.kit.PanValue;

/** A rail is held by screws, so it may not be notched away over more than their spacing. */
class LongNotchesTest {
  private static final double W = TimberDeck.W;
  private static final double Z = TimberDeck.Z;
  private static final Kit KIT = KitReader.builtIn();

  /** Where a duct lies across the first bay, so low in it that no screw fits below. */
  private static List<Finding> withDuct(double length, double above) {
    TimberDeck deck =
        TimberDeck.plain(5)
            .bar(
                "IfcDuctSegment",
                "duct",
                W + 0.01,
                1,
                Z + above,
                0.39,
                1 + length,
                Z + above + 0.1);
    Layout layout = Layouter.layOut(deck.frame(), deck.fieldBays(), Scope.OUTSIDE, KIT);
    assertThat(layout.parts())
        .anyMatch(p -> p.cuts().stream().anyMatch(Cut.Notch.class::isInstance));
    return layout.findings().stream()
        .filter(f -> f.rule().id().equals("rail-notched-long"))
        .toList();
  }

  @Test
  void aNotchShorterThanTheSpacingOfScrewsIsBuilt() {
    double longest =
        KIT.get(PanValue.RAIL_FASTENER_SPACING) - 2 * KIT.get(PanValue.NOTCH_CLEARANCE);
    assertThat(withDuct(longest - 0.001, 0.03)).isEmpty();
  }

  @Test
  void aLongerOneIsRefusedWithItsLengthAndTheSpacing() {
    List<Finding> found = withDuct(0.9, 0.03);
    assertThat(found).hasSize(1);
    Finding.Measure measure = found.get(0).measure().orElseThrow();
    double notch = 0.9 + 2 * KIT.get(PanValue.NOTCH_CLEARANCE);
    assertThat(measure.measured().si()).isCloseTo(notch, within(1e-6));
    assertThat(measure.limit().si()).isEqualTo(KIT.get(PanValue.RAIL_FASTENER_SPACING));
    assertThat(found.get(0).subjects()).extracting(Finding.Subject::name).containsExactly("B1");
  }

  @Test
  void aLongNotchThatLeavesRoomForAScrewBelowItIsBuilt() {
    assertThat(withDuct(0.9, 0.05)).isEmpty();
  }
}
