package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

class ListReaderTest {
  private static final ListReader READER = new ListReader(Set.of("side-rail", "screw"));
  private static final String HEAD = "item,unit,length,pack,price,currency\n";

  @Test
  void aListIsReadAsItsColumnsSay() {
    PriceList list =
        READER.prices(
            HEAD + "side-rail,length,10 ft,,14.20,USD\r\n\"screw\",box,,250,\"21,90\",USD\r\n",
            "p");
    assertThat(list.currency()).isEqualTo("USD");
    assertThat(list.articles()).hasSize(2);
    PriceList.Article rail = list.articles().get(0);
    assertThat(rail.length()).isEqualTo(OptionalDouble.of(3.048));
    assertThat(rail.pack()).isEqualTo(1);
    assertThat(rail.price()).isEqualByComparingTo("14.20");
    assertThat(rail.place()).isEqualTo(Place.text(2, 1).inFile("p"));
    assertThat(list.articles().get(1).pack()).isEqualTo(250);
    assertThat(list.articles().get(1).price()).isEqualByComparingTo("21.90");
  }

  /** As spreadsheets write it where the comma is for decimals; with a mark of UTF-8. */
  @Test
  void semicolonsAndOtherOrdersOfColumnsAreReadToo() {
    PriceList list = READER.prices("\uFEFFprice;currency;Item;unit\n3,5;EUR;screw;box\n\n", "p");
    assertThat(list.articles().get(0).price()).isEqualByComparingTo("3.5");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '~',
      value = {
        "side-rail,length,10 ft,,-4,USD ~ 2 ~ 25 ~ not a price",
        "side-rail,length,10 ft,,0.00,USD ~ 2 ~ 25 ~ price of nothing",
        "side-rail,length,3048,,4,USD ~ 2 ~ 18 ~ not a length",
        "side-rale,length,10 ft,,4,USD ~ 2 ~ 1 ~ no item",
        "screw,box,,none,4,USD ~ 2 ~ 12 ~ not a whole number",
        "screw,box,,100,4,dollars ~ 2 ~ 18 ~ not a currency",
        "screw,box,,100,,USD ~ 2 ~ 1 ~ has no price",
        "screw,box,,100,4,USD,more ~ 2 ~ 22 ~ more cells",
        "screw,\"box,,100,4,USD ~ 2 ~ 7 ~ does not end"
      })
  void everySlipIsToldWithItsLineAndColumn(String row, int line, int column, String what) {
    assertThatThrownBy(() -> READER.prices(HEAD + row, "prices.csv"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(what)
        .hasMessageStartingWith("prices.csv, line " + line + ", column " + column)
        .satisfies(e -> assertThat(((InputException) e).advice()).isNotBlank());
  }

  @Test
  void twoCurrenciesAndUnknownColumnsAreRefused() {
    assertThatThrownBy(() -> READER.prices(HEAD + "screw,box,,1,4,USD\nscrew,box,,1,4,EUR\n", "p"))
        .hasMessageContaining("line 3, column 16")
        .hasMessageContaining("USD and EUR");
    assertThatThrownBy(() -> READER.prices("item,cost\n", "p"))
        .hasMessageContaining("line 1, column 6")
        .hasMessageContaining("\"cost\"");
    assertThatThrownBy(() -> READER.prices(HEAD, "p")).hasMessageContaining("no prices");
  }

  @Test
  void whatIsOnHandNeedsNoMoreThanItsItem() {
    List<OnHand> all = READER.onHand("item,length,count\nside-rail,6 ft,3\nscrew,,\n", "s");
    assertThat(all).extracting(OnHand::count).containsExactly(3, 1);
    assertThat(all.get(0).length()).isEqualTo(OptionalDouble.of(6 * 0.3048));
    assertThat(all.get(1).length()).isEmpty();
  }
}
