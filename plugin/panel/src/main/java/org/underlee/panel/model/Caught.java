package org.underlee.panel.model;

import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.Leak;
import org.underlee.drainage.LeakCause;
import org.underlee.framing.Field;
import org.underlee.geom.Vec3;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * What of the rain on each bay the proof shows to be caught.
 *
 * @param bays those with leaks, by their field and their own name
 */
record Caught(Map<Item.OfBay, Bay> bays) {
  /** Drips of less deck than this are told as findings; the bay counts as drained, m². */
  private static final double DRIP = 0.001;

  /**
   * What gets through in one bay.
   *
   * @param area of deck that is not drained, m²
   * @param beyond how far the deck goes on beyond the gutter, metres
   */
  record Bay(double area, double beyond) {
    static final Bay WHOLE = new Bay(0, 0);

    boolean isWhole() {
      return area < DRIP;
    }

    /** {@code 514 mm open} beyond the gutter, or how much deck is not drained. */
    Words rest() {
      return beyond > 0
          ? Words.of("%s open", Quantity.length(beyond))
          : Words.of("%s not drained", Quantity.area(area));
    }

    private Bay and(Leak leak, Field field, double left) {
      boolean goesOn = leak.cause() == LeakCause.BEYOND_GUTTER;
      double further = goesOn ? Math.max(left, along(leak, field)) : 0;
      return new Bay(area + leak.area(), Math.max(beyond, further));
    }

    private static double along(Leak leak, Field field) {
      DoubleSummaryStatistics v =
          leak.regions().stream()
              .flatMap(List::stream)
              .map(field.frame()::toLocal)
              .mapToDouble(Vec3::y)
              .summaryStatistics();
      return Math.max(0, v.getMax() - v.getMin());
    }
  }

  /** Empty until the layout is proved. */
  static Optional<Caught> of(Result result) {
    return result.design().filter(d -> result.isWhole()).map(d -> of(result, d.proof()));
  }

  private static Caught of(Result result, DrainProof proof) {
    Map<Item.OfBay, Bay> bays = new HashMap<>();
    for (Leak leak : proof.leaks()) {
      Item.OfBay at = new Item.OfBay(leak.field(), leak.bay());
      double left = left(result, at);
      result
          .field(leak.field())
          .ifPresent(
              f -> bays.put(at, bays.getOrDefault(at, Bay.WHOLE).and(leak, f.field(), left)));
    }
    return new Caught(bays);
  }

  /** What of a bay is beyond the longest run in its field, as the layout tells it, metres. */
  private static double left(Result result, Item.OfBay at) {
    return result
        .layoutOf(at.field())
        .flatMap(l -> result.bay(at.field(), at.bay()).map(b -> b.length() - l.run()))
        .orElse(0.0);
  }

  Bay bay(String field, String bay) {
    return bays.getOrDefault(new Item.OfBay(field, bay), Bay.WHOLE);
  }

  /** Deck of a field that is not drained, m²; drips left out. */
  double open(String field) {
    return bays.entrySet().stream()
        .filter(e -> e.getKey().field().equals(field) && !e.getValue().isWhole())
        .mapToDouble(e -> e.getValue().area())
        .sum();
  }
}
