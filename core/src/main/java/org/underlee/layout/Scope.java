package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.framing.Storey;

/**
 * Which decks to lay out, and what is fixed about them.
 *
 * @param deck one deck by its id, inside or outside; else every deck judged to be outside
 * @param storey only decks of the storey with this name
 */
public record Scope(Optional<String> deck, Optional<String> storey, Wishes wishes) {
  public static final Scope OUTSIDE = new Scope(Optional.empty());

  /** One deck or all outside decks, with nothing fixed. */
  public Scope(Optional<String> deck) {
    this(deck, Optional.empty(), Wishes.NONE);
  }

  public Scope with(Wishes others) {
    return new Scope(deck, storey, others);
  }

  /**
   * The decks in scope.
   *
   * @throws InputException when the named deck or storey is not in the model
   */
  public List<Deck> of(List<Deck> decks) {
    List<Deck> chosen =
        decks.stream()
            .filter(d -> deck.map(d.id()::equals).orElse(d.outside().value()))
            .filter(d -> storey.isEmpty() || storey.equals(d.storey().map(Storey::name)))
            .toList();
    if (deck.isPresent() && chosen.isEmpty()) {
      throw nothing("deck", deck.get(), decks.stream().map(Deck::id).toList());
    }
    if (storey.isPresent() && chosen.isEmpty()) {
      List<String> storeys =
          decks.stream().flatMap(d -> d.storey().map(Storey::name).stream()).distinct().toList();
      throw nothing("outside deck on a storey", storey.get(), storeys);
    }
    return chosen;
  }

  private static InputException nothing(String what, String name, List<String> there) {
    return new InputException(
        Place.NOWHERE,
        "there is no " + what + " \"" + name + "\"; the model has " + there,
        "Run survey to see the decks, and name one of them.");
  }

  /** A note for each deck that was left out because it is inside. */
  List<Finding> leftOut(List<Deck> decks) {
    return decks.stream()
        .filter(d -> deck.isEmpty() && !d.outside().value())
        .map(
            d ->
                Finding.of(
                    LayoutRules.INSIDE_FLOOR,
                    Place.NOWHERE,
                    d.id() + " is left out: " + d.outside().why() + ".",
                    "Nothing to do; to lay it out all the same, name it with --deck."))
        .toList();
  }
}
