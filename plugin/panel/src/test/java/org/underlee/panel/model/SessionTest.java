package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.underlee.layout.FieldLayout;

/** What a person sees of a model, and when. */
class SessionTest {
  private static final Path SAMPLE =
      Path.of(
          System.getProperty("underlee.root", "../.."),
          "samples/hillside-terrace/hillside-terrace.ifc");

  @Test
  void theFramingIsSeenBeforeTheFirstDeckIsLaidOutAndADragShowsTheDeckAtHandFirst()
      throws InterruptedException {
    Screen screen = new Screen();
    try (Session session = new Session(screen)) {
      List<Progress> seen = new ArrayList<>();
      session.result().addListener((o, before, now) -> now.ifPresent(r -> seen.add(r.progress())));
      session.open(SAMPLE, Decisions.FIRST);
      while (session.result().get().isEmpty()) {
        screen.runNext();
      }
      Result framed = session.result().get().orElseThrow();
      assertThat(framed.survey().framing().decks()).hasSizeGreaterThan(1);
      assertThat(framed.layout().parts()).isEmpty();
      assertThat(session.busyWith().get()).isNotEmpty();
      assertThat(session.stale().get()).isFalse();
      screen.runUntilWhole(session);
      assertThat(seen)
          .startsWith(Progress.FRAMED, Progress.PARTLY)
          .endsWith(Progress.LAID_OUT, Progress.WHOLE);

      dragShowsTheDeckAtHandFirst(session, screen);
    }
  }

  private static void dragShowsTheDeckAtHandFirst(Session session, Screen screen)
      throws InterruptedException {
    List<FieldLayout> before = session.result().get().orElseThrow().layout().fields();
    FieldLayout last = before.get(before.size() - 1);
    session.workAt(() -> Optional.of(last.field()));
    session.drag("fall", d -> d.withRunPerFall(OptionalDouble.of(70)));
    while (session.result().get().orElseThrow().progress() == Progress.WHOLE) {
      screen.runNext();
    }
    Result shown = session.result().get().orElseThrow();
    assertThat(shown.progress()).isEqualTo(Progress.PARTLY);
    assertThat(session.stale().get()).isTrue();
    for (FieldLayout field : shown.layout().fields()) {
      boolean atHand = field.deck().equals(last.deck());
      assertThat(Math.round(1 / field.fall()) == 70).isEqualTo(atHand);
    }
    screen.runUntilWhole(session);
    assertThat(session.result().get().orElseThrow().layout().fields())
        .allMatch(f -> Math.round(1 / f.fall()) == 70);
    assertThat(session.stale().get()).isFalse();
  }

  @Test
  void aDragIsLaidOutNoFurtherAheadThanItIsSeenAndItsEndIsNeverLeftOut()
      throws InterruptedException {
    Screen screen = new Screen();
    long[] pictured = {Long.MAX_VALUE};
    try (Session session = new Session(screen)) {
      session.keepPaceWith(() -> pictured[0]);
      session.open(SAMPLE, Decisions.FIRST);
      screen.runUntilWhole(session);
      Result whole = session.result().get().orElseThrow();

      pictured[0] = whole.edition() - 1;
      session.drag("fall", d -> d.withRunPerFall(OptionalDouble.of(70)));
      session.drag("fall", d -> d.withRunPerFall(OptionalDouble.of(71)));
      assertThat(session.busyWith().get()).as("not begun").isEmpty();
      pictured[0] = whole.edition();
      session.pictured();
      assertThat(session.busyWith().get()).as("begun").isNotEmpty();

      pictured[0] = 0;
      session.drag("fall", d -> d.withRunPerFall(OptionalDouble.of(72)));
      session.decide("fall", d -> d.withRunPerFall(OptionalDouble.of(72)));
      screen.runUntilWhole(session);
      assertThat(session.result().get().orElseThrow().layout().fields())
          .allMatch(f -> Math.round(1 / f.fall()) == 72);
    }
  }

  @Test
  void whatIsRefusedIsNotDecidedAndWhyStaysToBeRead() throws InterruptedException {
    Screen screen = new Screen();
    try (Session session = new Session(screen)) {
      session.open(SAMPLE, Decisions.FIRST);
      screen.runUntilWhole(session);
      session.decide("fall", d -> d.withRunPerFall(OptionalDouble.of(70)));
      screen.runUntilWhole(session);
      Decisions before = session.decisions().get();
      String field = session.result().get().orElseThrow().layout().fields().get(0).field();

      session.decide("an outlet beyond the gutter", d -> d.withOutlets(field, List.of(99.0)));
      screen.runUntilWhole(session);
      assertRefused(session, before);

      session.drag("an outlet dragged too far", d -> d.withOutlets(field, List.of(98.0)));
      while (session.problem().get().filter(p -> p.message().contains("98")).isEmpty()) {
        screen.runNext();
      }
      assertThat(session.decisions().get()).as("a hand may go on").isNotEqualTo(before);
      screen.runUntilWhole(session);
      assertThat(session.decisions().get()).isEqualTo(before);
    }
  }

  private static void assertRefused(Session session, Decisions before) {
    assertThat(session.decisions().get()).isEqualTo(before);
    assertThat(session.problem().get().orElseThrow().message()).contains("99.000 m");
    assertThat(session.toUndo().get()).contains("fall");
    assertThat(session.toRedo().get()).isEmpty();
    assertThat(session.stale().get()).isFalse();
    assertThat(session.result().get().orElseThrow().decisions()).isEqualTo(before);
  }
}
