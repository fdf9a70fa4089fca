package org.underlee.takeoff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.takeoff.CsvTable.Cell;
import org.underlee.takeoff.CsvTable.Row;
import org.underlee.units.LengthText;

/** Reads the user's lists: what things cost, and what is on hand. */
public final class ListReader {
  private static final String ITEM = "item";
  private static final String LENGTH = "length";
  private static final String COUNT = "count";

  private static final List<String> PRICE_COLUMNS =
      List.of("kit", ITEM, "unit", LENGTH, "pack", "price", "currency");
  private static final List<String> STOCK_COLUMNS = List.of(ITEM, LENGTH, COUNT);

  private final Set<String> items;

  /**
   * A reader.
   *
   * @param items ids of all that the kits in use can be made of
   */
  public ListReader(Set<String> items) {
    this.items = Set.copyOf(items);
  }

  /**
   * Reads prices.
   *
   * @throws InputException with line and column of the first slip
   */
  public PriceList prices(String text, String file) {
    List<Row> rows = CsvTable.read(text, file, PRICE_COLUMNS);
    List<PriceList.Article> articles = rows.stream().map(this::article).toList();
    List<Cell> currencies = rows.stream().map(ListReader::currency).toList();
    if (currencies.isEmpty()) {
      throw new InputException(
          Place.NOWHERE.inFile(file),
          "the list has no prices",
          "Write a header and a row for each article: " + String.join(", ", PRICE_COLUMNS) + ".");
    }
    String first = currencies.get(0).text();
    for (Cell other : currencies) {
      if (!other.text().equals(first)) {
        throw other.wrong(
            "the list has two currencies, " + first + " and " + other.text(),
            "Give all prices in one currency.");
      }
    }
    return new PriceList(first, articles);
  }

  private static Cell currency(Row row) {
    Cell currency = row.required("currency");
    if (!currency.text().matches("[A-Z]{3}")) {
      throw currency.wrong(
          "\"" + currency.text() + "\" is not a currency",
          "Write its three letters: USD, CAD, EUR, GBP.");
    }
    return currency;
  }

  private PriceList.Article article(Row row) {
    return new PriceList.Article(
        row.cell("kit").map(Cell::text),
        item(row),
        row.required("unit").text(),
        optionalLength(row),
        row.cell("pack").map(ListReader::whole).orElse(1),
        price(row.required("price")),
        row.place());
  }

  /**
   * Reads what is on hand.
   *
   * @throws InputException with line and column of the first slip
   */
  public List<OnHand> onHand(String text, String file) {
    List<OnHand> all = new ArrayList<>();
    for (Row row : CsvTable.read(text, file, STOCK_COLUMNS)) {
      int count = row.cell(COUNT).map(ListReader::whole).orElse(1);
      all.add(new OnHand(item(row), optionalLength(row), count, row.place()));
    }
    return all;
  }

  private String item(Row row) {
    Cell item = row.required(ITEM);
    if (!items.contains(item.text())) {
      throw item.wrong(
          "there is no item \"" + item.text() + "\" in the kit",
          "Use the kit's own ids: " + String.join(", ", items.stream().sorted().toList()) + ".");
    }
    return item.text();
  }

  private static OptionalDouble optionalLength(Row row) {
    Optional<Cell> cell = row.cell(LENGTH);
    return cell.isPresent() ? OptionalDouble.of(length(cell.get())) : OptionalDouble.empty();
  }

  private static double length(Cell cell) {
    try {
      double length = LengthText.parse(cell.text());
      if (length > 0) {
        return length;
      }
    } catch (IllegalArgumentException e) {
      throw cell.wrong(Optional.ofNullable(e.getMessage()).orElse(""), "Write it with its unit.");
    }
    throw cell.wrong("a length of nothing", "Write it like 10 ft or 3048 mm.");
  }

  private static int whole(Cell cell) {
    if (!cell.text().matches("[1-9]\\d{0,6}")) {
      throw cell.wrong("\"" + cell.text() + "\" is not a whole number above zero", "Correct it.");
    }
    return Integer.parseInt(cell.text());
  }

  /** A point for decimals; a comma too, which is unmistakable before one or two digits. */
  private static BigDecimal price(Cell cell) {
    if (!cell.text().matches("\\d{1,9}([.]\\d{1,4}|,\\d{1,2})?")) {
      throw cell.wrong(
          "\"" + cell.text() + "\" is not a price",
          "Write digits with a point for decimals, and no sign of a currency: 12.50.");
    }
    BigDecimal price = new BigDecimal(cell.text().replace(',', '.'));
    if (price.signum() == 0) {
      throw cell.wrong(
          "a price of nothing", "Give what it costs, or take the row out: it is then listed.");
    }
    return price;
  }
}
