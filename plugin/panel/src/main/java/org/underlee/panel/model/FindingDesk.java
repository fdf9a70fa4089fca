package org.underlee.panel.model;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.value.ObservableValue;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.units.Lengths.UnitSystem;

/** Findings as a person goes through them: one in hand, put right or answered for. */
public final class FindingDesk {
  private final Session session;
  private final Selecting selecting;
  private final ReadOnlyObjectProperty<Lists> lists;
  private final ObservableValue<UnitSystem> units;

  FindingDesk(
      Session session,
      Selecting selecting,
      ReadOnlyObjectProperty<Lists> lists,
      ObservableValue<UnitSystem> units) {
    this.session = session;
    this.selecting = selecting;
    this.lists = lists;
    this.units = units;
  }

  /** What is to be read in the place of rows while there are none. */
  public String instead(Lists of) {
    if (!of.noticed().isEmpty()) {
      return "No finding is as you filter for.";
    }
    boolean whole = session.result().get().filter(Result::isWhole).isPresent();
    return whole ? "Nothing was found to be wrong." : "Findings come with the design.";
  }

  /** All findings of lists as they stand now. */
  public List<FindingList.Row> rows(Lists of) {
    return FindingList.rows(of.noticed(), session.decisions().get(), units.getValue(), of.of());
  }

  /** The one that a person has gone to, told of a newer result where it is still there. */
  public Optional<FindingList.Row> inHand() {
    return selecting
        .finding()
        .get()
        .flatMap(f -> rows(lists.get()).stream().filter(r -> isSame(r.finding(), f)).findFirst());
  }

  private static boolean isSame(Finding now, Finding then) {
    return now.equals(then) || keys(now).equals(keys(then));
  }

  private static List<String> keys(Finding finding) {
    return Told.of(finding).stream().map(Told::key).toList();
  }

  /** Those about an item or about something inside it. */
  public List<FindingList.Row> about(Item item) {
    About about = new About(Set.of(item), lists.get().above());
    return rows(lists.get()).stream().filter(r -> about.touches(r.places())).toList();
  }

  public void goTo(FindingList.Row row) {
    selecting.goTo(row.finding());
  }

  /** Does what its fix proposes, as one step to undo. */
  public void fix(FindingList.Row row) {
    row.finding()
        .fix()
        .flatMap(Fix::action)
        .flatMap(a -> FindingList.fixed(session.decisions().get(), a))
        .ifPresent(next -> session.decide("Fix " + row.finding().rule().id(), before -> next));
  }

  /** Accepts it with its numbers of now; nothing happens when the reason is blank. */
  public void accept(FindingList.Row row, String reason) {
    if (reason.isBlank()) {
      return;
    }
    Map<String, Acceptance> now = new HashMap<>();
    Told.of(row.finding())
        .forEach(t -> now.put(t.key(), new Acceptance(reason.strip(), t.text(), t.past())));
    session.decide("Accept a finding", d -> d.reopening(row.standing().keys()).accepting(now));
  }

  /** Accepts it for the same reason with the numbers that it has now. */
  public void acceptAgain(FindingList.Row row) {
    row.standing().kept().ifPresent(a -> accept(row, a.reason()));
  }

  public void reopen(FindingList.Row row) {
    session.decide("Reopen a finding", d -> d.reopening(row.standing().keys()));
  }
}
