package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.kit.Kit;

/** From bays and a kit to every part in its place. */
public final class Layouter {
  private Layouter() {}

  /**
   * Lays out every deck in scope, field by field.
   *
   * @param bays of every field of the decks
   * @throws InputException when the scope names a deck or bay that is not there
   */
  public static Layout layOut(Framing framing, List<FieldBays> bays, Scope scope, Kit kit) {
    return layOut(framing, bays, scope, kit, GutterCapacity.ENOUGH);
  }

  /** As above, with as many outlets as the rain asks for. */
  public static Layout layOut(
      Framing framing, List<FieldBays> bays, Scope scope, Kit kit, GutterCapacity capacity) {
    List<Deck> decks = scope.of(framing.decks());
    requireBays(decks, bays, scope.wishes());
    List<Finding> findings = new ArrayList<>(scope.leftOut(framing.decks()));
    List<FieldLayout> fields = new ArrayList<>();
    Boards boards = new Boards(framing, kit, scope.wishes());
    int number = 0;
    for (Deck deck : decks) {
      boards.finding(deck).ifPresent(findings::add);
      for (Field field : deck.fields()) {
        number++;
        if (!boards.inTheWay(deck)) {
          FieldLayouter.layOut(
                  deck.id(), baysOf(field, bays), kit, capacity, scope.wishes(), number, findings)
              .ifPresent(fields::add);
        }
      }
    }
    return new Layout(kit, fields, findings);
  }

  /** Ids of the lines that low ends may follow in some field, nearest to the house first. */
  public static List<String> lowEnds(List<FieldBays> bays) {
    return bays.stream()
        .flatMap(b -> LowEnd.candidates(b).stream())
        .map(LowEnd::id)
        .distinct()
        .sorted()
        .toList();
  }

  private static FieldBays baysOf(Field field, List<FieldBays> bays) {
    return bays.stream().filter(b -> b.field().equals(field)).findFirst().orElseThrow();
  }

  /** A bay that is to be left open must be there. */
  private static void requireBays(List<Deck> decks, List<FieldBays> all, Wishes wishes) {
    Set<String> unknown = new TreeSet<>(wishes.leaveOpen());
    decks.stream()
        .flatMap(d -> d.fields().stream())
        .map(f -> baysOf(f, all))
        .forEach(
            f ->
                f.bays()
                    .forEach(
                        b -> unknown.removeAll(Set.of(b.id(), f.field().id() + "/" + b.id()))));
    if (!unknown.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "there is no bay " + String.join(", ", unknown) + " to leave open in the decks in scope",
          "Run survey to see the bays; name one as B3, or as deck-1/field-1/B3.");
    }
  }
}
