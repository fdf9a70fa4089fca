package org.underlee.panel.model;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.layout.Part;
import org.underlee.picture.DeckPicture;

/** Which shapes of a picture a selection lights up. */
final class Highlight {
  private Highlight() {}

  static Set<Integer> ids(DeckPicture picture, Set<Item> selection, @Nullable Result result) {
    if (selection.isEmpty() || result == null) {
      return Set.of();
    }
    Set<String> names = new HashSet<>();
    selection.forEach(i -> names.addAll(names(i, result)));
    Set<Integer> ids = new HashSet<>();
    for (int i = 0; i < picture.subjects().size(); i++) {
      if (names.contains(picture.subjects().get(i).id())) {
        ids.add(i + 1);
      }
    }
    return ids;
  }

  /** Ids of the parts and elements that an item is made of. */
  static Set<String> names(Item item, Result result) {
    Set<String> names = new HashSet<>();
    if (item instanceof Item.OfPart part) {
      names.add(part.id());
    } else if (item instanceof Item.OfElement element) {
      names.add(element.globalId());
    } else if (item instanceof Item.OfBay bay) {
      parts(result, bay.field()).stream()
          .filter(p -> p.bay().filter(bay.bay()::equals).isPresent())
          .forEach(p -> names.add(p.id()));
      result
          .bay(bay.field(), bay.bay())
          .filter(b -> names.isEmpty())
          .ifPresent(b -> List.of(b.left(), b.right()).forEach(l -> addLine(l, names)));
    } else if (item instanceof Item.OfField field) {
      result.field(field.id()).ifPresent(f -> addField(f.field(), result, names));
    } else if (item instanceof Item.OfDeck deck) {
      result.survey().framing().decks().stream()
          .filter(d -> d.id().equals(deck.id()))
          .flatMap(d -> d.fields().stream())
          .forEach(f -> addField(f, result, names));
    }
    return names;
  }

  /** Its parts; its joists where it has none. */
  private static void addField(Field field, Result result, Set<String> names) {
    List<Part> parts = parts(result, field.id());
    parts.forEach(p -> names.add(p.id()));
    if (parts.isEmpty()) {
      field.lines().forEach(l -> addLine(l, names));
    }
  }

  private static void addLine(JoistLine line, Set<String> names) {
    line.plies().forEach(p -> names.add(p.id()));
  }

  private static List<Part> parts(Result result, String field) {
    return result.layoutOf(field).map(l -> l.parts()).orElse(List.of());
  }
}
