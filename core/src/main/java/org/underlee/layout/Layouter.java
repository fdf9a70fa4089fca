package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.kit.Kit;

/** From bays and a kit to every part in its place. */
public final class Layouter {
  private Layouter() {}

  /**
   * Lays out every deck in scope, field by field.
   *
   * @param bays of every field of the decks
   */
  public static Layout layOut(List<Deck> decks, List<FieldBays> bays, Scope scope, Kit kit) {
    return layOut(decks, bays, scope, kit, GutterCapacity.ENOUGH);
  }

  /** As above, with as many outlets as the rain asks for. */
  public static Layout layOut(
      List<Deck> decks, List<FieldBays> bays, Scope scope, Kit kit, GutterCapacity capacity) {
    List<Finding> findings = new ArrayList<>(scope.leftOut(decks));
    List<FieldLayout> fields = new ArrayList<>();
    int number = 0;
    for (Deck deck : scope.of(decks)) {
      for (Field field : deck.fields()) {
        FieldBays own =
            bays.stream().filter(b -> b.field().equals(field)).findFirst().orElseThrow();
        FieldLayouter.layOut(deck.id(), own, kit, capacity, ++number, findings)
            .ifPresent(fields::add);
      }
    }
    return new Layout(kit, fields, findings);
  }
}
