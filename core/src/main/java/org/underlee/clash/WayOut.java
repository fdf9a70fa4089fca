package org.underlee.clash;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.Fix;
import org.underlee.units.Words;

/**
 * What can be done about an issue, and what it costs. Each was tried on the model before it is
 * told.
 *
 * @param options of {@code design} that do it, where the program can
 */
public record WayOut(Words what, Words price, List<Fix.Option> options) {
  public WayOut {
    options = List.copyOf(options);
  }

  static WayOut byHand(Words what, Words price) {
    return new WayOut(what, price, List.of());
  }

  public Words words() {
    return Words.of("%s: %s", what, price);
  }

  /** As typed after {@code design}, where the program can do it. */
  public Optional<String> typed() {
    return options.isEmpty()
        ? Optional.empty()
        : Optional.of(
            options.stream()
                .map(o -> o.name() + " " + o.value())
                .reduce((a, b) -> a + " " + b)
                .orElse(""));
  }
}
