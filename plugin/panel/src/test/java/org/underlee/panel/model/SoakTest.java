package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.report.DesignJson;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;

/** A long row of edits, drags and undos ends where the same decisions lead from the start. */
class SoakTest {
  private static final int EDITS = Integer.getInteger("underlee.soak", 300);
  private static final long MB = 1 << 20;
  private static final Path SAMPLE =
      Path.of(
          System.getProperty("underlee.root", "../.."),
          "samples/harbour-balcony/harbour-balcony.ifc");

  private static void edit(Session session, Random random) {
    List<String> kits = List.of("formed-aluminium", "galvanised-steel", "rigid-vinyl");
    switch (random.nextInt(10)) {
      case 0 -> session.decide("kit", d -> d.withKit(kits.get(random.nextInt(3))));
      case 1 -> session.decide("rain", d -> d.withRain(2 + random.nextInt(8) + "in/h"));
      case 2, 3 ->
          session.drag("fall", d -> d.withRunPerFall(OptionalDouble.of(30 + random.nextInt(120))));
      case 4 ->
          session.decide(
              "fall", d -> d.withRunPerFall(OptionalDouble.of(30 + random.nextInt(120))));
      case 5 -> session.decide("accept", d -> d.accepting("x", random.nextBoolean() ? "seen" : ""));
      case 6 -> session.redo();
      case 8 -> session.decide("boards", d -> d.withBoardsOff(random.nextBoolean()));
      case 9 ->
          session.decide(
              "open",
              d -> d.turning(new Item.OfBay("deck-1/field-1", "B" + (1 + random.nextInt(3)))));
      default -> session.undo();
    }
  }

  @Test
  void theResultIsThatOfAFreshComputation() throws InterruptedException {
    Random random = new Random(20);
    Screen screen = new Screen();
    try (Session session = new Session(screen)) {
      session.open(SAMPLE, Decisions.FIRST);
      screen.runUntilWhole(session);
      long heapEarly = 0;
      for (int i = 1; i <= EDITS; i++) {
        edit(session, random);
        if (i % 7 == 0) {
          screen.runWaiting();
        }
        if (i % 60 == 0) {
          screen.runUntilWhole(session);
          assertSameAsFresh(session);
        }
        if (i == EDITS / 3) {
          screen.runUntilWhole(session);
          heapEarly = heapInUse();
        }
      }
      screen.runUntilWhole(session);
      assertSameAsFresh(session);
      long heapLate = heapInUse();
      System.out.printf(
          "heap after %d edits: %d MB, after %d: %d MB%n",
          EDITS / 3, heapEarly / MB, EDITS, heapLate / MB);
      assertThat(heapLate).as("heap, bytes").isLessThan(heapEarly * 5 / 4 + 16 * MB);
    }
  }

  private static long heapInUse() {
    System.gc();
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
  }

  private static void assertSameAsFresh(Session session) {
    Decisions d = session.decisions().get();
    Result result = session.result().get().orElseThrow();
    assertThat(session.problem().get()).isEmpty();
    assertThat(session.stale().get()).isFalse();
    assertThat(result.isWhole()).isTrue();
    Design fresh = DeckRun.design(DeckRun.survey(SAMPLE), d.scope(), d.chosenKit(), d.storm());
    assertThat(result.design().map(DesignJson::write))
        .isEqualTo(Optional.of(DesignJson.write(fresh)));
    assertThat(result.design().orElseThrow().written().bytes()).isEqualTo(fresh.written().bytes());
  }
}
