package org.underlee.ifc;

import java.util.Locale;
import java.util.Optional;
import org.underlee.step.StepInstance;

/**
 * The length and plane angle units that the project assigns. Units elsewhere in the file mean
 * nothing unless assigned.
 *
 * @param lengthName {@code METRE}, {@code MILLIMETRE}, {@code FOOT}, {@code US SURVEY FOOT} …
 * @param lengthAssigned whether the project assigns a length unit; if not, metres are assumed
 */
public record IfcUnits(
    double metresPerLengthUnit,
    double radiansPerAngleUnit,
    String lengthName,
    boolean lengthAssigned) {
  /** Units defined by units deeper than this are a loop. */
  private static final int MAX_CONVERSIONS = 16;

  static IfcUnits of(StepInstance project) {
    Optional<StepInstance> length = assigned(project, "LENGTHUNIT");
    Optional<StepInstance> angle = assigned(project, "PLANEANGLEUNIT");
    return new IfcUnits(
        length.map(u -> factor(u, 1, 0)).orElse(1.0),
        angle.map(u -> factor(u, 1, 0)).orElse(1.0),
        length.map(IfcUnits::name).orElse("METRE"),
        length.isPresent());
  }

  private static Optional<StepInstance> assigned(StepInstance project, String type) {
    if (project.isOmitted(8)) {
      return Optional.empty();
    }
    return project.follow(8).followAll(0).stream()
        .filter(IfcUnits::isNamedUnit)
        .filter(u -> u.optionalEnumeration(1).filter(type::equals).isPresent())
        .findFirst();
  }

  private static boolean isNamedUnit(StepInstance unit) {
    return unit.keyword().equals("IFCSIUNIT")
        || unit.keyword().startsWith("IFCCONVERSIONBASEDUNIT");
  }

  /** {@code value} of this unit in metres or radians. */
  private static double factor(StepInstance unit, double value, int depth) {
    if (depth == MAX_CONVERSIONS) {
      throw unit.error("this unit is defined by itself");
    }
    if (unit.keyword().equals("IFCSIUNIT")) {
      int power = unit.optionalEnumeration(2).map(p -> power(unit, p)).orElse(0);
      // Dividing by 1000 is exact where multiplying by 0.001 is not: 25.4 mm is 0.0254 m.
      double si = power < 0 ? value / Math.pow(10, -power) : value * Math.pow(10, power);
      return positive(unit, si);
    }
    if (!isNamedUnit(unit)) {
      throw unit.error("a unit is expected here");
    }
    StepInstance measure = unit.follow(3);
    return factor(measure.follow(1), value * measure.number(0), depth + 1);
  }

  private static int power(StepInstance unit, String prefix) {
    Integer power = SiPrefixes.POWERS_OF_TEN.get(prefix);
    if (power == null) {
      throw unit.error("." + prefix + ". is no SI prefix");
    }
    return power;
  }

  private static double positive(StepInstance unit, double factor) {
    if (!(factor > 0) || Double.isInfinite(factor)) {
      throw unit.error("the unit comes out as " + factor + " of its SI unit");
    }
    return factor;
  }

  private static String name(StepInstance unit) {
    if (unit.keyword().equals("IFCSIUNIT")) {
      return unit.optionalEnumeration(2).orElse("") + unit.enumeration(3);
    }
    return unit.text(2).strip().toUpperCase(Locale.ROOT);
  }
}
