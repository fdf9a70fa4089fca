package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.Arrangement;
import org.underlee.run.Comparison;
import org.underlee.run.Survey;
import org.underlee.takeoff.Buying;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/**
 * The ways in which the decks in scope can be kept dry, side by side: made when they are asked for,
 * since each is laid out and proved.
 */
public final class Choices implements AutoCloseable {
  private static final List<String> HEAD =
      List.of(
          "Kit",
          "Low end",
          "Fall",
          "Dry",
          "Headroom",
          "Seat",
          "Cut",
          "To buy",
          "Outlets",
          "Remarks");
  private static final List<Integer> NUMBERS = List.of(3, 4, 5, 6, 7, 8);

  private final Session session;
  private final ObservableValue<UnitSystem> units;
  private final Newest comparing;
  private final ReadOnlyObjectWrapper<Optional<Comparison>> comparison =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();

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
            });
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
          comparison.set(Optional.of(found));
        },
        e -> {
          busy.set(false);
          problem.set(Optional.of(Problem.of(e)));
        });
  }

  /** One arrangement in a row, the best first. */
  public Table table() {
    return new Table(
        "Arrangements",
        HEAD,
        NUMBERS,
        comparison.get().stream()
            .flatMap(c -> c.arrangements().stream())
            .map(a -> new Table.Line(cells(a), Optional.empty()))
            .toList());
  }

  private List<String> cells(Arrangement a) {
    UnitSystem system = units.getValue();
    return List.of(
        a.kit().id(),
        a.lowEnd(),
        "1:" + Math.round(1 / a.fall()),
        new Quantity(a.dryFraction(), Quantity.Kind.SHARE).in(system),
        a.headroom().isPresent() ? Lengths.format(a.headroom().getAsDouble(), system) : "–",
        a.fields().stream()
            .map(f -> Lengths.format(f.seatHigh(), system))
            .distinct()
            .collect(Collectors.joining(" / ")),
        Integer.toString(a.partsCut()),
        Integer.toString(a.bought()),
        a.drains().map(d -> Integer.toString(d.own().outlets())).orElse("–"),
        (a.boardsOff() ? "boards off; " : "")
            + (a.bothWays().isEmpty() ? "" : "falls both ways; ")
            + a.dominatedBy().map(n -> "row " + n + " is better").orElse(""));
  }

  /** Takes the arrangement of a row, as one step to undo. */
  public void choose(int row) {
    comparison
        .get()
        .filter(c -> row >= 0 && row < c.arrangements().size())
        .map(c -> c.arrangements().get(row))
        .ifPresent(a -> session.decide("Choose an arrangement", d -> decided(d, a)));
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
