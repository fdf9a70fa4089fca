package org.underlee.ids;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.underlee.ifc.SiPrefixes;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** How large a project's units are in the units that IDS values are in: those of SI. */
final class UnitSizes {
  /** Units defined by units deeper than this are a loop. */
  private static final int DEEPEST = 8;

  private final Map<String, Double> byType = new HashMap<>();

  UnitSizes(StepFile file) {
    for (int i : file.ofKeyword("IFCUNITASSIGNMENT")) {
      for (StepInstance unit : file.decode(i).followAll(0)) {
        typeOf(unit).ifPresent(type -> byType.putIfAbsent(type, size(unit, 0)));
      }
    }
  }

  /** {@code LENGTHUNIT} */
  private static Optional<String> typeOf(StepInstance unit) {
    return unit.keyword().equals("IFCMONETARYUNIT")
        ? Optional.empty()
        : unit.optionalEnumeration(1);
  }

  /**
   * The size of the project's unit for a measure; one where it assigns none.
   *
   * @param measure {@code IFCPOSITIVELENGTHMEASURE}
   */
  double of(String measure) {
    String type =
        measure.replaceFirst("^IFC(POSITIVE|NONNEGATIVE)?", "").replaceFirst("MEASURE$", "UNIT");
    return byType.getOrDefault(type, 1.0);
  }

  /** The size of one unit. */
  double of(StepInstance unit) {
    return size(unit, 0);
  }

  private static double size(StepInstance unit, int depth) {
    if (depth > DEEPEST) {
      return 1;
    }
    if (unit.keyword().equals("IFCSIUNIT")) {
      return si(unit);
    }
    if (unit.keyword().startsWith("IFCCONVERSIONBASEDUNIT")) {
      StepInstance measure = unit.follow(3);
      return measure.number(0) * size(measure.follow(1), depth + 1);
    }
    if (unit.keyword().equals("IFCDERIVEDUNIT")) {
      double all = 1;
      for (StepInstance element : unit.followAll(0)) {
        all *= Math.pow(size(element.follow(0), depth + 1), element.number(1));
      }
      return all;
    }
    return 1;
  }

  /** A prefix counts as often as the dimension says: a square millimetre is a millionth. */
  private static double si(StepInstance unit) {
    String name = unit.enumeration(3);
    int power = name.startsWith("SQUARE") ? 2 : name.startsWith("CUBIC") ? 3 : 1;
    int exponent =
        unit.optionalEnumeration(2).map(p -> SiPrefixes.POWERS_OF_TEN.getOrDefault(p, 0)).orElse(0);
    double size = Math.pow(10, (double) exponent * power);
    return name.equals("GRAM") ? size / 1000 : size;
  }
}
