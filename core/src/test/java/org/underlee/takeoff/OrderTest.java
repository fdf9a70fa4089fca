package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.takeoff.PartsToBuy.cut;
import static org.underlee.takeoff.PartsToBuy.flat;
import static org.underlee.takeoff.PartsToBuy.screws;
import static org.underlee.takeoff.PartsToBuy.takeoff;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.kit.Items;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/** What is asked of a shop: packs, prices, spares, and what is on hand already. */
class OrderTest {
  private static Buying prices(String... rows) {
    String text = "kit,item,unit,length,pack,price,currency\n" + String.join("\n", rows) + "\n";
    Set<String> items = Set.of(Items.SIDE_RAIL, Items.SCREW, Items.END_CAP);
    return new Buying(Optional.of(new ListReader(items).prices(text, "p.csv")), List.of());
  }

  /** Four strips of one length, each 0.14 m wide. */
  private static Part[] strips(double length) {
    return IntStream.rangeClosed(1, 4)
        .mapToObj(
            i ->
                flat(
                    "J" + i + "/strip-1",
                    PartKind.PLY_STRIP,
                    Items.STRIP_SHEET,
                    length,
                    OptionalDouble.of(0.14)))
        .toArray(Part[]::new);
  }

  /**
   * By hand: four strips of 3.5 m, two abreast of 0.14 m in 0.305 m, take 7.0 m of a coil of 15.24
   * m. Spare is 0.7 m, and 8.24 m are left.
   */
  @Test
  void spareOfACoilIsALengthThatTheRestOfTheCoilGives() {
    Order.Row row = takeoff(strips(3.5)).order().rows().get(0);
    assertThat(row.unit()).isEqualTo("coil");
    assertThat(row.units()).isEqualTo(1);
    assertThat(row.spare()).isZero();
    assertThat(row.spareRule()).contains("10 % of 7.0 m: 0.7 m, 0.7 m of it from what is left");
  }

  /** By hand: four strips of 7.5 m as above take 15.0 m of a coil of 15.24 m; 1.5 m are spare. */
  @Test
  void spareThatTheRestOfTheCoilsDoesNotGiveIsOneMoreCoil() {
    Order.Row row = takeoff(strips(7.5)).order().rows().get(0);
    assertThat(row.needed()).isEqualTo(1);
    assertThat(row.spare()).isEqualTo(1);
    assertThat(row.units()).isEqualTo(2);
  }

  /** By the kit: 10 % of 168 screws are 17 on top; 185 are two boxes of 100. */
  @Test
  void screwsAreOrderedInBoxesWithSparesByTheKitsRule() {
    Order.Row row = takeoff(screws("B1/screws-1", 168)).order().rows().get(0);
    assertThat(row.unit()).isEqualTo("box");
    assertThat(row.perUnit()).isEqualTo(100);
    assertThat(row.needed()).isEqualTo(168);
    assertThat(row.spare()).isEqualTo(17);
    assertThat(row.units()).isEqualTo(2);
    assertThat(row.spareRule()).contains("10 %").contains("common practice");
    assertThat(row.price()).isEmpty();
  }

  /** By hand: 185 are cheapest as one box of 150 at 9.00 and one of 50 at 4.00. */
  @Test
  void theCheapestPacksAreChosen() {
    Buying buying =
        prices(
            ",screw,box,,50,4.00,USD",
            ",screw,box,,150,9.00,USD",
            ",screw,bucket,,1000,20.00,USD",
            "rigid-vinyl,screw,box,,1000,0.01,USD");
    Order order = takeoff(buying, screws("B1/screws-1", 168)).order();
    assertThat(order.rows()).hasSize(2);
    assertThat(order.rows()).extracting(Order.Row::units).containsExactly(1, 1);
    assertThat(order.rows().stream().mapToInt(Order.Row::needed).sum()).isEqualTo(168);
    assertThat(order.total()).isEqualByComparingTo("13.00");
  }

  @Test
  void whatHasNoPriceIsListedAndInNoSum() {
    Order order =
        takeoff(
                prices(",screw,box,,100,12.50,USD"),
                screws("B1/screws-1", 10),
                cut("gutter/cap-1", PartKind.END_CAP, Items.END_CAP, 0.1))
            .order();
    assertThat(order.total()).isEqualByComparingTo("12.50");
    assertThat(order.unpriced()).extracting(Order.Row::item).containsExactly(Items.END_CAP);
    assertThat(order.cost().orElseThrow().unpriced()).isEqualTo(1);
  }

  /**
   * By hand: pieces of 2.0, 2.0 and 1.0 m. By length 2.4384 and 3.048 are least; when 3.6576 m is
   * cheap, two of those cost less than one each of the others. One spare of 2.0 m (5 % of three,
   * rounded up) is not in the offcuts of 1.6576 and 0.6576 m, so one more is bought.
   */
  @Test
  void pricesDecideWhichLengthsAreBoughtAndTheAlternativesAreShown() {
    Buying buying =
        prices(
            ",side-rail,length,2438.4 mm,,11.00,EUR",
            ",side-rail,length,10 ft,,14.00,EUR",
            ",side-rail,length,12 ft,,10.00,EUR");
    Takeoff takeoff =
        takeoff(
            buying,
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0));
    assertThat(takeoff.bought().get(Items.SIDE_RAIL).measure()).isEqualTo(Takeoff.Measure.PRICE);
    assertThat(takeoff.bought().get(Items.SIDE_RAIL).isProvenLeast()).isTrue();
    Order.Row row = takeoff.order().rows().get(0);
    assertThat(row.stockLength().orElseThrow()).isCloseTo(3.6576, within(1e-9));
    assertThat(row.needed()).isEqualTo(2);
    assertThat(row.spare()).isEqualTo(1);
    assertThat(row.cost().orElseThrow()).isEqualByComparingTo("30.00");
    assertThat(takeoff.order().alternatives())
        .extracting(Order.Alternative::pieces)
        .containsExactly(3, 2, 2);
    assertThat(takeoff.order().alternatives())
        .extracting(a -> a.cost().orElseThrow().toPlainString())
        .containsExactly("33.00", "28.00", "20.00");
  }

  @Test
  void aPriceWithoutALengthIsRefusedWhereTheKitHasSeveral() {
    assertThatThrownBy(
            () ->
                takeoff(
                    prices(",side-rail,length,,,11.00,EUR"),
                    cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("p.csv, line 2")
        .hasMessageContaining("for which length");
  }

  /** By hand: 2.0 m comes from 2.1 m on hand; 1.9 m and a spare of 2.0 m are bought. */
  @Test
  void whatIsOnHandIsCutFirstAndNotOrdered() {
    OnHand own = new OnHand(Items.SIDE_RAIL, OptionalDouble.of(2.1), 1, Place.NOWHERE);
    Takeoff takeoff =
        takeoff(
            new Buying(Optional.empty(), List.of(own)),
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.9));
    assertThat(takeoff.stock()).filteredOn(Takeoff.Stock::onHand).hasSize(1);
    assertThat(takeoff.bought(Items.SIDE_RAIL)).isCloseTo(2.4384, within(1e-9));
    Order.Row row = takeoff.order().rows().get(0);
    assertThat(row.needed()).isEqualTo(1);
    assertThat(row.spare()).isEqualTo(1);
    Takeoff.Lengths lengths = takeoff.lengths().get(Items.SIDE_RAIL);
    assertThat(lengths.onHand()).isCloseTo(2.1, within(1e-9));
    assertThat(lengths.gross() + lengths.kept() + lengths.waste())
        .isCloseTo(lengths.bought() + lengths.onHand(), within(1e-9));
  }
}
