package org.underlee.takeoff;

import java.util.List;
import java.util.Optional;
import org.underlee.kit.StockItem;
import org.underlee.layout.Derivation;
import org.underlee.layout.Dimension;
import org.underlee.layout.Part;

/** Sums up where the length of an item goes. Laps are read from the derivations of the parts. */
final class LengthsBuilder {
  /** How kits end the keys of their laps. */
  private static final String LAP = "LapMm";

  private LengthsBuilder() {}

  static Takeoff.Lengths of(StockItem item, List<Part> parts, CuttingStock.Plan plan) {
    double gross = parts.stream().mapToDouble(Part::cutLength).sum();
    double fitted = parts.stream().mapToDouble(Part::length).sum();
    double laps = parts.stream().mapToDouble(LengthsBuilder::lap).sum();
    double bought = 0;
    double onHand = 0;
    double kept = 0;
    double beside = 0;
    for (Stick stick : plan.sticks()) {
      bought += stick.onHand() ? 0 : stick.stockLength();
      onHand += stick.onHand() ? stick.stockLength() : 0;
      beside += stick.blocks().stream().mapToDouble(Stick.Block::beside).sum();
      kept += item.shop().keeps(stick.offcut()) ? stick.offcut() : 0;
    }
    return new Takeoff.Lengths(fitted - laps, gross - fitted, laps, bought, onHand, kept, beside);
  }

  private static double lap(Part part) {
    Optional<Derivation> length = part.why().of(Dimension.LENGTH);
    double laps = 0;
    for (Derivation.Step step : length.map(Derivation::steps).orElse(List.of())) {
      if (step.op() == Derivation.Op.PLUS
          && step.origin() instanceof Derivation.KitValue kit
          && kit.key().endsWith(LAP)) {
        laps += step.value().si();
      }
    }
    return laps;
  }
}
