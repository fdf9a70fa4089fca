package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.writeback.WriteBackTest.all;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.ifc.IfcModel;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;
import org.underlee.takeoff.Order;
import org.underlee.takeoff.Takeoff;

/** Prices in the bill, worked out by hand: 2 · 12.50 + 1 · 8.25 = 33.25. */
class PricedBillTest {
  private static final Order.Row SHEETS =
      row("pan", "Sheet of 3 m", "sheet", 1, OptionalDouble.of(3), 2, "12.50");
  private static final Order.Row BOX =
      row("pan", "Rivets", "box", 100, OptionalDouble.empty(), 1, "8.25");
  private static final Order.Row NONE =
      row("pan", "Short sheet", "sheet", 1, OptionalDouble.of(1.5), 0, "7");
  private static final Order.Row UNPRICED =
      row("rail", "Rail", "piece", 1, OptionalDouble.of(2.4384), 3, "");

  private static Order.Row row(
      String item,
      String description,
      String unit,
      int perUnit,
      OptionalDouble length,
      int units,
      String price) {
    Optional<BigDecimal> known =
        price.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(price));
    return new Order.Row(
        item, description, unit, perUnit, length, units * perUnit, 0, units, "", known);
  }

  private static StepFile priced(String schema, String currency, Order.Row... rows) {
    byte[] bytes = TinyModel.of(schema, TinyModel.Length.METRE).bytes();
    WriteBack.Written written =
        WriteBack.drained(
            IfcModel.of(StepFile.of(bytes, "deck.ifc")),
            SampleField.of(List.of(SampleField.layout())),
            SampleField.bill(),
            new Order(List.of(rows), List.of(), Optional.of(currency)),
            SampleField.provenance(),
            List.of());
    BlockCheck.require(bytes, written.bytes());
    return StepFile.of(written.bytes(), "drained.ifc");
  }

  private static StepInstance item(StepFile file, String name) {
    return all(file, "IFCCOSTITEM").stream()
        .filter(i -> i.text(2).equals(name))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"IFC2X3", "IFC4", "IFC4X3_ADD2"})
  void aBillWithPricesFollowsTheSchema(String schema) {
    long theirs =
        StepFile.of(TinyModel.of(schema, TinyModel.Length.METRE).bytes(), "deck.ifc").highestId();
    StepFile file = priced(schema, "EUR", SHEETS, BOX, NONE, UNPRICED);
    assertThat(SchemaTest.findings(StandardSchemas.of(schema), file, theirs)).isEmpty();
  }

  @Test
  void whatIsOrderedForALineIsNestedInItAndWhatIsNotOrderedIsLeftOut() {
    StepFile file = priced("IFC4", "EUR", SHEETS, NONE, BOX, UNPRICED);
    List<String> nested = new ArrayList<>();
    for (StepInstance nests : all(file, "IFCRELNESTS")) {
      if (nests.follow(4).keyword().equals("IFCCOSTITEM")) {
        nests.followAll(5).forEach(i -> nested.add(nests.follow(4).text(2) + " > " + i.text(2)));
      }
    }
    String bill = "Under-deck drainage: bill of quantities > ";
    assertThat(nested)
        .containsExactlyInAnyOrder(
            bill + "Bent pan",
            bill + "Bent rail",
            bill + "Seam tape",
            "Bent pan > Sheet of 3 m",
            "Bent pan > Rivets",
            "Bent rail > Rail");
  }

  @Test
  void anArticleIsCountedInTheShopsUnitsWithThePriceOfOne() {
    StepFile file = priced("IFC4", "EUR", SHEETS, BOX, UNPRICED);
    StepInstance sheets = item(file, "Sheet of 3 m");
    assertThat(sheets.text(3)).isEqualTo("2 sheet of 3 m");
    assertThat(sheets.followAll(8).get(0).number(3)).isEqualTo(2);
    StepInstance price = sheets.followAll(7).get(0);
    assertThat(price.text(0)).isEqualTo("price of one sheet");
    assertThat(price.text(1)).isEqualTo("12.50 EUR");
    assertThat(price.isOmitted(6)).isTrue();
    assertThat(price.follow(2).value(0))
        .isEqualTo(new StepValue.Typed("IFCMONETARYMEASURE", new StepValue.Real("12.5", 12.5)));
    assertThat(price.follow(2).follow(1).text(0)).isEqualTo("EUR");
    assertThat(item(file, "Rivets").text(3)).isEqualTo("1 box of 100");
    StepInstance unpriced = item(file, "Rail");
    assertThat(unpriced.text(3)).isEqualTo("3 piece of 2.438 m; no price known");
    assertThat(unpriced.isOmitted(7)).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "true, ESTIMATE, sum without 1 articles that have no price",
    "false, PRICEDBILLOFQUANTITIES, sum"
  })
  void theRootHasTheSumAndSaysWhatIsNotInIt(boolean withUnpriced, String kind, String name) {
    StepFile file =
        withUnpriced
            ? priced("IFC4", "EUR", SHEETS, BOX, NONE, UNPRICED)
            : priced("IFC4", "EUR", SHEETS, BOX, NONE);
    assertThat(all(file, "IFCCOSTSCHEDULE").get(0).enumeration(6)).isEqualTo(kind);
    StepInstance sum = item(file, "Under-deck drainage: bill of quantities").followAll(7).get(0);
    assertThat(sum.text(0)).isEqualTo(name);
    assertThat(sum.text(1)).isEqualTo("33.25 EUR");
    assertThat(sum.text(6)).isEqualTo("*");
  }

  /** IFC2X3 TC1: IfcCurrencyEnum has EUR, and no name for the Croatian kuna of 1994. */
  @Test
  void theOlderSchemaRelatesPricesAndNamesTheCurrenciesThatItKnows() {
    StepFile file = priced("IFC2X3", "EUR", SHEETS, BOX);
    assertThat(all(file, "IFCMONETARYUNIT").get(0).enumeration(0)).isEqualTo("EUR");
    List<String> costs = new ArrayList<>();
    for (StepInstance rel : all(file, "IFCRELASSOCIATESAPPLIEDVALUE")) {
      String of = rel.followAll(4).get(0).text(2);
      costs.add(of + ": " + rel.follow(5).text(1) + " " + rel.follow(5).text(6));
    }
    assertThat(costs)
        .containsExactlyInAnyOrder(
            "Under-deck drainage: bill of quantities: 33.25 EUR *",
            "Sheet of 3 m: 12.50 EUR Material",
            "Rivets: 8.25 EUR Material");
    // a quantity for each of three lines and two articles
    assertThat(all(file, "IFCELEMENTQUANTITY").stream().map(q -> q.optionalText(2)))
        .filteredOn(n -> n.equals(Optional.of("Underlee_BillQuantity")))
        .hasSize(5);
    StepFile other = priced("IFC2X3", "HRK", SHEETS);
    assertThat(all(other, "IFCMONETARYUNIT")).isEmpty();
    StepInstance cost = all(other, "IFCCOSTVALUE").get(0);
    assertThat(cost.value(2)).isInstanceOf(StepValue.Typed.class);
    assertThat(cost.text(1)).endsWith(" HRK");
  }

  @Test
  void withoutAPriceListNothingIsOrderedAndNothingCosts() {
    StepFile file = WriteBackTest.drained(TinyModel.of("IFC4", TinyModel.Length.METRE));
    assertThat(all(file, "IFCCOSTVALUE")).isEmpty();
    assertThat(all(file, "IFCCOSTSCHEDULE").get(0).enumeration(6))
        .isEqualTo("UNPRICEDBILLOFQUANTITIES");
  }

  @Test
  void whatIsSoldByTheMetreIsALengthInTheBillAndAllElseACount() {
    Takeoff takeoff =
        new Takeoff(
            List.of(
                new Takeoff.Line("rail", "Rail", "m", 6.25, List.of("a", "b")),
                new Takeoff.Line("hook", "Hook", "piece", 4, List.of("c"))),
            List.of(),
            List.of(),
            Map.of(),
            Map.of(),
            new Order(List.of(), List.of(), Optional.empty()));
    assertThat(BillLine.of(takeoff))
        .containsExactly(
            new BillLine(
                "rail", "Rail", "m", 6.25, BillLine.QuantityKind.LENGTH, List.of("a", "b")),
            new BillLine("hook", "Hook", "piece", 4, BillLine.QuantityKind.COUNT, List.of("c")));
  }
}
