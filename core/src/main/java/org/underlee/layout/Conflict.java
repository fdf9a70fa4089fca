package org.underlee.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.units.Words;

/**
 * The fewest limits that together leave a bay no seat height; without any one of them a height is
 * left. Each limit forbids one stretch of heights, so the fewest are the fewest stretches that
 * cover every height, which are found from below by taking the one that reaches furthest each time.
 *
 * @param limits lowest first
 */
record Conflict(List<SeatLimit> limits) {
  Conflict {
    limits = List.copyOf(limits);
  }

  /** Empty when some height meets every limit. */
  static Optional<Conflict> of(List<SeatLimit> all) {
    List<SeatLimit> chosen = new ArrayList<>();
    Optional<SeatLimit> next = furthest(all.stream().filter(SeatLimit::isFloor).toList());
    while (next.isPresent()) {
      SeatLimit last = next.get();
      chosen.add(last);
      if (last.isCeiling()) {
        return Optional.of(new Conflict(chosen));
      }
      next =
          furthest(all.stream().filter(last::isMetBy).toList())
              .filter(l -> l.forbidden().to() > last.forbidden().to());
    }
    return Optional.empty();
  }

  private static Optional<SeatLimit> furthest(List<SeatLimit> limits) {
    return limits.stream().max(Comparator.comparingDouble(l -> l.forbidden().to()));
  }

  Words words() {
    return Words.join(", ", limits.stream().map(SeatLimit::words).toList());
  }
}
