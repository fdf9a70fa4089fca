package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.DrainCases;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.WaterProver;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.Role;
import org.underlee.framing.TimberDeck;
import org.underlee.framing.Told;
import org.underlee.kit.KitReader;

/** A free-standing deck on which joists meet at a flush beam drains from there to both ends. */
class BothWaysTest {
  private static final double W = TimberDeck.W;
  private static final double D = TimberDeck.D;
  private static final double L = TimberDeck.L;
  private static final double Z = TimberDeck.Z;
  private static final int JOISTS = 6;
  private static final double RIGHT = (JOISTS - 1) * 0.4 + W;

  private static final Told MIDDLE_IS_LEDGER =
      new Told(Map.of("middle", Role.LEDGER), Set.of(), Map.of("near 1", true));

  private static TimberDeck deck() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < JOISTS; i++) {
      deck.joist("near " + i, i * 0.4, -L - W / 2, -W / 2)
          .joist("far " + i, i * 0.4, W / 2, L + W / 2);
    }
    deck.bar("IfcBeam", "middle", 0, -W / 2, Z, RIGHT, W / 2, Z + D);
    for (int end : new int[] {-1, 1}) {
      double face = end * (L + W / 2);
      deck.bar(
          "IfcBeam",
          "rim " + end,
          0,
          Math.min(face, face + end * W),
          Z,
          RIGHT,
          Math.max(face, face + end * W),
          Z + D);
      for (double x : new double[] {0.1, RIGHT - 0.19}) {
        double y = face + end * W / 2;
        deck.bar("IfcColumn", "post " + end + " " + x, x, y - 0.045, 0, x + 0.09, y + 0.045, Z);
      }
    }
    return deck;
  }

  private static List<FieldBays> bays(TimberDeck deck, Framing framing) {
    CrossingFinder crossings = new CrossingFinder(deck.elements(), framing, List.of());
    return framing.fields().map(f -> BayFinder.find(f, crossings)).toList();
  }

  @Test
  void bothFieldsFallAwayFromTheBeamToAGutterOfTheirOwn() {
    Framing framing = deck().frame(MIDDLE_IS_LEDGER);
    List<Field> fields = framing.fields().toList();
    assertThat(fields).hasSize(2);
    assertThat(fields.get(0).frame().y().y() * fields.get(1).frame().y().y())
        .isCloseTo(-1, within(1e-9));
    List<FieldBays> bays = bays(deck(), framing);
    Layout layout = Layouter.layOut(framing, bays, Scope.OUTSIDE, KitReader.builtIn());
    assertThat(layout.fields()).extracting(f -> f.bays().size()).containsExactly(5, 5);
    assertThat(layout.fields()).extracting(FieldLayout::run).allMatch(r -> r > L - 0.05);
    assertThat(sides(layout.fields().get(0))).hasSize(1);
    assertThat(sides(layout.fields().get(1)))
        .hasSize(1)
        .doesNotContainAnyElementsOf(sides(layout.fields().get(0)));
    for (var drain : DrainCases.of(bays, layout)) {
      DrainProof proof = WaterProver.prove(drain);
      assertThat(proof.dryFraction()).isGreaterThan(0.99);
    }
  }

  /** On which sides of the beam outlets are. */
  private static Set<Boolean> sides(FieldLayout field) {
    return field.parts().stream()
        .filter(p -> p.kind() == PartKind.OUTLET)
        .map(p -> p.mesh().bounds().centre().y() > 0)
        .collect(Collectors.toSet());
  }
}
