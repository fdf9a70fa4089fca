package org.underlee.panel.model;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;

/**
 * What things are called on the screen: as the plan and the pieces have it, not by the ids that
 * files use.
 */
final class Names {
  private static final String FIELD = "/field-";
  private static final Pattern ID = Pattern.compile("(deck-\\d+/field-[\\w-]+)((?:/[\\w-]+)*)");
  private static final Pattern DECK_ID = Pattern.compile("deck-\\d+(?![\\d/])");

  /** Of nothing: what has an id is called by it. */
  static final Names NONE = new Names();

  private final Map<String, String> fields = new HashMap<>();
  private final Map<String, String> pieces = new HashMap<>();

  private Names() {}

  /** Of everything that a result shows; of nothing before there is one. */
  static Names of(Optional<Result> result) {
    return result.map(Names::of).orElse(NONE);
  }

  /** Of everything that a result shows. */
  static Names of(Result result) {
    return of(result, result.layout());
  }

  /**
   * Likewise, in a layout that may be older than the result.
   *
   * @param layout whose marks are on its pieces
   */
  static Names of(Result result, Layout layout) {
    Names names = new Names();
    int number = 0;
    for (Deck deck : result.survey().framing().decks()) {
      for (Field field : deck.fields()) {
        names.fields.put(
            field.id(),
            isInScope(deck, result.decisions()) ? "F" + ++number : "Field " + numberOf(field.id()));
      }
    }
    layout.parts().forEach(p -> names.pieces.put(p.id(), p.label()));
    for (FieldLayout field : layout.fields()) {
      if (!field.parts().isEmpty()) {
        names.fields.put(field.field(), field.mark());
      }
    }
    return names;
  }

  /** Whether a deck is laid out under some decisions. */
  static boolean isInScope(Deck deck, Decisions decisions) {
    return decisions.deck().map(deck.id()::equals).orElse(deck.outside().value());
  }

  /**
   * {@code F3} as on its pieces and in the plan; {@code Field 2} of a deck that is not in scope.
   */
  String field(String id) {
    return fields.getOrDefault(id, id);
  }

  /** {@code B6 of F1}. */
  String bay(String field, String bay) {
    return bay + " of " + field(field);
  }

  /** A text with marks in place of the ids of pieces, fields and decks in it. */
  String inText(String text) {
    String marked =
        ID.matcher(text)
            .replaceAll(m -> pieces.getOrDefault(m.group(), field(m.group(1)) + m.group(2)));
    return DECK_ID.matcher(marked).replaceAll(m -> deck(m.group()));
  }

  /** {@code Deck 1} of {@code deck-1}. */
  static String deck(String id) {
    return "Deck " + numberOf(id);
  }

  /** The number of a field in its deck, or of a deck. */
  private static String numberOf(String id) {
    String own = id.contains(FIELD) ? id.substring(id.indexOf(FIELD)) : id;
    return own.replaceAll("[^0-9]+", " ").strip();
  }

  /** {@code beam 1} of {@code beam-1}, {@code joist ends} of {@code joist-end}. */
  static String lowEnd(String line) {
    if (line.equals("joist-end")) {
      return "joist ends";
    }
    return line.startsWith("beam-") ? line.replace('-', ' ') : line;
  }

  /** {@code Pan sheet} of {@code pan-sheet}. */
  static String item(String id) {
    return capital(id.replace('-', ' '));
  }

  /** With a capital at its start. */
  static String capital(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
