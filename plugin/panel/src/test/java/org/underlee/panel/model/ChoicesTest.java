package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import javafx.beans.property.SimpleObjectProperty;
import org.junit.jupiter.api.Test;
import org.underlee.units.Lengths.UnitSystem;

/** Arrangements side by side, and how long they hold. */
class ChoicesTest {
  private static final Path SAMPLE =
      Path.of(
          System.getProperty("underlee.root", "../.."),
          "samples/harbour-balcony/harbour-balcony.ifc");
  private static final int STANDING = 1;

  private final Screen screen = new Screen();

  private Choices compared(Session session) throws InterruptedException {
    session.open(SAMPLE, Decisions.FIRST);
    screen.runUntilWhole(session);
    Choices choices = new Choices(session, new SimpleObjectProperty<>(UnitSystem.METRIC), screen);
    assertThat(choices.table().lines()).isEmpty();
    choices.compare();
    while (choices.busy().get()) {
      screen.runNext();
    }
    assertThat(choices.problem().get()).isEmpty();
    return choices;
  }

  private static List<String> standing(Choices choices) {
    return choices.table().lines().stream().map(l -> l.cells().get(STANDING)).toList();
  }

  @Test
  void rowsHaveTheNumbersThatRemarksSpeakOf() throws InterruptedException {
    try (Session session = new Session(screen);
        Choices choices = compared(session)) {
      List<Table.Line> rows = choices.table().lines();
      assertThat(rows).hasSizeGreaterThan(2);
      assertThat(rows.stream().map(l -> l.cells().get(0)))
          .containsExactlyElementsOf(
              IntStream.rangeClosed(1, rows.size()).mapToObj(Integer::toString).toList());
      assertThat(standing(choices)).anyMatch(s -> s.endsWith("1 is better"));
    }
  }

  @Test
  void theOneInUseIsMarkedAndAnotherOnceItIsChosen() throws InterruptedException {
    try (Session session = new Session(screen);
        Choices choices = compared(session)) {
      assertThat(standing(choices)).filteredOn(s -> s.startsWith("● in use")).hasSize(1);
      int other =
          IntStream.range(0, standing(choices).size())
              .filter(i -> !standing(choices).get(i).startsWith("●"))
              .findFirst()
              .orElseThrow();
      assertThat(choices.canChoose()).isFalse();
      choices.selected().set(other);
      assertThat(choices.canChoose()).isTrue();
      choices.chooseSelected();
      screen.runUntilWhole(session);
      List<String> now = standing(choices);
      assertThat(now.get(other)).startsWith("● in use");
      assertThat(now).filteredOn(s -> s.startsWith("●")).hasSize(1);
      assertThat(choices.stale().get()).as("choosing leaves it as it is").isFalse();
    }
  }

  @Test
  void anotherSeatRainOrDeckMakesItOutOfDateUntilItIsTakenBackOrComparedAgain()
      throws InterruptedException {
    try (Session session = new Session(screen);
        Choices choices = compared(session)) {
      String fresh = choices.words();
      session.decide("rain", d -> d.withRain("3in/h"));
      assertThat(choices.stale().get()).isTrue();
      assertThat(choices.words()).startsWith("Out of date");
      session.undo();
      assertThat(choices.stale().get()).isFalse();
      assertThat(choices.words()).isEqualTo(fresh);
      session.decide("seat", d -> d.withSeat(OptionalDouble.of(0.05)));
      assertThat(choices.stale().get()).isTrue();
      session.undo();
      session.decide("deck", d -> d.withDeck(Optional.of("deck-1")));
      assertThat(choices.stale().get()).isTrue();
      session.decide("accept", d -> d.withDeck(Optional.empty()).accepting("x", "seen"));
      assertThat(choices.stale().get()).as("an answer changes no arrangement").isFalse();
    }
  }
}
