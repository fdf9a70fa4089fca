package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.Bay;
import org.underlee.bay.BothWays;
import org.underlee.bay.FieldBays;
import org.underlee.bay.HighLinePlaces;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.DeckRun;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;

/**
 * The planner against a slow obvious one, for every family of kits: every seat on a fine grid, each
 * limit looked at anew at the places where it binds. The planner is never worse, and never claims
 * what the grid denies. More fields than the usual run's: {@code -Dunderlee.fields=1000}.
 */
class SeatAgainstBruteForceTest {
  private static final double STEP = 0.0005;
  private static final double LOWEST = -0.7;
  private static final double HIGHEST = 0.3;

  /** Steeper than the kit's own, so that bays are found that have no seat. */
  private static final int STEEP = 20;

  /** Stations tried for a line where nothing stands. */
  private static final int TRIES = 20;

  static LongStream seeds() {
    return LongStream.rangeClosed(1, Integer.getInteger("underlee.fields", 30));
  }

  private record Best(double area, int cuts, double seat) {
    boolean isBetterThan(Best o) {
      if (Math.abs(area - o.area) > 1e-6) {
        return area > o.area;
      }
      return cuts != o.cuts ? cuts < o.cuts : seat > o.seat;
    }

    /** With the other half at the same seat. */
    Best and(Best o) {
      return new Best(area + o.area, cuts + o.cuts, seat);
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noSeatOnAFineGridIsBetterThanThePlannersAndItsOwnHoldsEveryLimit(long seed) {
    FieldBays bays =
        DeckRun.survey(IfcEmitter.emit(SampleDecks.random(seed), Mix.PLAIN), "deck.ifc")
            .bays()
            .get(0);
    for (String name : List.of("formed-aluminium", "membrane-drape", "ribbed-sheet")) {
      Kit own = KitReader.named(name);
      Kit kit = seed % 3 == 0 ? own.with(DrainValue.RUN_PER_FALL, STEEP, "test") : own;
      compare(bays, SlowLimits.of(kit));
    }
  }

  private static void compare(FieldBays bays, SlowLimits slow) {
    FieldPlan plan = FieldPlanner.plan(bays, slow.kit());
    Best planned = at(bays, slow, plan.lowEnd(), plan.seatHigh());
    Best best = new Best(0, 0, Double.NEGATIVE_INFINITY);
    for (LowEnd end : LowEnd.candidates(bays)) {
      for (double seat = LOWEST; seat < HIGHEST; seat += STEP) {
        Best here = at(bays, slow, end, seat);
        best = here.isBetterThan(best) ? here : best;
      }
    }
    assertThat(plan.served())
        .as(slow.kit().id())
        .hasSameSizeAs(servedAt(bays, slow, plan.lowEnd(), plan.seatHigh()));
    assertThat(best.area()).as(slow.kit().id()).isLessThanOrEqualTo(planned.area() + 1e-6);
    if (Math.abs(best.area() - planned.area()) < 1e-6 && planned.area() > 0) {
      assertThat(planned.cuts()).isLessThanOrEqualTo(best.cuts());
      if (planned.cuts() == best.cuts()) {
        assertThat(planned.seat()).as(slow.kit().id()).isGreaterThan(best.seat() - STEP);
      }
    }
    conflictsAreThereExactlyWhereTheGridHasNoSeat(bays, slow, plan.lowEnd());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noSeatThatTwoHalvesShareIsBetterThanThePlanners(long seed) {
    FieldBays whole =
        DeckRun.survey(IfcEmitter.emit(SampleDecks.random(seed), Mix.PLAIN), "deck.ifc")
            .bays()
            .get(0);
    // every other time from a station by chance, where the line can be there
    Optional<List<FieldBays>> halves =
        seed % 2 == 0
            ? BothWays.of(whole, "other")
            : Stream.generate(new Chance(seed, whole))
                .limit(TRIES)
                .filter(v -> new HighLinePlaces(whole).wrong(v).isEmpty())
                .flatMap(v -> BothWays.at(whole, v, "other").stream())
                .findFirst();
    for (String name : List.of("formed-aluminium", "membrane-drape", "ribbed-sheet")) {
      halves.ifPresent(h -> compareShared(h, SlowLimits.of(KitReader.named(name))));
    }
  }

  /** Stations all along the bays of a field. */
  private record Chance(Random random, double length) implements Supplier<Double> {
    Chance(long seed, FieldBays whole) {
      this(
          new Random(seed),
          whole.bays().stream().mapToDouble(b -> b.stretch().to()).max().orElseThrow());
    }

    @Override
    public Double get() {
      return random.nextDouble() * length;
    }
  }

  private static void compareShared(List<FieldBays> halves, SlowLimits slow) {
    FieldPlan own = FieldPlanner.plan(halves.get(0), new OnDeck(halves), slow.kit(), Wishes.NONE);
    FieldPlan other = FieldPlanner.plan(halves.get(1), new OnDeck(halves), slow.kit(), Wishes.NONE);
    double seat = own.seatHigh();
    assertThat(other.seatHigh()).as(slow.kit().id()).isCloseTo(seat, within(SeatRange.SAME));
    Best planned =
        at(halves.get(0), slow, own.lowEnd(), seat)
            .and(at(halves.get(1), slow, other.lowEnd(), seat));
    Best best = new Best(0, 0, Double.NEGATIVE_INFINITY);
    for (LowEnd here : LowEnd.candidates(halves.get(0))) {
      for (LowEnd there : LowEnd.candidates(halves.get(1))) {
        for (double h = LOWEST; h < HIGHEST; h += STEP) {
          Best both = at(halves.get(0), slow, here, h).and(at(halves.get(1), slow, there, h));
          best = both.isBetterThan(best) ? both : best;
        }
      }
    }
    assertThat(best.area()).as(slow.kit().id()).isLessThanOrEqualTo(planned.area() + 1e-6);
    if (Math.abs(best.area() - planned.area()) < 1e-6 && planned.area() > 0) {
      assertThat(planned.cuts()).as(slow.kit().id()).isLessThanOrEqualTo(best.cuts());
      if (planned.cuts() == best.cuts()) {
        assertThat(planned.seat()).as(slow.kit().id()).isGreaterThan(best.seat() - STEP);
      }
    }
  }

  private static void conflictsAreThereExactlyWhereTheGridHasNoSeat(
      FieldBays bays, SlowLimits slow, LowEnd end) {
    SeatRanges seats = SeatRanges.with(slow.kit());
    for (Bay bay : bays.bays()) {
      BayRun run = new BayRun(bay, end.faceIn(bay).orElseThrow(), slow.kit());
      if (slow.fits(run)) {
        Optional<Conflict> found = Conflict.of(seats.limits(run, end.passed()));
        found.ifPresent(SeatAgainstBruteForceTest::withoutAnyOneLimitAHeightIsLeft);
        boolean conflict = found.isPresent();
        List<SeatRange> ranges = seats.of(run, end.passed());
        assertThat(ranges.isEmpty()).as("%s %s", slow.kit().id(), bay.id()).isEqualTo(conflict);
        if (conflict) {
          for (double seat = LOWEST; seat < HIGHEST; seat += STEP) {
            assertThat(slow.holds(run, end, seat)).isFalse();
          }
        } else {
          double highest = ranges.get(ranges.size() - 1).heights().to();
          assertThat(slow.holds(run, end, highest)).isTrue();
        }
      }
    }
  }

  /** Only at the end of some forbidden stretch can a height be the first that is free. */
  private static void withoutAnyOneLimitAHeightIsLeft(Conflict conflict) {
    List<SeatLimit> all = conflict.limits();
    assertThat(isFree(all)).as("%s", all).isFalse();
    for (SeatLimit one : all) {
      List<SeatLimit> others = all.stream().filter(l -> l != one).toList();
      assertThat(isFree(others)).as("without %s of %s", one, all).isTrue();
    }
  }

  private static boolean isFree(List<SeatLimit> limits) {
    return Stream.concat(
            Stream.of(LOWEST, HIGHEST),
            limits.stream().flatMap(l -> Stream.of(l.forbidden().from(), l.forbidden().to())))
        .filter(Double::isFinite)
        .anyMatch(h -> limits.stream().allMatch(l -> leaves(l, h)));
  }

  private static boolean leaves(SeatLimit limit, double height) {
    return height <= limit.forbidden().from() + SeatRange.SAME
        || height >= limit.forbidden().to() - SeatRange.SAME;
  }

  private static Best at(FieldBays bays, SlowLimits slow, LowEnd end, double seat) {
    double area = 0;
    int cuts = 0;
    for (BayRun run : servedAt(bays, slow, end, seat)) {
      Bay bay = run.bay();
      area += run.run() * (bay.clearWidthHigh() + bay.clearWidthAt(run.lowFace())) / 2;
      cuts += slow.cuts(run, seat);
    }
    return new Best(area, cuts, seat);
  }

  private static List<BayRun> servedAt(FieldBays bays, SlowLimits slow, LowEnd end, double seat) {
    List<BayRun> served = new ArrayList<>();
    for (Bay bay : bays.bays()) {
      end.faceIn(bay)
          .map(f -> new BayRun(bay, f, slow.kit()))
          .filter(r -> slow.canEndAt(end) && slow.fits(r) && slow.holds(r, end, seat))
          .ifPresent(served::add);
    }
    return served;
  }
}
