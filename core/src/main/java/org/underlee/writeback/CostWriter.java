package org.underlee.writeback;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Set;

/**
 * Writes costs: an amount with its currency beside it, because the designer's project has its own
 * units, which are not ours to edit.
 */
final class CostWriter {
  /**
   * What IFC2X3 has names for (IFC2X3 TC1, IfcCurrencyEnum). There other currencies stand in words
   * beside the amount.
   */
  private static final Set<String> IFC2X3_CURRENCIES =
      Set.copyOf(
          Arrays.asList(
              ("AED AES ATS AUD BBD BEG BGL BHD BMD BND BRL BSD BWP BZD CAD CBD CHF CLP CNY CYS CZK"
                      + " DDP DEM DKK EGL EST EUR FAK FIM FJD FKP FRF GBP GIP GMD GRX HKD HUF ICK"
                      + " IDR ILS INR IRP ITL JMD JOD JPY KES KRW KWD KYD LKR LUF MTL MUR MXN MYR"
                      + " NLG NZD OMR PGK PHP PKR PLN PTN QAR RUR SAR SCR SEK SGD SKP THB TRL TTD"
                      + " TWD USD VEB VND XEU ZAR ZWD NOK")
                  .split(" ")));

  /** What a cost that sums up the nested ones is called (IFC4, IfcCostValue, Category). */
  private static final String SUM_OF_NESTED = "*";

  private static final String MONEY = "IfcMonetaryMeasure";

  private final Draft draft;
  private final String currency;

  CostWriter(Draft draft, String currency) {
    this.draft = draft;
    this.currency = currency;
  }

  /** The price of one of what is counted. */
  Value unitPrice(String unit, BigDecimal price) {
    return cost("price of one " + unit, price, "");
  }

  /** A sum of what is nested. */
  Value sum(String name, BigDecimal amount) {
    return cost(name, amount, SUM_OF_NESTED);
  }

  private Value cost(String name, BigDecimal amount, String category) {
    Value u = Value.UNSET;
    Value label = Value.label(name);
    Value words = Value.text(amount.toPlainString() + " " + currency);
    Value applied = applied(amount);
    // IFC2X3 demands a type of cost, which later schemas call its category.
    return draft.ifc2x3()
        ? draft
            .out()
            .add(
                "IfcCostValue",
                label,
                words,
                applied,
                u,
                u,
                u,
                Value.label(category.isEmpty() ? "Material" : category),
                u)
        : draft
            .out()
            .add(
                "IfcCostValue",
                label,
                words,
                applied,
                u,
                u,
                u,
                category.isEmpty() ? u : Value.label(category),
                u,
                u,
                u);
  }

  private Value applied(BigDecimal amount) {
    Value money = Value.typed(MONEY, Value.real(amount.doubleValue()));
    if (draft.ifc2x3() && !IFC2X3_CURRENCIES.contains(currency)) {
      return money;
    }
    Value name = draft.ifc2x3() ? Value.enumeration(currency) : Value.label(currency);
    Value unit = draft.out().shared("IfcMonetaryUnit", name);
    return draft.out().add("IfcMeasureWithUnit", money, unit);
  }
}
