package org.underlee.writeback;

import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.step.StepInstance;

/**
 * The units of area, volume and mass that a project assigns. Only those whose size is certain: SI
 * units without a prefix (the standard leaves open whether a milli square metre is a thousandth or
 * a millionth), grams and kilograms, and units defined by a number of these.
 */
final class AssignedUnits {
  private static final double GRAM = 0.001;

  // Positions of attributes, the same in all three schemas.
  private static final int UNITS_IN_CONTEXT = 8;
  private static final int UNIT_TYPE = 1;
  private static final int PREFIX = 2;
  private static final int CONVERSION_FACTOR = 3;

  private final StepInstance project;

  AssignedUnits(StepInstance project) {
    this.project = project;
  }

  /**
   * One unit in SI; empty where none is assigned or its size is not certain.
   *
   * @param type {@code AREAUNIT}, {@code VOLUMEUNIT} or {@code MASSUNIT}
   */
  OptionalDouble inSi(String type) {
    Optional<StepInstance> unit =
        project.optionalFollow(UNITS_IN_CONTEXT).stream()
            .flatMap(a -> a.followAll(0).stream())
            .filter(AssignedUnits::isNamed)
            .filter(u -> u.enumeration(UNIT_TYPE).equals(type))
            .findFirst();
    return unit.map(AssignedUnits::size).orElse(OptionalDouble.empty());
  }

  private static boolean isNamed(StepInstance unit) {
    return isSi(unit) || unit.keyword().startsWith("IFCCONVERSIONBASEDUNIT");
  }

  private static boolean isSi(StepInstance unit) {
    return unit.keyword().equals("IFCSIUNIT");
  }

  private static OptionalDouble size(StepInstance unit) {
    if (isSi(unit)) {
      return sizeOfSi(unit);
    }
    StepInstance measure = unit.follow(CONVERSION_FACTOR);
    StepInstance base = measure.follow(1);
    OptionalDouble one = isSi(base) ? sizeOfSi(base) : OptionalDouble.empty();
    return one.isPresent()
        ? OptionalDouble.of(measure.number(0) * one.getAsDouble())
        : OptionalDouble.empty();
  }

  private static OptionalDouble sizeOfSi(StepInstance unit) {
    boolean mass = unit.enumeration(UNIT_TYPE).equals("MASSUNIT");
    Optional<String> prefix = unit.optionalEnumeration(PREFIX);
    if (prefix.isEmpty()) {
      return OptionalDouble.of(mass ? GRAM : 1);
    }
    return mass && prefix.get().equals("KILO") ? OptionalDouble.of(1) : OptionalDouble.empty();
  }
}
