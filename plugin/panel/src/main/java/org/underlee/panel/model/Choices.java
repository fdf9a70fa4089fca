package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.value.ObservableValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.Arrangement;
import org.underlee.run.Comparison;
import org.underlee.run.Survey;
import org.underlee.takeoff.Buying;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The ways in which the decks in scope can be kept dry, side by side: made when they are asked for,
 * since each is laid out and proved.
 */
public final class Choices implements AutoCloseable {
  private static final int NONE = -1;

  private final Session session;
  private final ObservableValue<UnitSystem> units;
  private final Newest comparing;
  private final ReadOnlyObjectWrapper<Optional<Comparison>> comparison =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  private final IntegerProperty selected = new SimpleIntegerProperty(NONE);
  private Decisions comparedFor = Decisions.FIRST;

  Choices(Session session, ObservableValue<UnitSystem> units, Executor screen) {
    this.session = session;
    this.units = units;
    comparing = new Newest("comparing", screen);
    session
        .model()
        .addListener(
            (o, before, now) -> {
              cancel();
              comparison.set(Optional.empty());
              selected.set(NONE);
            });
    session.decisions().addListener((o, before, now) -> stale.set(isOutdated(now)));
  }

  public ReadOnlyObjectProperty<Optional<Comparison>> comparison() {
    return comparison.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty busy() {
    return busy.getReadOnlyProperty();
  }

  /** Whether what is compared was compared for other decisions than those of now. */
  public ReadOnlyBooleanProperty stale() {
    return stale.getReadOnlyProperty();
  }

  /** The row that a person is at, from 0; below 0 for none. */
  public IntegerProperty selected() {
    return selected;
  }

  private boolean isOutdated(Decisions now) {
    return comparison.get().isPresent()
        && !(given(now).equals(given(comparedFor)) && isKitCompared(now.kit()));
  }

  private boolean isKitCompared(String kit) {
    return kit.equals(comparedFor.kit())
        || KitReader.allBuiltIn().stream().anyMatch(k -> k.id().equals(kit));
  }

  /** What holds for every arrangement alike: without what they differ in. */
  private static Decisions given(Decisions d) {
    Decisions alike =
        d.withKit(Decisions.FIRST.kit())
            .withLowEnd(Optional.empty())
            .withBoardsOff(false)
            .fallingBothWays(Set.of());
    return alike.answeringNothing();
  }

  /** Stops comparing; what was compared before stays. */
  void cancel() {
    comparing.cancel();
    busy.set(false);
  }

  /** Compares every kit and low end for the deck, the seat and the bays that were decided on. */
  public void compare() {
    session.result().get().ifPresent(r -> compare(r.survey(), session.decisions().get()));
  }

  private void compare(Survey survey, Decisions decisions) {
    busy.set(true);
    problem.set(Optional.empty());
    comparing.run(
        () -> {
          List<Kit> kits = new ArrayList<>(KitReader.allBuiltIn());
          Kit own = KitReader.named(decisions.kit());
          if (kits.stream().noneMatch(k -> k.id().equals(own.id()))) {
            kits.add(own);
          }
          return Comparison.of(
              survey,
              decisions.withLowEnd(Optional.empty()).scope(),
              kits,
              List.of(),
              List.of(),
              Buying.PLAIN,
              decisions.storm());
        },
        found -> {
          busy.set(false);
          comparedFor = decisions;
          selected.set(NONE);
          comparison.set(Optional.of(found));
          stale.set(isOutdated(session.decisions().get()));
        },
        e -> {
          busy.set(false);
          problem.set(Optional.of(Problem.of(e)));
        });
  }

  /** Whether there is a model to compare for. */
  public boolean canCompare() {
    return session.result().get().isPresent();
  }

  /** One arrangement in a row, the best first. */
  public Table table() {
    return rows().table();
  }

  private ArrangementRows rows() {
    return new ArrangementRows(arrangements(), session.result().get(), units.getValue());
  }

  private List<Arrangement> arrangements() {
    return comparison.get().map(Comparison::arrangements).orElse(List.of());
  }

  /** How it stands with the comparison, or what there is besides to say of the selected row. */
  public String words() {
    if (busy.get()) {
      return "Laying out and proving every kit and low end …";
    }
    if (comparison.get().isEmpty()) {
      return "Every kit and low end is laid out and proved; the best is in the first row.";
    }
    return stale.get()
        ? "Out of date: the deck, the seat, the rain or what else was decided has changed since."
            + " Compare again."
        : canChoose() ? rows().besides(selected.get()) : "The best is in row 1.";
  }

  /** Whether a row is selected that can be taken. */
  public boolean canChoose() {
    return selected.get() >= 0 && selected.get() < arrangements().size();
  }

  /** Takes the arrangement of the selected row, as one step to undo. */
  public void chooseSelected() {
    if (canChoose()) {
      Arrangement chosen = arrangements().get(selected.get());
      session.decide("Choose an arrangement", d -> decided(d, chosen));
    }
  }

  private static Decisions decided(Decisions before, Arrangement a) {
    return before
        .withKit(
            a.kit().id().equals(KitReader.named(before.kit()).id()) ? before.kit() : a.kit().id())
        .withRunPerFall(OptionalDouble.empty())
        .withLowEnd(Optional.of(a.lowEnd()))
        .withBoardsOff(a.boardsOff())
        .fallingBothWays(Set.copyOf(a.bothWays()));
  }

  @Override
  public void close() {
    comparing.close();
  }
}
