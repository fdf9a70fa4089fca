package org.underlee.run;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.layout.PartKind;
import org.underlee.writeback.Strip;

/** By what size a model says that the downspouts of an assembly are called. */
record SpoutSizes(IfcModel model, List<WrittenPart> parts) {
  /** What is nearer is one size, metres: a model in inches has it rounded. */
  private static final double SAME = 1e-6;

  /**
   * The kit, with the size that the model states: the least where there are several, and none where
   * one states none.
   */
  Kit in(Kit kit) {
    List<OptionalDouble> all =
        parts.stream().filter(p -> p.kind() == PartKind.DOWNSPOUT).map(this::of).toList();
    if (all.stream().anyMatch(OptionalDouble::isEmpty)) {
      return kit.without(DrainValue.DOWNSPOUT_NOMINAL);
    }
    double stated = all.stream().mapToDouble(OptionalDouble::orElseThrow).min().orElse(0);
    // a pipe is not called by more than its outside: tables would promise what it cannot carry
    double least = Math.min(stated, kit.get(DrainValue.DOWNSPOUT_DIAMETER));
    double own = kit.find(DrainValue.DOWNSPOUT_NOMINAL).orElse(0);
    return all.isEmpty() || Math.abs(least - own) < SAME
        ? kit
        : kit.with(DrainValue.DOWNSPOUT_NOMINAL, least, "stated in the model");
  }

  private OptionalDouble of(WrittenPart spout) {
    return model.properties(spout.element().instance()).values().stream()
        .map(set -> set.getOrDefault(Strip.NOMINAL_DIAMETER, ""))
        .flatMap(SpoutSizes::number)
        .mapToDouble(size -> size * model.units().metresPerLengthUnit())
        .filter(size -> size > 0 && Double.isFinite(size))
        .findFirst();
  }

  private static Stream<Double> number(String text) {
    try {
      return Stream.of(Double.valueOf(text));
    } catch (NumberFormatException e) {
      return Stream.empty();
    }
  }
}
