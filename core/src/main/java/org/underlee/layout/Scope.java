package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;

/**
 * Which decks to lay out.
 *
 * @param deck one deck by its id, inside or outside; else every deck judged to be outside
 */
public record Scope(Optional<String> deck) {
  public static final Scope OUTSIDE = new Scope(Optional.empty());

  /**
   * The decks in scope.
   *
   * @throws InputException when the named deck is not in the model
   */
  public List<Deck> of(List<Deck> decks) {
    List<Deck> chosen =
        decks.stream().filter(d -> deck.map(d.id()::equals).orElse(d.outside().value())).toList();
    if (deck.isPresent() && chosen.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "there is no deck \""
              + deck.get()
              + "\"; the model has "
              + decks.stream().map(Deck::id).toList(),
          "Run survey to see the decks, and name one of them.");
    }
    return chosen;
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
