package org.underlee.takeoff;

import java.util.List;
import java.util.Optional;

/** What a user says about buying: what things cost, and what need not be bought. */
public record Buying(Optional<PriceList> prices, List<OnHand> onHand) {
  /** Nothing is known: the least length is bought. */
  public static final Buying PLAIN = new Buying(Optional.empty(), List.of());

  public Buying {
    onHand = List.copyOf(onHand);
  }

  List<OnHand> onHand(String item) {
    return onHand.stream().filter(o -> o.item().equals(item)).toList();
  }
}
