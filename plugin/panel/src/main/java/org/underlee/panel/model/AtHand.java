package org.underlee.panel.model;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;

/** Which field a person is at: what is decided shows there first. */
final class AtHand {
  private AtHand() {}

  /**
   * The field of what is selected, or else the one nearest to the middle of the picture.
   *
   * @param middle of the picture, where there is one
   */
  static Optional<String> field(Result result, Set<Item> selection, Optional<Vec3> middle) {
    return selection.stream()
        .flatMap(i -> of(i, result).stream())
        .findFirst()
        .or(() -> middle.flatMap(m -> nearest(result, m)));
  }

  private static Optional<String> of(Item item, Result result) {
    if (item instanceof Item.OfBay bay) {
      return Optional.of(bay.field());
    } else if (item instanceof Item.OfField field) {
      return Optional.of(field.id());
    } else if (item instanceof Item.OfPart part) {
      return result.part(part.id()).map(p -> p.field());
    } else if (item instanceof Item.OfDeck deck) {
      return result.survey().framing().decks().stream()
          .filter(d -> d.id().equals(deck.id()))
          .flatMap(d -> d.fields().stream())
          .findFirst()
          .map(Field::id);
    }
    return Optional.empty();
  }

  private static Optional<String> nearest(Result result, Vec3 middle) {
    return inScope(result).stream()
        .flatMap(d -> d.fields().stream())
        .min(Comparator.comparingDouble(f -> middleOf(f).minus(middle).length()))
        .map(Field::id);
  }

  private static List<Deck> inScope(Result result) {
    return result.survey().framing().decks().stream()
        .filter(d -> result.decisions().deck().map(d.id()::equals).orElse(d.outside().value()))
        .toList();
  }

  private static Vec3 middleOf(Field field) {
    return Box.around(
            field.lines().stream()
                .flatMap(l -> l.plies().stream())
                .map(m -> m.element().shape().bounds())
                .toList())
        .centre();
  }
}
