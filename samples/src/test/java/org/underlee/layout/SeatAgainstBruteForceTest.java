package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEAST_LEG;
import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_WIDEST;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.DeckRun;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;

/**
 * The planner against a slow obvious one: every seat on a fine grid, each limit looked at anew at
 * the places where it binds. The planner is never worse, and never claims what the grid denies.
 */
class SeatAgainstBruteForceTest {
  private static final double STEP = 0.0005;
  private static final Kit KIT = KitReader.builtIn();

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 120);
  }

  private record Best(double area, int cuts, double seat) {
    boolean isBetterThan(Best o) {
      if (Math.abs(area - o.area) > 1e-6) {
        return area > o.area;
      }
      return cuts != o.cuts ? cuts < o.cuts : seat > o.seat;
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noSeatOnAFineGridIsBetterThanThePlannersAndItsOwnHoldsEveryLimit(long seed) {
    FieldBays bays =
        DeckRun.survey(IfcEmitter.emit(SampleDecks.random(seed), Mix.PLAIN), "deck.ifc")
            .bays()
            .get(0);
    FieldPlan plan = FieldPlanner.plan(bays, KIT);
    Best planned = at(bays, plan.lowEnd(), plan.seatHigh());
    Best best = new Best(0, 0, Double.NEGATIVE_INFINITY);
    for (LowEnd end : LowEnd.candidates(bays)) {
      for (double seat = -0.2; seat < 0.3; seat += STEP) {
        Best here = at(bays, end, seat);
        best = here.isBetterThan(best) ? here : best;
      }
    }
    assertThat(plan.served().size())
        .isEqualTo(servedAt(bays, plan.lowEnd(), plan.seatHigh()).size());
    assertThat(best.area()).isLessThanOrEqualTo(planned.area() + 1e-6);
    if (Math.abs(best.area() - planned.area()) < 1e-6 && planned.area() > 0) {
      assertThat(planned.cuts()).isLessThanOrEqualTo(best.cuts());
      if (planned.cuts() == best.cuts()) {
        assertThat(planned.seat()).isGreaterThan(best.seat() - STEP);
      }
    }
  }

  private static Best at(FieldBays bays, LowEnd end, double seat) {
    double area = 0;
    int cuts = 0;
    for (BayRun run : servedAt(bays, end, seat)) {
      Bay bay = run.bay();
      area += run.run() * (bay.clearWidthHigh() + bay.clearWidthAt(run.lowFace())) / 2;
      for (Space over : spaces(run)) {
        boolean under = isUnder(seat, over);
        double legTop = seat(seat, over.along.from()) + KIT.get(RAIL_LEG);
        cuts += under && legTop + KIT.get(NOTCH_CLEARANCE) > over.heights.from() + 1e-5 ? 2 : 0;
      }
    }
    return new Best(area, cuts, seat);
  }

  private static double seat(double high, double v) {
    return high - v / 96;
  }

  private static List<BayRun> servedAt(FieldBays bays, LowEnd end, double seat) {
    List<BayRun> served = new ArrayList<>();
    for (Bay bay : bays.bays()) {
      end.faceIn(bay)
          .map(f -> new BayRun(bay, f, KIT))
          .filter(r -> holds(r, end, seat))
          .ifPresent(served::add);
    }
    return served;
  }

  private static boolean holds(BayRun run, LowEnd end, double seat) {
    Bay bay = run.bay();
    double from = bay.stretch().from();
    double top = bay.joistBottom(from) + bay.depth() + 1e-5;
    double pan = KIT.get(PAN_HEM) + KIT.get(CLEARANCE_ABOVE);
    double highestScrew =
        seat(seat, run.railEnd()) + KIT.get(RAIL_LEG) - KIT.get(RAIL_FASTENER_MARGIN);
    boolean framing =
        seat(seat, from) + KIT.get(RAIL_LEG) <= top
            && seat(seat, from) + pan + KIT.get(HEAD_RAIL_LEAST_LEG) <= top
            && highestScrew >= bay.joistBottom(run.railEnd()) + KIT.get(JOIST_EDGE_DISTANCE) - 1e-5;
    boolean beams = end.passed().stream().allMatch(b -> isOver(seat, space(b)));
    boolean wide = bay.clearWidthHigh() <= KIT.get(PAN_WIDEST) + 1e-5;
    boolean clear = spaces(run).stream().allMatch(s -> isUnder(seat, s) || isOver(seat, s));
    return framing && beams && wide && clear && pipesLeaveSheet(run);
  }

  private static boolean isUnder(double seat, Space s) {
    double pan = KIT.get(PAN_HEM) + KIT.get(CLEARANCE_ABOVE);
    return seat(seat, s.along.from()) + pan <= s.heights.from() + 1e-5;
  }

  private static boolean isOver(double seat, Space s) {
    double rail = KIT.item(Items.SIDE_RAIL).thickness() + KIT.get(CLEARANCE_ABOVE);
    return seat(seat, s.along.to()) - rail >= s.heights.to() - 1e-5;
  }

  private record Space(Interval along, Interval heights) {}

  private static Space space(Support beam) {
    return new Space(beam.shape().along(), beam.shape().heights());
  }

  private static List<Space> spaces(BayRun run) {
    List<Space> spaces = new ArrayList<>();
    for (Block b : run.bay().blocking()) {
      spaces.add(new Space(b.stretch(), b.heights()));
    }
    for (Crossing c : run.bay().crossings()) {
      if (c.way() != Way.THROUGH) {
        spaces.add(new Space(c.stretch(), c.heights()));
      }
    }
    spaces.removeIf(s -> s.along.from() >= run.railEnd());
    return spaces;
  }

  /** 21 mm of sheet and gap round a hole, 31 mm to a joist for the ledge: the kit's own numbers. */
  private static boolean pipesLeaveSheet(BayRun run) {
    return run.bay().crossings().stream()
        .filter(c -> c.way() == Way.THROUGH && c.stretch().from() <= run.railEnd())
        .allMatch(
            c ->
                c.acrossStretch().from() - run.bay().leftFace().at(c.stretch().middle()) >= 0.031
                    && run.bay().rightFace().at(c.stretch().middle()) - c.acrossStretch().to()
                        >= 0.031
                    && run.alongTo(c.stretch().from()) >= 0.021
                    && run.alongTo(c.stretch().to()) <= run.panLength() - 0.021);
  }
}
