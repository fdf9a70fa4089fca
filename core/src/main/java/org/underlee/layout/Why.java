package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.layout.Derivation.Step;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Why a part is as it is.
 *
 * @param reason what it is there for and where it goes
 * @param derivations of its dimensions
 */
public record Why(Words reason, List<Derivation> derivations) {
  public Why {
    derivations = List.copyOf(derivations);
  }

  public static Why because(String reason) {
    return new Why(Words.plain(reason), List.of());
  }

  public Optional<Derivation> of(Dimension dimension) {
    for (int i = 0; i < derivations.size(); i++) {
      if (derivations.get(i).dimension() == dimension) {
        return Optional.of(derivations.get(i));
      }
    }
    return Optional.empty();
  }

  /** The reason, then each dimension as one sum, for a cell or a property. */
  public String inShort(UnitSystem units) {
    return derivations.stream()
        .map(d -> sum(d, units))
        .collect(
            Collectors.joining("; ", reason.in(units) + (derivations.isEmpty() ? "" : "; "), ""));
  }

  /** {@code length 3023 mm = 3099 mm (clear run of B1) - 25 mm (railEndGapMm)}. */
  private static String sum(Derivation d, UnitSystem units) {
    StringBuilder text =
        new StringBuilder(d.dimension().words())
            .append(' ')
            .append(Quantity.of(d.dimension().kind(), d.value()).exactlyIn(units))
            .append(" =");
    for (Step step : d.steps()) {
      text.append(step.op().sign().isEmpty() ? "" : " " + step.op().sign())
          .append(' ')
          .append(step.value().exactlyIn(units))
          .append(" (")
          .append(name(step, units))
          .append(')');
    }
    return text.toString();
  }

  private static String name(Step step, UnitSystem units) {
    return step.origin() instanceof Derivation.KitValue kit ? kit.key() : step.what().in(units);
  }

  /** In short and in metric units, as in files. */
  @Override
  public String toString() {
    return inShort(UnitSystem.METRIC);
  }
}
