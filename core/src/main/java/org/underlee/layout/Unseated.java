package org.underlee.layout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.underlee.finding.Finding;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The bays for which a field's plan has no seat: which limits conflict there, and what would serve
 * them at which price.
 *
 * @param best the field's plan
 * @param onDeck all fields of the deck
 * @param ends the best plan for each low-end line, that of {@code best} among them
 */
record Unseated(FieldPlan best, OnDeck onDeck, List<FieldPlan> ends, Wishes wishes) {
  /** 1/16 in per ft: at less than this water stands in a trough (common practice). */
  static final int FLATTEST_RUN_PER_FALL = 192;

  List<Finding> findings(List<BayRun> open) {
    OpenBay words = new OpenBay(best.bays().field().id(), best.kit());
    Map<Integer, FieldPlan> flatter = flatter(open);
    List<FieldPlan> halves =
        open.stream().allMatch(r -> hasSeat(r, best.kit(), best.lowEnd())) ? List.of() : halves();
    List<Finding> findings = new ArrayList<>();
    for (BayRun run : open) {
      List<SeatLimit> limits = SeatRanges.with(best.kit()).limits(run, best.lowEnd().passed());
      findings.add(
          Conflict.of(limits)
              .map(c -> words.noSeat(run, c, alternatives(run, flatter, halves)))
              .orElseGet(() -> words.notAtThisSeat(run, best, wishes.seat().isPresent())));
    }
    return findings;
  }

  /** The field at each gentler fall that some bay needs; many bays need the same one. */
  private Map<Integer, FieldPlan> flatter(List<BayRun> open) {
    Map<Integer, FieldPlan> plans = new LinkedHashMap<>();
    for (BayRun run : open) {
      if (!hasSeat(run, best.kit(), best.lowEnd())) {
        runPerFall(run)
            .ifPresent(
                n ->
                    plans.computeIfAbsent(
                        n, k -> FieldPlanner.best(best.bays(), onDeck, at(k), wishes)));
      }
    }
    return plans;
  }

  /** The field as it would be if it fell both ways; none where it may not. */
  private List<FieldPlan> halves() {
    return onDeck.halves(best.bays()).stream()
        .flatMap(
            both ->
                both.stream().map(h -> FieldPlanner.best(h, new OnDeck(both), best.kit(), wishes)))
        .toList();
  }

  /** Gentler falls first, then other low-end lines, then falling both ways. */
  private List<Alternative> alternatives(
      BayRun run, Map<Integer, FieldPlan> flatter, List<FieldPlan> halves) {
    List<Alternative> found = new ArrayList<>();
    OptionalInt least = runPerFall(run);
    least.ifPresent(
        n -> {
          FieldPlan plan = Objects.requireNonNull(flatter.get(n));
          if (serves(plan, run)) {
            Words what = Words.of("a fall of %s", Quantity.fall(plan.fall()));
            found.add(Alternative.at(least.orElseThrow(), what, plan, best));
          }
        });
    for (FieldPlan plan : ends) {
      if (serves(plan, run)) {
        Words what = Words.of("ending at %s", plan.lowEnd().words());
        found.add(Alternative.of(what, plan, best));
      }
    }
    if (halves.stream().anyMatch(h -> servesName(h, run))) {
      found.add(Alternative.bothWays(halves, best));
    }
    return found;
  }

  /** Halves keep the names of the bays. */
  private static boolean servesName(FieldPlan half, BayRun run) {
    return half.served().stream().anyMatch(r -> r.bay().id().equals(run.bay().id()));
  }

  private static boolean serves(FieldPlan plan, BayRun run) {
    return plan.served().stream().anyMatch(r -> r.bay().equals(run.bay()));
  }

  /**
   * The steepest fall of one in a whole number, gentler than the kit's, at which a seat is left.
   */
  OptionalInt runPerFall(BayRun run) {
    int first = (int) Math.floor(best.kit().get(DrainValue.RUN_PER_FALL)) + 1;
    return IntStream.rangeClosed(first, FLATTEST_RUN_PER_FALL)
        .filter(n -> hasSeat(run, at(n), best.lowEnd()))
        .findFirst();
  }

  private static boolean hasSeat(BayRun run, Kit kit, LowEnd end) {
    BayRun same = new BayRun(run.bay(), run.lowFace(), kit);
    return Conflict.of(SeatRanges.with(kit).limits(same, end.passed())).isEmpty();
  }

  private Kit at(int runPerFall) {
    return best.kit().with(DrainValue.RUN_PER_FALL, runPerFall, "an alternative looked at");
  }
}
