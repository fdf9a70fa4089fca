package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.framing.Field;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;

/** Decks on which a simple layout would go wrong without saying so. */
class HardCasesTest {
  private static final double W = TimberDeck.W;
  private static final double D = TimberDeck.D;
  private static final double L = TimberDeck.L;
  private static final double Z = TimberDeck.Z;

  private static Layout layOut(TimberDeck deck) {
    return Layouter.layOut(deck.frame(), deck.fieldBays(), Scope.OUTSIDE, KitReader.builtIn());
  }

  private static List<String> rules(Layout layout) {
    return layout.findings().stream().map(Finding::rule).map(r -> r.id()).toList();
  }

  private static long count(Layout layout, PartKind kind) {
    return layout.parts().stream().filter(p -> p.kind() == kind).count();
  }

  @Test
  void aBayThatEndsAtAHeaderIsLeftOpenAndTheGutterStaysAtTheRim() {
    TimberDeck deck =
        TimberDeck.plain(7)
            .without("j4")
            .joist("near", 1.2, 0, 1 - W)
            .joist("far", 1.2, 2 + W, L)
            .bar("IfcBeam", "header 1", 0.8 + W, 1 - W, Z, 1.6, 1, Z + D)
            .bar("IfcBeam", "header 2", 0.8 + W, 2, Z, 1.6, 2 + W, Z + D);
    Layout layout = layOut(deck);
    assertThat(rules(layout)).contains("no-gutter-below");
    double gutter =
        layout.parts().stream()
            .filter(p -> p.kind() == PartKind.GUTTER)
            .mapToDouble(p -> p.mesh().bounds().max().y())
            .max()
            .orElseThrow();
    assertThat(gutter).isGreaterThan(L - 0.05);
  }

  @Test
  void whatHasNothingToBeFixedToIsSaid() {
    Layout layout = layOut(new TimberDeck().joists(5));
    assertThat(rules(layout)).contains("no-head-rail", "nothing-to-hang-gutter-on");
    assertThat(count(layout, PartKind.HEAD_RAIL)).isZero();
  }

  @Test
  void aPipeThatEndsAboveThePanGetsNoHole() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .pipe(
                "IfcPipeSegment",
                "stub",
                new Vec3(0.6, 1, Z + D - 0.01),
                new Vec3(0.6, 1, Z + 1),
                0.06);
    assertThat(count(layOut(deck), PartKind.COLLAR_PIECE)).isZero();
  }

  @Test
  void aPipeWithAJoistsGlobalIdIsStillACrossing() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .pipe("IfcPipeSegment", "j2", new Vec3(0.6, 1, 0), new Vec3(0.6, 1, 4), 0.09);
    assertThat(count(layOut(deck), PartKind.COLLAR_PIECE)).isEqualTo(1);
  }

  /** The outer joists stand {@code shift} beside the inner ones, both on the beam. */
  private static TimberDeck overABeam(double shift) {
    TimberDeck deck = TimberDeck.plain(5).without("rim");
    for (int i = 0; i < 5; i++) {
      deck = deck.joist("outer " + i, i * 0.4 + shift, L, 2 * L);
    }
    return deck.bar("IfcBeam", "beam", -0.1, L - 0.07, Z - D, 1.8, L + 0.07, Z)
        .bar("IfcColumn", "left foot", 0.1, L - 0.04, 0, 0.19, L + 0.04, Z - D)
        .bar("IfcColumn", "right foot", 1.5, L - 0.04, 0, 1.59, L + 0.04, Z - D);
  }

  @Test
  void joistsSplicedOverABeamAreOneLineThatFallsAwayFromTheHouse() {
    Field field = overABeam(0).field();
    assertThat(field.frame().y().y()).isGreaterThan(0.99);
    assertThat(field.lines()).hasSize(5).allSatisfy(l -> assertThat(l.plies()).hasSize(2));
  }

  @Test
  void joistsOutOfLineOverABeamAreTwoFieldsThatFallOnAwayFromTheHouse() {
    assertThat(overABeam(0.1).frame().fields())
        .hasSize(2)
        .allSatisfy((Field f) -> assertThat(f.frame().y().y()).isGreaterThan(0.99));
  }

  @Test
  void aGapThatIsTooWideForABayIsSaid() {
    TimberDeck deck = TimberDeck.plain(8);
    TimberDeck gapped = deck.without("j4").without("j5");
    assertThat(gapped.frame().findings())
        .anySatisfy(f -> assertThat(f.rule().id()).isEqualTo("gap-without-bay"));
    assertThat(TimberDeck.plain(8).frame().findings())
        .noneSatisfy(f -> assertThat(f.rule().id()).isEqualTo("gap-without-bay"));
  }

  @Test
  void aBayThatEndsBeforeTheDropBeamIsNamed() {
    TimberDeck deck =
        TimberDeck.plain(7)
            .without("j4")
            .joist("near", 1.2, 0, 1 - W)
            .joist("far", 1.2, 2 + W, L)
            .joist("trimmer ply", 0.8 + W, 0, L)
            .bar("IfcBeam", "header 1", 0.8 + 2 * W, 1 - W, Z, 1.6, 1, Z + D)
            .bar("IfcBeam", "header 2", 0.8 + 2 * W, 2, Z, 1.6, 2 + W, Z + D)
            .bar("IfcBeam", "beam", -0.1, 2.5, Z - D, 2.6, 2.5 + W, Z);
    assertThat(rules(layOut(deck))).contains("bay-ends-before-beam");
  }

  @Test
  void whereJoistsFallMoreSteeplyThanThePansNoRailRisesPastTheirTops() {
    double drop = 0.06;
    TimberDeck level = TimberDeck.plain(5);
    Transform tilt = new Transform(Vec3.ZERO, Vec3.X, new Vec3(0, 1, -drop / L).unit(), Vec3.Z);
    Layout layout = layOut(level.moved(tilt));
    assertThat(count(layout, PartKind.SIDE_RAIL)).isPositive();
    layout.parts().stream()
        .filter(p -> p.kind() == PartKind.SIDE_RAIL)
        .map(Part::mesh)
        .forEach(
            m -> {
              for (int i = 0; i < m.vertexCount(); i++) {
                Vec3 p = m.vertex(i);
                assertThat(p.z()).isLessThan(Z + D - drop / L * p.y() + 1e-3);
              }
            });
  }

  @Test
  void aShallowLandingOnOneWallIsOutside() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 5; i++) {
      deck = deck.joist("j" + i, i * 0.4, 0, 0.6);
    }
    deck = deck.ledger("bar on the house", 5).bar("IfcWall", "tall", -1, -W - 0.2, 0, 4, -W, 6);
    assertThat(deck.frame().decks())
        .singleElement()
        .satisfies(d -> assertThat(d.outside().value()).isTrue());
  }
}
