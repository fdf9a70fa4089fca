package org.underlee.layout;

import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.kit.Kit;
import org.underlee.units.Words;

/**
 * Chooses the low-end line and the seat height of a field. Exact: all limits on the seat are
 * one-sided bounds, so for each low-end line the feasible seats form one interval, and the best
 * seat is its top or a height at which a rail leg just needs no notch.
 *
 * <p>Order of preference: most area served, fewest parts cut, greatest headroom.
 */
final class FieldPlanner {
  private static final Comparator<Choice> BEST =
      Comparator.comparingDouble((Choice c) -> -Math.round(c.area() / SeatRange.SAME))
          .thenComparingInt(Choice::cuts)
          .thenComparingDouble(c -> -Math.round(c.plan.seatHigh() / SeatRange.SAME));

  /** A drip falls at least this far before the gutter's back. */
  private static final double DRIP_FROM_BACK = 0.01;

  /** Below the seat: the ledge's sheet, and the drip at a pan's end. */
  private static final double RAIL_UNDER = 0.02;

  /** Metres that two sums of the same numbers may differ by. */
  private static final double ROUNDING = SeatRange.SAME / 1000;

  /** A run with the seats that serve it. */
  private record Seated(BayRun run, List<SeatRange> ranges) {}

  /** What fits before a low-end line, and why the rest does not. */
  private record Ended(LowEnd end, List<Seated> runs, List<Finding> findings) {}

  /**
   * One seat of a field.
   *
   * @param other what that seat gives on the other side of its high line, where it has one
   */
  private record Choice(FieldPlan plan, Optional<FieldPlan> other) {
    double area() {
      return plan.area() + other.map(FieldPlan::area).orElse(0.0);
    }

    int cuts() {
      return plan.cuts() + other.map(FieldPlan::cuts).orElse(0);
    }

    FieldPlan chosen() {
      return other.map(plan::facing).orElse(plan);
    }
  }

  private final FieldBays bays;
  private final Kit kit;
  private final SeatRanges seats;
  private final Wishes wishes;
  private final Assembly assembly;
  private final OpenBay open;

  /** The field on the other side of the high line: its pans are at the same height there. */
  private final Optional<FieldPlanner> other;

  private FieldPlanner(FieldBays bays, Optional<FieldBays> beyond, Kit kit, Wishes wishes) {
    this.other = beyond.map(o -> new FieldPlanner(o, Optional.empty(), kit, wishes));
    this.bays = bays;
    this.wishes = wishes;
    this.kit = kit;
    this.seats = SeatRanges.with(kit);
    this.assembly = Assembly.of(bays, kit);
    this.open = new OpenBay(bays.field().id(), kit);
  }

  /** The best plan with nothing fixed by the user. */
  static FieldPlan plan(FieldBays bays, Kit kit) {
    return plan(bays, OnDeck.ALONE, kit, Wishes.NONE);
  }

  /**
   * The best plan; its {@code served} is empty when no bay can be served.
   *
   * @param onDeck all fields of its deck
   */
  static FieldPlan plan(FieldBays bays, OnDeck onDeck, Kit kit, Wishes wishes) {
    FieldPlanner planner = new FieldPlanner(bays, onDeck.beyond(bays), kit, wishes);
    List<Choice> ends = planner.atEachEnd();
    FieldPlan best = planner.bestOf(ends).chosen();
    Set<String> served = best.served().stream().map(r -> r.bay().id()).collect(Collectors.toSet());
    List<BayRun> open =
        planner.fitting(best.lowEnd()).stream()
            .filter(r -> !served.contains(r.bay().id()))
            .toList();
    List<Finding> findings = new ArrayList<>(best.findings());
    List<FieldPlan> plans = ends.stream().map(Choice::chosen).toList();
    findings.addAll(new Unseated(best, onDeck, plans, wishes).findings(open));
    return best.with(best.served().isEmpty() ? List.of() : planner.shortOfPosts(best), findings);
  }

  /** The best plan as far as the seat decides; bays without a seat have no finding yet. */
  static FieldPlan best(FieldBays bays, OnDeck onDeck, Kit kit, Wishes wishes) {
    FieldPlanner planner = new FieldPlanner(bays, onDeck.beyond(bays), kit, wishes);
    return planner.bestOf(planner.atEachEnd()).chosen();
  }

  /** The one at the low end that the user asks for, where the field has it; else the best. */
  private Choice bestOf(List<Choice> ends) {
    return ends.stream()
        .filter(c -> wishes.lowEnd().equals(Optional.of(c.plan.lowEnd().id())))
        .findFirst()
        .orElseGet(() -> ends.stream().min(BEST).orElseThrow());
  }

  /** The best seat for each low-end line of the field. */
  private List<Choice> atEachEnd() {
    List<Optional<Ended>> others =
        other
            .map(o -> o.allowedEnds().map(Optional::of).toList())
            .orElseGet(() -> List.of(Optional.empty()));
    return ends().parallel().map(end -> at(end, others)).toList();
  }

  private Stream<Ended> ends() {
    return LowEnd.candidates(bays).stream().filter(assembly::canEndAt).map(this::ended);
  }

  /** Those that the user leaves to choose from. */
  private Stream<Ended> allowedEnds() {
    List<Ended> all = ends().toList();
    List<Ended> asked =
        all.stream().filter(e -> wishes.lowEnd().equals(Optional.of(e.end.id()))).toList();
    return (asked.isEmpty() ? all : asked).stream();
  }

  private List<BayRun> fitting(LowEnd end) {
    List<Finding> told = new ArrayList<>();
    return overOneGutter(fitting(end, told), told);
  }

  private Ended ended(LowEnd end) {
    List<Finding> findings = new ArrayList<>();
    List<BayRun> fit = overOneGutter(fitting(end, findings), findings);
    return new Ended(
        end, fit.stream().map(r -> new Seated(r, seats.of(r, end.passed()))).toList(), findings);
  }

  /** The best seat before a low-end line, whichever line the other side ends at. */
  private Choice at(Ended own, List<Optional<Ended>> others) {
    return others.stream()
        .flatMap(there -> choices(own, there))
        .min(BEST)
        .map(c -> new Choice(c.plan.noting(own.findings), c.other))
        .orElse(
            new Choice(
                new FieldPlan(
                    bays,
                    kit,
                    own.end,
                    0,
                    List.of(),
                    0,
                    Words.of(""),
                    own.findings,
                    Optional.empty()),
                Optional.empty()));
  }

  private Stream<Choice> choices(Ended own, Optional<Ended> there) {
    List<Seated> runs = new ArrayList<>(own.runs);
    there.ifPresent(t -> runs.addAll(t.runs));
    return candidates(runs)
        .map(
            seat ->
                new Choice(
                    at(seat, own.end, own.runs),
                    there.flatMap(t -> other.map(o -> o.at(seat, t.end, t.runs)))));
  }

  private List<BayRun> fitting(LowEnd end, List<Finding> findings) {
    List<BayRun> fit = new ArrayList<>();
    for (Bay bay : bays.bays()) {
      end.faceIn(bay)
          .map(f -> new BayRun(bay, f, kit))
          .ifPresentOrElse(
              run -> keepIfItFits(run, fit, findings),
              () -> findings.add(open.endsBefore(bay, end)));
    }
    return fit;
  }

  /** The runs that drip into one straight gutter: of all lines across, the one under most area. */
  private List<BayRun> overOneGutter(List<BayRun> fit, List<Finding> findings) {
    double reach = Ends.of(kit).drip() - kit.get(GUTTER_BACK_GAP) - DRIP_FROM_BACK;
    List<BayRun> best = List.of();
    for (BayRun first : firstOfEach(fit, BayRun::lowFace).toList()) {
      List<BayRun> together =
          fit.stream()
              .filter(r -> r.lowFace() >= first.lowFace() - SeatRange.SAME)
              .filter(r -> r.lowFace() <= first.lowFace() + reach)
              .toList();
      best = FieldPlan.area(together) > FieldPlan.area(best) + SeatRange.SAME ? together : best;
    }
    Set<String> kept = best.stream().map(r -> r.bay().id()).collect(Collectors.toSet());
    fit.stream()
        .filter(r -> !kept.contains(r.bay().id()))
        .forEach(r -> findings.add(open.noGutter(r)));
    return best;
  }

  /**
   * Where posts stand out from the face behind the gutter, the gutter runs along them: rails and
   * pans end as far before the posts as they would before the face, or their water would fall
   * behind it. So do those of a bay that a post stands in.
   */
  private List<BayRun> shortOfPosts(FieldPlan plan) {
    double face = GutterLine.face(plan);
    double out =
        GutterLine.postsBeside(plan, face)
            .mapToDouble(p -> face - p.along().from())
            .max()
            .orElse(0);
    List<PlanShape> posts = bays.field().posts().stream().map(bays.field()::shapeOf).toList();
    return plan.served().stream()
        .map(
            r -> new BayRun(r.bay(), Math.min(r.lowFace() - out, beforePosts(r, plan, posts)), kit))
        .toList();
  }

  private double beforePosts(BayRun run, FieldPlan plan, List<PlanShape> posts) {
    double face = run.lowFace();
    Interval across = new Interval(run.bay().leftFace().at(face), run.bay().rightFace().at(face));
    return posts.stream()
        .filter(p -> p.along().from() < face && p.along().to() >= face)
        .filter(p -> !p.across().meet(across).isEmpty())
        .filter(p -> p.heights().to() > plan.seat(run.railEnd()) - RAIL_UNDER)
        .mapToDouble(p -> p.along().from())
        .min()
        .orElse(face);
  }

  /**
   * Tops of ranges, and heights at which a leg just needs no notch: the best seat is one of them.
   */
  private Stream<SeatRange> candidates(List<Seated> runs) {
    if (wishes.seat().isPresent()) {
      return Stream.of(SeatRange.wished(wishes.seat().getAsDouble()));
    }
    List<SeatRange> all =
        Stream.concat(
                runs.stream().flatMap(s -> s.ranges.stream()),
                runs.stream().flatMap(s -> seats.cutFree(s.run).stream()))
            .toList();
    return firstOfEach(all, s -> s.heights().to());
  }

  /** Most bays of a field are alike: what differs by rounding only is looked at once. */
  private static <T> Stream<T> firstOfEach(List<T> all, ToDoubleFunction<T> number) {
    Set<Long> seen = new HashSet<>();
    return all.stream().filter(t -> seen.add(Math.round(number.applyAsDouble(t) / ROUNDING)));
  }

  private FieldPlan at(SeatRange seat, LowEnd end, List<Seated> runs) {
    double height = seat.heights().to();
    List<BayRun> served =
        runs.stream()
            .filter(s -> s.ranges.stream().anyMatch(r -> r.contains(height)))
            .map(Seated::run)
            .toList();
    return new FieldPlan(
        bays,
        kit,
        end,
        height,
        served,
        cuts(served, height),
        seat.binding(),
        List.of(),
        Optional.empty());
  }

  private int cuts(List<BayRun> served, double seatHigh) {
    return served.stream()
        .flatMap(r -> seats.notches(r, seatHigh).stream())
        .mapToInt(n -> n.rails().size())
        .sum();
  }

  private void keepIfItFits(BayRun run, List<BayRun> fit, List<Finding> findings) {
    if (wishes.leavesOpen(bays.field().id(), run.bay().id())) {
      findings.add(open.onPurpose(run.bay()));
      return;
    }
    if (!wishes.keepsDry(run.bay(), bays.field())) {
      findings.add(open.outsideZone(run.bay()));
      return;
    }
    assembly.unfit(run).ifPresentOrElse(findings::add, () -> fit.add(run));
  }
}
