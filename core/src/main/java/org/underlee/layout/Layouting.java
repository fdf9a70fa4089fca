package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.StopSign;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.kit.Kit;

/**
 * The decks in scope, to be laid out field by field: a field needs nothing of another's layout, so
 * that they may be laid out in any order and by several threads at once. No further than is wanted
 * in the thread that asked for them.
 */
public final class Layouting {
  /**
   * What comes of one field.
   *
   * @param layout empty where nothing of the field can be served; a finding says why
   */
  public record Outcome(Optional<FieldLayout> layout, List<Finding> findings) {
    public Outcome {
      findings = List.copyOf(findings);
    }
  }

  /** A field to lay out, after what is said before it is. */
  private record Task(
      List<Finding> before, String deck, FieldBays bays, OnDeck deckFields, int number) {}

  private final Kit kit;
  private final GutterCapacity capacity;
  private final Wishes wishes;
  private final StopSign stop = StopSign.here();
  private final List<Task> tasks = new ArrayList<>();
  private final List<Finding> after = new ArrayList<>();

  Layouting(Framing framing, List<FieldBays> bays, Scope scope, Kit kit, GutterCapacity capacity) {
    this.kit = kit;
    this.capacity = capacity;
    this.wishes = scope.wishes();
    after.addAll(scope.leftOut(framing.decks()));
    Boards boards = new Boards(framing, kit, wishes);
    int number = 0;
    for (Deck deck : scope.of(framing.decks())) {
      boards.finding(deck).ifPresent(after::add);
      OnDeck onDeck =
          new OnDeck(deck.fields().stream().map(f -> Layouter.baysOf(f, bays)).toList());
      for (Field field : deck.fields()) {
        number++;
        FieldBays own = Layouter.baysOf(field, bays);
        if (wishes.dryZone().isPresent() && !Layouter.isOverZone(own, wishes)) {
          after.add(Layouter.outsideZone(field));
        } else if (!boards.inTheWay(deck)) {
          tasks.add(new Task(List.copyOf(after), deck.id(), own, onDeck, number));
          after.clear();
        }
      }
    }
  }

  /** Ids of the fields to lay out, in the order of the decks. */
  public List<String> fields() {
    return tasks.stream().map(t -> t.bays.field().id()).toList();
  }

  /** The deck of a field, by the field's place in {@link #fields}. */
  public String deck(int field) {
    return tasks.get(field).deck;
  }

  /** Lays out one field, by its place in {@link #fields}. */
  public Outcome layOut(int field) {
    Task task = tasks.get(field);
    List<Finding> findings = new ArrayList<>();
    Optional<FieldLayout> layout =
        FieldLayouter.layOut(
            task.deck,
            task.bays,
            task.deckFields,
            kit,
            capacity,
            wishes,
            task.number,
            stop,
            findings);
    return new Outcome(layout, findings);
  }

  /**
   * Everything together, in the order of the decks.
   *
   * @param outcomes by the field's place in {@link #fields}
   */
  public Layout together(IntFunction<Outcome> outcomes) {
    List<FieldLayout> fields = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i < tasks.size(); i++) {
      Outcome outcome = outcomes.apply(i);
      outcome.layout.ifPresent(fields::add);
      findings.addAll(tasks.get(i).before);
      findings.addAll(outcome.findings);
    }
    findings.addAll(after);
    return new Layout(kit, fields, findings);
  }
}
