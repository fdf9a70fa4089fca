package org.underlee.panel.model;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.units.Lengths.UnitSystem;

/**
 * A deck as a tree: its fields, their bays, the parts of each.
 *
 * @param note what is to be known of it beside its state
 * @param found what was found about it and what is inside
 */
public record Outline(
    Item item, String name, String note, State state, List<Outline> inside, FindingCount found) {
  /** How it stands with a thing; the word is shown beside its colour. */
  public enum State {
    SERVED("drained"),
    PARTLY("partly"),
    /** Its parts are in their places, and where its rain goes is not proven yet. */
    LAID_OUT("laid out"),
    OPEN("left open"),
    OUT("not in scope"),
    PLAIN("");

    private final String words;

    State(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Outline {
    inside = List.copyOf(inside);
  }

  Outline(Item item, String name, String note, State state, List<Outline> inside) {
    this(item, name, note, state, inside, FindingCount.NONE);
  }

  Outline counted(Map<Item, FindingCount> all) {
    return new Outline(
        item,
        name,
        note,
        state,
        inside.stream().map(i -> i.counted(all)).toList(),
        all.getOrDefault(item, FindingCount.NONE));
  }

  /** All of a row in one sentence, for a screen reader. */
  public String spoken() {
    return Stream.of(name, note, state.words(), found.words())
        .filter(w -> !w.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** One tree for each deck of the model. */
  public static List<Outline> of(Result result, UnitSystem units) {
    OutlineMaker maker = new OutlineMaker(result, Names.of(result), units, Caught.of(result));
    return result.survey().framing().decks().stream().map(maker::deck).toList();
  }
}
