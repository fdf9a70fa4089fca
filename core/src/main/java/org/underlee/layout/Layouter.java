package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.kit.Kit;

/** From bays and a kit to every part in its place. */
public final class Layouter {
  private Layouter() {}

  /**
   * @param bays of every field of every deck in scope
   */
  public static Layout layOut(List<Deck> decks, List<FieldBays> bays, Kit kit) {
    List<Finding> findings = new ArrayList<>();
    List<FieldLayout> fields = new ArrayList<>();
    int number = 0;
    for (Deck deck : decks) {
      for (FieldBays own : bays) {
        if (deck.fields().contains(own.field())) {
          number++;
          if (deck.outside().value()) {
            FieldLayouter.layOut(deck.id(), own, kit, number, findings).ifPresent(fields::add);
          } else {
            findings.add(inside(deck, own));
          }
        }
      }
    }
    return new Layout(kit, fields, findings);
  }

  private static Finding inside(Deck deck, FieldBays bays) {
    return Finding.of(
        LayoutRules.INSIDE_FLOOR,
        Place.NOWHERE,
        bays.field().id() + " is left out: " + deck.outside().why() + ".",
        "Nothing to do, unless it is an outside deck after all.");
  }
}
