package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.check.GutterInRain;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.framing.Field;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;

/**
 * Every part against slow obvious ways: each bay laid out by itself, one after the other; and a
 * gutter whose every use is worked out anew, with nothing remembered and no shorter question asked.
 * More decks than the usual run's: {@code -Dunderlee.decks=40}.
 */
class LayoutTheSlowWayTest {
  private static final int DECKS = 5;

  /** So hard that some gutters need more outlets than one. */
  private static final double HARD = 12;

  private static final Storm STORM = RainData.builtIn().service(RainData.ANYWHERE);

  private static final List<String> KITS =
      List.of("formed-aluminium", "membrane-drape", "ribbed-sheet");

  static Stream<Arguments> decks() {
    return LongStream.rangeClosed(1, Integer.getInteger("underlee.decks", DECKS))
        .boxed()
        .flatMap(seed -> KITS.stream().map(kit -> Arguments.of(seed, kit)));
  }

  private static Survey survey(long seed) {
    return DeckRun.survey(IfcEmitter.emit(SampleDecks.random(seed), Mix.PLAIN), "deck.ifc");
  }

  private static Layout layOut(Survey survey, Wishes wishes, Kit kit, GutterCapacity gutters) {
    Scope scope = Scope.OUTSIDE.with(wishes);
    return Layouter.layOut(survey.framing(), survey.bays(), scope, kit, gutters);
  }

  @ParameterizedTest(name = "deck {0}, {1}")
  @MethodSource("decks")
  void aBayByItselfGetsThePartsThatItGetsAmongTheOthers(long seed, String name) {
    Survey survey = survey(seed);
    Kit kit = KitReader.named(name);
    Wishes free = Wishes.NONE.withBoardsOff();
    FieldPlan plan = FieldPlanner.plan(survey.bays().get(0), OnDeck.ALONE, kit, free);
    Wishes fixed = free.withSeat(plan.seatHigh()).endingAt(plan.lowEnd().id());
    Layout together = layOut(survey, fixed, kit, GutterCapacity.ENOUGH);
    assertThat(shapes(together))
        .isEqualTo(shapes(layOut(survey, free, kit, GutterCapacity.ENOUGH)));
    Set<String> all = plan.bays().bays().stream().map(b -> b.id()).collect(Collectors.toSet());
    for (String bay : together.fields().stream().flatMap(f -> f.bays().stream()).toList()) {
      Set<String> others = new HashSet<>(all);
      others.remove(bay);
      Layout alone = layOut(survey, fixed.leavingOpen(others), kit, GutterCapacity.ENOUGH);
      assertThat(in(bay, alone)).isEqualTo(in(bay, together));
    }
  }

  private static List<Part> in(String bay, Layout layout) {
    return layout.parts().stream().filter(p -> p.bay().filter(bay::equals).isPresent()).toList();
  }

  private static List<List<Object>> shapes(Layout layout) {
    return layout.parts().stream()
        .map(p -> List.<Object>of(p.id(), p.length(), p.width(), p.bodies(), p.cuts(), p.count()))
        .toList();
  }

  @ParameterizedTest(name = "deck {0}, {1}")
  @MethodSource("decks")
  void aGutterWorkedOutAnewForEveryQuestionGivesTheSameLayout(long seed, String name) {
    Survey survey = survey(seed);
    Kit kit = KitReader.named(name);
    Wishes wishes = Wishes.NONE.withBoardsOff();
    Storm storm = Storm.given(HARD * STORM.intensity());
    Layout fast = layOut(survey, wishes, kit, gutters(survey, storm));
    assertThat(layOut(survey, wishes, kit, new Anew(survey, storm))).isEqualTo(fast);
  }

  private static GutterInRain gutters(Survey survey, Storm storm) {
    return new GutterInRain(storm, ProofData.builtIn(), survey.elements(), Wishes.NONE);
  }

  /** Answers every question by the whole solution, and remembers none. */
  private record Anew(Survey survey, Storm storm) implements GutterCapacity {
    @Override
    public double fromAbove(Field field, Interval across) {
      return gutters(survey, storm).fromAbove(field, across);
    }

    @Override
    public Use of(Kit kit, Interval stretch, double outlet, List<Share> shares) {
      return gutters(survey, storm).of(kit, stretch, outlet, shares);
    }
  }
}
