package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;

/** What is said of the water where the drained part ends in the middle of a deck. */
class ZoneEdgesTest {
  private static final double W = TimberDeck.W;
  private static final double L = TimberDeck.L;

  /** Joists stand every 0.4 m from x = 0. */
  private static final TimberDeck DECK = TimberDeck.plain(9);

  private static Layout layOut(TimberDeck deck, Wishes wishes) {
    return Layouter.layOut(
        deck.frame(), deck.fieldBays(), Scope.OUTSIDE.with(wishes), KitReader.builtIn());
  }

  private static Layout keeping(String zone) {
    return layOut(DECK, Wishes.NONE.keepingDry(DryZone.parse(zone)));
  }

  private static Optional<Finding> found(Layout layout, String rule) {
    return layout.findings().stream().filter(f -> f.rule().id().equals(rule)).findFirst();
  }

  private static String zone(double from, double to, double end) {
    return String.format(
        Locale.ROOT, "%1$.4f,0 %2$.4f,0 %2$.4f,%3$.4f %1$.4f,%3$.4f", from, to, end);
  }

  private static double measured(Subject subject) {
    return subject.measured().orElseThrow().si();
  }

  /**
   * The zone is below the third and fourth spaces; the joists around them are the third and fifth.
   */
  @Test
  void eachLastJoistIsNamedWithHowFarItsFarFaceIsFromTheZone() {
    Finding told = found(keeping(zone(0.9, 1.5, 2)), "dry-zone-splashed").orElseThrow();
    assertThat(told.subjects()).extracting(Subject::name).containsExactly("J3", "J5");
    assertThat(measured(told.subjects().get(0))).isCloseTo(0.9 - 0.8, within(1e-4));
    assertThat(measured(told.subjects().get(1))).isCloseTo(1.6 + W - 1.5, within(1e-4));
    assertThat(told.measure().orElseThrow().measured().si()).isCloseTo(0.1, within(1e-4));
    assertThat(told.measure().orElseThrow().limit().si()).isEqualTo(ZoneEdges.SPLASH);
  }

  @Test
  void anEdgeFurtherAwayThanDropsSplashIsNotTold() {
    double from = 0.8 + ZoneEdges.SPLASH;
    double to = 1.6 + W - ZoneEdges.SPLASH;
    assertThat(found(keeping(zone(from + 0.001, to - 0.001, 2)), "dry-zone-splashed")).isEmpty();
    Finding one = found(keeping(zone(from - 0.001, to - 0.001, 2)), "dry-zone-splashed").get();
    assertThat(one.subjects()).extracting(Subject::name).containsExactly("J3");
  }

  @Test
  void theFixServesOneMoreBayAtEachEdgeAndNothingIsToldThen() {
    Layout before = keeping(zone(0.9, 1.5, 2));
    Fix.Action action =
        found(before, "dry-zone-splashed").flatMap(Finding::fix).flatMap(Fix::action).get();
    Fix.Option wider = action.options().get(0);
    assertThat(wider.name()).isEqualTo("--dry-zone");
    Layout after = keeping(wider.value());
    assertThat(before.fields().get(0).bays()).containsExactly("B3", "B4");
    assertThat(after.fields().get(0).bays()).containsExactly("B2", "B3", "B4", "B5");
    assertThat(found(after, "dry-zone-splashed")).isEmpty();
  }

  @Test
  void theEdgesOfTheDeckItselfAreNotTold() {
    assertThat(found(keeping(zone(0.05, 3.2, 2)), "dry-zone-splashed")).isEmpty();
    assertThat(found(layOut(DECK, Wishes.NONE), "dry-zone-splashed")).isEmpty();
  }

  /** What the user leaves open stays so: the fix is for people then. */
  @Test
  void aBayLeftOpenOnPurposeOverTheZoneIsAnEdgeWithoutAnAction() {
    Wishes wishes =
        Wishes.NONE.keepingDry(DryZone.parse(zone(0.05, 3.2, 2))).leavingOpen(Set.of("B4"));
    Finding told = found(layOut(DECK, wishes), "dry-zone-splashed").orElseThrow();
    assertThat(told.subjects()).extracting(Subject::name).containsExactly("J4", "J5");
    assertThat(told.subjects()).allSatisfy(s -> assertThat(measured(s)).isZero());
    assertThat(told.fix().flatMap(Fix::action)).isEmpty();
  }

  @Test
  void turnedAndMovedWithItsZoneTheSameIsTold() {
    double c = Math.cos(0.7);
    double s = Math.sin(0.7);
    Transform turn =
        new Transform(new Vec3(310, -95, 4), new Vec3(c, s, 0), new Vec3(-s, c, 0), Vec3.Z);
    DryZone here = DryZone.parse(zone(0.9, 1.5, 2));
    DryZone there =
        new DryZone(
            here.polygons().stream()
                .map(
                    p ->
                        p.stream()
                            .map(v -> turn.apply(new Vec3(v.x(), v.y(), 0)))
                            .map(v -> new Vec2(v.x(), v.y()))
                            .toList())
                .toList());
    Layout layout = layOut(DECK.moved(turn), Wishes.NONE.keepingDry(there));
    Finding told = found(layout, "dry-zone-splashed").orElseThrow();
    assertThat(told.subjects()).extracting(Subject::name).containsExactly("J3", "J5");
    assertThat(measured(told.subjects().get(0))).isCloseTo(0.1, within(1e-4));
  }

  /** Its pans end at a beam; the deck goes on for 0.5 m. */
  @Test
  void aZoneThatGoesOnBeyondTheGutterIsToldWithItsReach() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .bar("IfcBeam", "beam", -0.1, L - 0.5, TimberDeck.Z - 0.2, 1.8, L - 0.4, TimberDeck.Z);
    Wishes atBeam = Wishes.NONE.endingAt("beam-1");
    Layout over = layOut(deck, atBeam.keepingDry(DryZone.parse(zone(0.05, 1.6, L - 0.2))));
    Finding told = found(over, "dry-zone-beyond-gutter").orElseThrow();
    assertThat(told.subjects()).extracting(Subject::name).containsExactly("B1", "B2", "B3", "B4");
    List<Double> reach = told.subjects().stream().map(ZoneEdgesTest::measured).toList();
    assertThat(reach).allSatisfy(r -> assertThat(r).isCloseTo(0.3, within(1e-4)));
    Layout before = layOut(deck, atBeam.keepingDry(DryZone.parse(zone(0.05, 1.6, L - 0.51))));
    assertThat(found(before, "dry-zone-beyond-gutter")).isEmpty();
  }
}
