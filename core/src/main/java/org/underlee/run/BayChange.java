package org.underlee.run;

import java.util.List;
import java.util.Optional;
import org.underlee.units.Words;

/**
 * What became of one bay in a new export.
 *
 * @param field the name that its field has from here on: {@code deck-1/field-1}
 * @param bay likewise: {@code B3}
 * @param matchedBy how it was known again; empty for a bay that is new or gone
 * @param why what is different, or why it is new or gone
 * @param parts what became of its parts
 */
public record BayChange(
    String field,
    String bay,
    Kind kind,
    Optional<MatchedBy> matchedBy,
    List<Words> why,
    Parts parts) {
  public BayChange {
    why = List.copyOf(why);
  }

  /** The words of the change table. */
  public enum Kind {
    /** As it was. */
    KEPT,
    /** There, but in another place or of another size. */
    MOVED,
    NEW,
    GONE;

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** How a bay was known again. */
  public enum MatchedBy {
    GLOBAL_ID("GlobalId"),
    PLACE("place"),
    SHAPE("shape of its field");

    private final String word;

    MatchedBy(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** Parts by name: as they were, to be made anew, added, to be taken out. */
  public record Parts(int same, int changed, int added, int gone) {}
}
