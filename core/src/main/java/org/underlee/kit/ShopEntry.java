package org.underlee.kit;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.function.Function;
import org.underlee.finding.InputException;

/** How an item is sold, as a kit file has it. */
record ShopEntry(
    @JsonProperty(required = true) String unit,
    @JsonProperty(required = true) int pieces,
    @JsonProperty(required = true) double sparePercent,
    @JsonProperty(required = true) double endTrimMm,
    @JsonProperty(required = true) double keepOffcutMm,
    @JsonProperty(required = true) double ripWidthMm,
    @JsonProperty boolean sparesFromOffcutsOnly,
    @JsonProperty(required = true) String source) {
  private static final double MM = 1e-3;
  private static final double PERCENT = 100;

  /**
   * Checks and converts it.
   *
   * @param wrong what to throw, by what is wrong
   */
  Shop read(Function<String, InputException> wrong) {
    if (pieces < 1) {
      throw wrong.apply("in units of " + pieces + " pieces");
    }
    if (source.isBlank()) {
      throw wrong.apply("it names no source");
    }
    for (double number : List.of(sparePercent, endTrimMm, keepOffcutMm, ripWidthMm)) {
      if (!Double.isFinite(number) || number < 0) {
        throw wrong.apply("it has a number below zero: " + number);
      }
    }
    return new Shop(
        unit,
        pieces,
        sparePercent / PERCENT,
        endTrimMm * MM,
        keepOffcutMm * MM,
        ripWidthMm * MM,
        sparesFromOffcutsOnly,
        source);
  }
}
