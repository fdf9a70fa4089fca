package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;

/** Bays over what must stay dry are served whole, the others are left open and named. */
class DryZoneTest {
  private static final TimberDeck DECK = TimberDeck.plain(5);

  private static Layout keeping(DryZone zone) {
    return Layouter.layOut(
        DECK.frame(),
        DECK.fieldBays(),
        Scope.OUTSIDE.with(Wishes.NONE.keepingDry(zone)),
        KitReader.builtIn());
  }

  private static List<String> served(String corners) {
    return keeping(DryZone.parse(corners)).fields().get(0).bays();
  }

  /** Joists stand every 0.4 m from x = 0: the zone lies below the second and the third space. */
  @Test
  void theBaysOverADrawnZoneAreServedOverTheirWholeRunAndTheOthersAreNamed() {
    Layout layout = keeping(DryZone.parse("0.5,0.5 1.1,0.5 1.1,0.6 0.5,0.6"));
    FieldLayout all =
        Layouter.layOut(DECK.frame(), DECK.fieldBays(), Scope.OUTSIDE, KitReader.builtIn())
            .fields()
            .get(0);
    assertThat(layout.fields().get(0).bays()).hasSize(2);
    assertThat(layout.fields().get(0).run()).isEqualTo(all.run());
    List<Finding> open =
        layout.findings().stream()
            .filter(f -> f.rule().id().equals("bay-outside-dry-zone"))
            .toList();
    assertThat(open).hasSize(all.bays().size() - 2);
    assertThat(open).allMatch(f -> f.measure().isEmpty() && f.fix().isPresent());
  }

  @Test
  void aHollowOrASecondPolygonServesWhatItCoversAndNothingBetween() {
    String legs = "0.1,0 0.2,0 0.2,0.9 1.4,0.9 1.4,0 1.5,0 1.5,1 0.1,1";
    assertThat(served(legs)).hasSize(4);
    assertThat(served("0.1,0 0.2,0 0.2,1; 1.4,0 1.5,0 1.5,1")).hasSize(2);
  }

  @Test
  void theWindingAndAFirstCornerGivenAgainChangeNothing() {
    List<String> one = served("0.5,0 1.1,0 1.1,1 0.5,1");
    assertThat(served("0.5,1 1.1,1 1.1,0 0.5,0")).isEqualTo(one);
    assertThat(served("0.5,0 1.1,0 1.1,1 0.5,1 0.5,0")).isEqualTo(one);
  }

  @Test
  void aSlabServesAsTheSameCornersDrawn() {
    Outline plan = Outline.rectangle(0.5, 0, 1.1, 1);
    Extrusion slab =
        Extrusion.straight(new Transform(Vec3.ZERO, Vec3.X, Vec3.Y, Vec3.Z), plan, 0.1);
    DryZone below = DryZone.below(List.of(slab.mesh()));
    assertThat(keeping(below).fields().get(0).bays()).isEqualTo(served("0.5,0 1.1,0 1.1,1 0.5,1"));
    assertThat(DryZone.parse(below.text())).isEqualTo(below);
  }

  @Test
  void aZoneThatHitsNoBayIsRefusedWithThePlaceOfTheJoists() {
    assertThatThrownBy(() -> served("50,50 51,50 51,51"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no bay")
        .hasMessageContaining(String.format(java.util.Locale.ROOT, "%.3f", TimberDeck.L));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0,0 1,0", "0,0 1,1 1,0 0,1", "0,0 1,0 1;1", "0,0 1,0 2,0", "0,0 x,1 1,1"})
  void whatIsNoPolygonIsRefusedWithTheFormThatIsMeant(String text) {
    assertThatThrownBy(() -> DryZone.parse(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("dry zone");
  }

  @Test
  void aNumberAloneIsANameOfARoom() {
    assertThat(DryZone.isDrawn("101")).isFalse();
    assertThat(DryZone.isDrawn("-1.5,0 3,0 3,2; 4,4 5,4 5,5")).isTrue();
  }

  @Test
  void cornersComeOutAsTheyWentIn() {
    DryZone zone =
        new DryZone(List.of(List.of(new Vec2(1e7, 0.0001), new Vec2(2, 0), new Vec2(2, 3))));
    assertThat(DryZone.parse(zone.text())).isEqualTo(zone);
  }
}
