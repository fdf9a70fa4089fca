package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Vec3;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.kit.PanValue;

/** What stands at one side of a bay concerns the rail at that side only. */
class OneRailTest {
  private static final double W = TimberDeck.W;
  private static final double Z = TimberDeck.Z;
  private static final Kit KIT = KitReader.builtIn();

  /** In the first bay: above the joists' bottoms, and from the face of its first joist. */
  private static TimberDeck with(
      TimberDeck deck, String name, double from, double to, double beside, double above) {
    double x = W + beside;
    return deck.bar("IfcDuctSegment", name, x, from, Z + above, x + 0.05, to, Z + above + 0.05);
  }

  private static Layout layOut(TimberDeck deck) {
    return Layouter.layOut(deck.frame(), deck.fieldBays(), Scope.OUTSIDE, KIT);
  }

  /** Notches of the rails of the first bay: of the one at its first joist, then of the other. */
  private static List<List<Cut>> notches(Layout layout) {
    return layout.parts().stream()
        .filter(p -> p.kind() == PartKind.SIDE_RAIL && p.bay().equals(Optional.of("B1")))
        .map(Part::cuts)
        .toList();
  }

  private static List<Finding> leftWhole(Layout layout) {
    return layout.findings().stream().filter(f -> f.rule().id().equals("leg-left-whole")).toList();
  }

  @Test
  void aPipeNearOneJoistIsNotchedForInTheRailThereAndTheOtherRailIsWhole() {
    Layout layout = layOut(with(TimberDeck.plain(5), "duct", 1, 1.3, 0.02, 0.06));
    List<List<Cut>> notches = notches(layout);
    assertThat(notches).hasSize(2);
    assertThat(notches.get(0)).hasSize(1);
    assertThat(notches.get(1)).isEmpty();
    Finding told = leftWhole(layout).get(0);
    double right = 0.4 - W - 0.02 - 0.05;
    assertThat(told.measure().orElseThrow().measured().si()).isCloseTo(right, within(1e-6));
    assertThat(told.measure().orElseThrow().limit().si()).isEqualTo(KIT.get(PanValue.LEG_ROOM));
  }

  @Test
  void theSameAtTheOtherJoistIsTheOtherRail() {
    double right = 0.4 - W - 0.02 - 0.05;
    Layout layout = layOut(with(TimberDeck.plain(5), "duct", 1, 1.3, right, 0.06));
    assertThat(notches(layout).get(0)).isEmpty();
    assertThat(notches(layout).get(1)).hasSize(1);
  }

  @Test
  void whatLeavesBothRailsRoomIsNotchedForInNeitherAndDoesNotLowerTheSeat() {
    double room = KIT.get(PanValue.LEG_ROOM);
    Layout free = layOut(TimberDeck.plain(5));
    Layout layout = layOut(with(TimberDeck.plain(5), "duct", 1, 1.3, room, 0.115));
    assertThat(notches(layout)).allMatch(List::isEmpty);
    assertThat(layout.fields().get(0).seatHigh()).isEqualTo(free.fields().get(0).seatHigh());
    assertThat(leftWhole(layout)).hasSize(1);
    Layout nearer = layOut(with(TimberDeck.plain(5), "duct", 1, 1.3, room - 0.001, 0.115));
    assertThat(nearer.fields().get(0).seatHigh())
        .as("lowered so that no leg is cut")
        .isLessThan(0.115 - KIT.get(PanValue.RAIL_LEG) + 0.01);
    assertThat(leftWhole(nearer)).isEmpty();
  }

  /** A pipe on a slant is taken where it comes nearest. */
  @Test
  void aPipeOnASlantIsNotchedForWhereItsEndComesNear() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .pipe(
                "IfcPipeSegment",
                "slant",
                new Vec3(W + 0.05, 1, Z + 0.08),
                new Vec3(W + 0.2, 1.3, Z + 0.08),
                0.04);
    assertThat(notches(layOut(deck)).get(0)).hasSize(1);
    assertThat(notches(layOut(deck)).get(1)).isEmpty();
  }

  @Test
  void twoThingsAtOneStationGiveEachRailItsOwnNotch() {
    TimberDeck deck = with(TimberDeck.plain(5), "low", 1, 1.3, 0.02, 0.04);
    Layout layout = layOut(with(deck, "high", 1, 1.3, 0.4 - W - 0.07, 0.06));
    double left = depth(notches(layout).get(0));
    double right = depth(notches(layout).get(1));
    assertThat(left - right).isCloseTo(0.02, within(1e-6));
  }

  private static double depth(List<Cut> cuts) {
    assertThat(cuts).hasSize(1);
    return ((Cut.Notch) cuts.get(0)).depth();
  }

  /** Kits with a low hem would else leave a strip of leg that no screw goes through. */
  @Test
  void beneathALongPipeEnoughOfTheLegIsLeftForAScrew() {
    Layout layout = layOut(with(TimberDeck.plain(5), "long", 0.5, 2.5, 0.02, 0.06));
    double left = KIT.get(PanValue.RAIL_LEG) - depth(notches(layout).get(0));
    assertThat(left).isCloseTo(2 * KIT.get(PanValue.RAIL_FASTENER_MARGIN), within(1e-4));
    assertThat(layout.findings()).noneMatch(f -> f.rule().id().equals("rail-notched-long"));
  }
}
