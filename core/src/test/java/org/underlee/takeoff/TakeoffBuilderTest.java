package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.takeoff.PartsToBuy.FIELD;
import static org.underlee.takeoff.PartsToBuy.cut;
import static org.underlee.takeoff.PartsToBuy.flat;
import static org.underlee.takeoff.PartsToBuy.layout;
import static org.underlee.takeoff.PartsToBuy.screws;
import static org.underlee.takeoff.PartsToBuy.takeoff;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.underlee.kit.Items;
import org.underlee.layout.Layout;
import org.underlee.layout.PartKind;

class TakeoffBuilderTest {
  @Test
  void eachPartIsCountedOnceUnderItsItem() {
    Takeoff takeoff =
        takeoff(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0),
            cut("gutter/cap-1", PartKind.END_CAP, Items.END_CAP, 0.1),
            screws("B1/screws-1", 14),
            screws("B1/screws-2", 16));
    assertThat(takeoff.lines())
        .extracting(Takeoff.Line::item)
        .containsExactly(Items.SIDE_RAIL, Items.END_CAP, Items.SCREW);
    assertThat(takeoff.lines().stream().flatMap(l -> l.parts().stream()))
        .doesNotHaveDuplicates()
        .hasSize(6);
    assertThat(takeoff.lines()).extracting(Takeoff.Line::quantity).containsExactly(5.0, 1.0, 30.0);
    assertThat(takeoff.lines())
        .extracting(Takeoff.Line::unit)
        .containsExactly("m", "piece", "piece");
  }

  @Test
  void equalPiecesAreOneRowOfTheCutListWithEveryPlaceOnce() {
    Takeoff takeoff =
        takeoff(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.00004),
            cut("B1/rail-3", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.00008),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0));
    assertThat(takeoff.cuts()).hasSize(2);
    Takeoff.Cut longest = takeoff.cuts().get(0);
    // rounded down to a tenth of a millimetre, so that pieces fit
    assertThat(longest.length()).isCloseTo(2.0, within(1e-9));
    assertThat(longest.count()).isEqualTo(3);
    assertThat(longest.bays()).containsExactly(FIELD + "/B1", FIELD + "/B2");
    assertThat(takeoff.cuts().get(1).length()).isCloseTo(1.0, within(1e-9));
  }

  /** By hand: 2.0 and 1.0 fill 3.048; the other 2.0 is cut from 2.4384. */
  @Test
  void whatIsBoughtHoldsWhatIsCut() {
    Takeoff takeoff =
        takeoff(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0));
    assertThat(takeoff.stock()).extracting(Takeoff.Stock::pieces).containsExactly(1, 1);
    assertThat(takeoff.bought(Items.SIDE_RAIL)).isCloseTo(3.048 + 2.4384, within(1e-9));
    assertThat(takeoff.bought().get(Items.SIDE_RAIL).isProvenLeast()).isTrue();
    assertThat(takeoff.bought(Items.PAN_SHEET)).isZero();
  }

  @Test
  void anEmptyLayoutNeedsNothing() {
    Takeoff takeoff = takeoff();
    assertThat(takeoff.lines()).isEmpty();
    assertThat(takeoff.cuts()).isEmpty();
    assertThat(takeoff.stock()).isEmpty();
    assertThat(takeoff.bought()).isEmpty();
  }

  /** By hand: 0.30 and 0.29 m lie side by side in 0.61 m; the shorter takes no length. */
  @Test
  void whatIsRippedBesideAnotherIsNoWasteBelowNothing() {
    Takeoff takeoff =
        takeoff(
            flat("B1/pan", PartKind.PAN, Items.PAN_SHEET, 15.0, OptionalDouble.of(0.30)),
            flat("B2/pan", PartKind.PAN, Items.PAN_SHEET, 14.0, OptionalDouble.of(0.29)));
    assertThat(takeoff.stock()).hasSize(1).allMatch(Takeoff.Stock::isRipped);
    Takeoff.Lengths lengths = takeoff.lengths().get(Items.PAN_SHEET);
    assertThat(lengths.gross()).isCloseTo(29.0, within(1e-9));
    assertThat(lengths.beside()).isCloseTo(14.0, within(1e-9));
    assertThat(lengths.kept()).isCloseTo(0, within(1e-9));
    assertThat(lengths.waste()).isCloseTo(0.24, within(1e-9));
  }

  /** By hand: two bays' rails and one gutter's cap, which is no one bay's. */
  @Test
  void theSharesOfEachLevelAddUpToTheWhole() {
    Layout layout =
        layout(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0),
            cut("gutter/cap-1", PartKind.END_CAP, Items.END_CAP, 0.1),
            screws("B1/screws-1", 14));
    Takeoff takeoff = TakeoffBuilder.of(layout);
    for (Share.Level level : Share.Level.values()) {
      List<Share> shares = Share.of(layout).stream().filter(s -> s.level() == level).toList();
      assertThat(shares.stream().flatMap(s -> s.parts().stream()))
          .as("%s", level)
          .containsExactlyInAnyOrder(
              takeoff.lines().stream().flatMap(l -> l.parts().stream()).toArray(String[]::new));
      for (Takeoff.Line line : takeoff.lines()) {
        assertThat(
                shares.stream()
                    .filter(s -> s.item().equals(line.item()) && s.unit().equals(line.unit()))
                    .mapToDouble(Share::quantity)
                    .sum())
            .as("%s of %s", line.item(), level)
            .isCloseTo(line.quantity(), within(1e-9));
      }
    }
    assertThat(Share.of(layout))
        .filteredOn(s -> s.level() == Share.Level.STOREY)
        .allMatch(s -> s.place().equals("no storey"));
  }
}
