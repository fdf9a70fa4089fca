package org.underlee.layout;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * Where the user wants outlets and their downspouts: the whole number of a gutter's outlets is then
 * the user's too.
 *
 * @param places by field ({@code deck-1/field-1}): metres along its gutter from the end at the
 *     field's first joist, ascending; never none
 */
public record OutletWishes(Map<String, List<Double>> places) {
  public static final OutletWishes NONE = new OutletWishes(Map.of());

  /** Tenths of a millimetre: what a hand cannot place more finely. */
  private static final int DECIMALS = 4;

  private static final String BETWEEN = " ";

  public OutletWishes {
    Map<String, List<Double>> all = new TreeMap<>();
    places.forEach(
        (field, own) -> all.put(field, own.stream().map(OutletWishes::whole).sorted().toList()));
    all.values().removeIf(List::isEmpty);
    places = Map.copyOf(all);
  }

  private static double whole(double metres) {
    return BigDecimal.valueOf(metres).setScale(DECIMALS, RoundingMode.HALF_EVEN).doubleValue();
  }

  /**
   * Reads {@code deck-1/field-1=0.45,3.2 deck-1/field-2=1}.
   *
   * @throws InputException when it is none
   */
  public static OutletWishes parse(String text) {
    Map<String, List<Double>> places = new TreeMap<>();
    for (String each : text.strip().split("\\s+", -1)) {
      String[] two = each.split("=", -1);
      if (two.length != 2 || two[0].isEmpty()) {
        throw slip(each);
      }
      places.put(two[0], Arrays.stream(two[1].split(",", -1)).map(n -> metres(n, each)).toList());
    }
    return new OutletWishes(places);
  }

  private static double metres(String number, String all) {
    try {
      double metres = Double.parseDouble(number);
      if (Double.isFinite(metres)) {
        return metres;
      }
      throw slip(all);
    } catch (NumberFormatException e) {
      throw slip(all);
    }
  }

  private static InputException slip(String text) {
    return new InputException(
        Place.NOWHERE,
        "\"" + text + "\" does not say where outlets are",
        "Write the field and metres along its gutter from the end at its first joist, as in"
            + " deck-1/field-1=0.45,3.2.");
  }

  /** As {@link #parse} reads it; empty for none. */
  public String text() {
    return new TreeMap<>(places)
        .entrySet().stream()
            .map(e -> e.getKey() + "=" + numbers(e.getValue()))
            .collect(Collectors.joining(BETWEEN));
  }

  private static String numbers(List<Double> metres) {
    return metres.stream()
        .map(m -> BigDecimal.valueOf(m).stripTrailingZeros().toPlainString())
        .collect(Collectors.joining(","));
  }

  /** Those of a field; none where the program chooses. */
  public List<Double> of(String field) {
    return places.getOrDefault(field, List.of());
  }

  /** The same with other places for a field; with none the program chooses there again. */
  public OutletWishes with(String field, List<Double> metres) {
    Map<String, List<Double>> all = new TreeMap<>(places);
    all.put(field, metres);
    return new OutletWishes(all);
  }
}
