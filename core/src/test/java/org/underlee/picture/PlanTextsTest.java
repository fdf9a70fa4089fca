package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.underlee.drainage.flow.RainData;
import org.underlee.geom.Vec2;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;

/** Words that stand on a pipe's circle can be read as little as the circle. */
class PlanTextsTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root", "."), "samples/pine-deck/pine-deck.ifc");

  /** At 1:50, as the sheet of a deck of some metres is. */
  private static final double METRES_PER_MM = 0.05;

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void noTextOfThePlanStandsOnTheCircleOfAPipe(UnitSystem units) {
    Survey survey = DeckRun.survey(SAMPLE);
    Layout layout =
        DeckRun.layOut(
            survey,
            Scope.OUTSIDE,
            KitReader.builtIn(),
            RainData.builtIn().service(RainData.ANYWHERE));
    PlanDrawing plan = DeckPlan.of(survey.bays(), Optional.of(layout), units, "x").orElseThrow();
    List<PlanItem> circles =
        plan.items().stream()
            .filter(i -> i instanceof PlanItem.Circle && i.style().equals(PlanStyle.CROSSING))
            .toList();
    List<PlanItem> texts = plan.items().stream().filter(PlanItem.Label.class::isInstance).toList();
    assertThat(circles).isNotEmpty();
    assertThat(texts).hasSizeGreaterThan(20);
    for (PlanItem circle : circles) {
      assertThat(texts).noneMatch(t -> meet(t, circle));
    }
    Vec2 onIt = ((PlanItem.Circle) circles.get(0)).centre();
    PlanItem there =
        new PlanItem.Label(onIt, "1:96", 1.8, PlanItem.Anchor.MIDDLE, 90, PlanStyle.FALL);
    assertThat(meet(there, circles.get(0))).as("one that does is noticed").isTrue();
  }

  private static boolean meet(PlanItem a, PlanItem b) {
    List<Vec2> p = reach(a);
    List<Vec2> q = reach(b);
    return least(p, true) < most(q, true)
        && least(q, true) < most(p, true)
        && least(p, false) < most(q, false)
        && least(q, false) < most(p, false);
  }

  private static List<Vec2> reach(PlanItem item) {
    List<Vec2> all = new ArrayList<>();
    PlanReach.of(item, METRES_PER_MM, all);
    return all;
  }

  private static double least(List<Vec2> all, boolean x) {
    return all.stream().mapToDouble(p -> x ? p.x() : p.y()).min().orElseThrow();
  }

  private static double most(List<Vec2> all, boolean x) {
    return all.stream().mapToDouble(p -> x ? p.x() : p.y()).max().orElseThrow();
  }
}
