package org.underlee.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.units.Lengths.UnitSystem;

/** A shop that sells by inches is asked for the same thing. */
class StockNamesTest {
  /** Inches on a shopping list are nominal: 4 in for 100 mm would pass, 3 in would not. */
  private static final double NOMINAL = 0.06;

  /** Number of a screw for its diameter: 0.060 in + 0.013 in a number (ASME B18.6.3). */
  private static final double NUMBER_ZERO = 0.060;

  private static final double A_NUMBER = 0.013;

  private static final Pattern MEASURE =
      Pattern.compile("#(\\d+)|(\\d+\\.\\d+|(?:\\d+ )?\\d+/\\d+|\\d+)(?=\"| x | mm)");

  static Stream<StockItem> everyBuiltInItem() {
    return KitReader.allBuiltIn().stream().flatMap(kit -> kit.stock().stream());
  }

  @ParameterizedTest
  @MethodSource("everyBuiltInItem")
  void theNameInInchesTellsTheSameSizesAsTheNameInMillimetres(StockItem item) {
    List<Double> millimetres = measures(item.description(UnitSystem.METRIC));
    List<Double> inches = measures(item.description(UnitSystem.IMPERIAL));

    assertThat(item.descriptionInInches()).isPresent();
    assertThat(item.descriptionInInches().orElseThrow()).doesNotContain(" mm");
    assertThat(inches).hasSameSizeAs(millimetres);
    for (int i = 0; i < inches.size(); i++) {
      double asked = millimetres.get(i);
      assertThat(inches.get(i) * 25.4).isCloseTo(asked, within(asked * NOMINAL));
    }
  }

  private static List<Double> measures(String name) {
    List<Double> found = new ArrayList<>();
    Matcher m = MEASURE.matcher(name);
    while (m.find()) {
      found.add(
          m.group(1) != null
              ? NUMBER_ZERO + A_NUMBER * Integer.parseInt(m.group(1))
              : number(m.group(2)));
    }
    return found;
  }

  /** {@code 3 1/2}, {@code 1/16}, {@code 0.032} or {@code 24}. */
  private static double number(String text) {
    String[] words = text.split(" ");
    double sum = 0;
    for (String word : words) {
      String[] share = word.split("/");
      sum += Double.parseDouble(share[0]) / (share.length > 1 ? Double.parseDouble(share[1]) : 1);
    }
    return sum;
  }
}
