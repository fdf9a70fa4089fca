package org.underlee.layout;

import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;
import static org.underlee.kit.DrainValue.HEAD_GAP;
import static org.underlee.kit.PanValue.COLLAR_CLEARANCE;
import static org.underlee.kit.PanValue.COLLAR_EDGE;
import static org.underlee.kit.PanValue.PAN_DRIP_SETBACK;
import static org.underlee.kit.PanValue.PAN_NARROWEST;
import static org.underlee.kit.PanValue.PAN_SIDE_GAP;
import static org.underlee.kit.PanValue.PAN_WIDEST;
import static org.underlee.kit.PanValue.RAIL_END_GAP;
import static org.underlee.kit.PanValue.RAIL_LEDGE;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
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
  /** Shorter runs leave no room for a pan between the end gaps. */
  static final double SHORTEST_RUN = 0.3;

  private static final Comparator<FieldPlan> BEST =
      Comparator.comparingDouble((FieldPlan p) -> -Math.round(p.area() / SeatRange.SAME))
          .thenComparingInt(FieldPlan::cuts)
          .thenComparingDouble(p -> -Math.round(p.seatHigh() / SeatRange.SAME));

  /** A head rail is straight across: more than its gap takes up needs another piece. */
  static final double MOST_SLANT = 0.01;

  /** A drip falls at least this far before the gutter's back. */
  private static final double DRIP_FROM_BACK = 0.01;

  /** Below the seat: the ledge's sheet, and the drip at a pan's end. */
  private static final double RAIL_UNDER = 0.02;

  /** Metres that two sums of the same numbers may differ by. */
  private static final double ROUNDING = SeatRange.SAME / 1000;

  private final FieldBays bays;
  private final Kit kit;
  private final SeatRanges seats;
  private final OpenBay open;

  private FieldPlanner(FieldBays bays, Kit kit) {
    this.bays = bays;
    this.kit = kit;
    this.seats = new SeatRanges(kit);
    this.open = new OpenBay(bays.field().id(), kit);
  }

  /** The best plan; its {@code served} is empty when no bay can be served. */
  static FieldPlan plan(FieldBays bays, Kit kit) {
    FieldPlanner planner = new FieldPlanner(bays, kit);
    List<FieldPlan> ends = planner.atEachEnd();
    FieldPlan best = ends.stream().min(BEST).orElseThrow();
    Set<String> served = best.served().stream().map(r -> r.bay().id()).collect(Collectors.toSet());
    List<BayRun> open =
        planner.fitting(best.lowEnd()).stream()
            .filter(r -> !served.contains(r.bay().id()))
            .toList();
    List<Finding> findings = new ArrayList<>(best.findings());
    findings.addAll(new Unseated(best, ends).findings(open));
    return best.with(best.served().isEmpty() ? List.of() : planner.shortOfPosts(best), findings);
  }

  /** The best plan as far as the seat decides; bays without a seat have no finding yet. */
  static FieldPlan best(FieldBays bays, Kit kit) {
    return new FieldPlanner(bays, kit).atEachEnd().stream().min(BEST).orElseThrow();
  }

  private List<FieldPlan> atEachEnd() {
    return LowEnd.candidates(bays).stream()
        .filter(this::isClearOfPlyStrips)
        .map(this::planFor)
        .toList();
  }

  private List<BayRun> fitting(LowEnd end) {
    List<Finding> told = new ArrayList<>();
    return overOneGutter(fitting(end, told), told);
  }

  /** A ply strip hangs below the joists, so it cannot pass a beam that the joists lie on. */
  private boolean isClearOfPlyStrips(LowEnd end) {
    return end.passed().isEmpty()
        || bays.field().lines().stream().allMatch(l -> l.pliesAbreast() == 1);
  }

  private FieldPlan planFor(LowEnd end) {
    List<Finding> findings = new ArrayList<>();
    List<BayRun> fit = overOneGutter(fitting(end, findings), findings);
    Map<BayRun, List<SeatRange>> ranges = new LinkedHashMap<>();
    fit.forEach(r -> ranges.put(r, seats.of(r, end.passed())));
    return candidates(ranges)
        .map(seat -> at(seat, end, ranges))
        .min(BEST)
        .orElse(new FieldPlan(bays, kit, end, 0, List.of(), 0, Words.of(""), List.of()))
        .noting(findings);
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
    double reach =
        kit.get(RAIL_END_GAP)
            - kit.get(HEAD_GAP)
            + kit.get(PAN_DRIP_SETBACK)
            - kit.get(GUTTER_BACK_GAP)
            - DRIP_FROM_BACK;
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
  private Stream<SeatRange> candidates(Map<BayRun, List<SeatRange>> ranges) {
    List<SeatRange> all =
        Stream.concat(
                ranges.values().stream().flatMap(List::stream),
                ranges.keySet().stream().flatMap(r -> seats.notchFree(r).stream()))
            .toList();
    return firstOfEach(all, s -> s.heights().to());
  }

  /** Most bays of a field are alike: what differs by rounding only is looked at once. */
  private static <T> Stream<T> firstOfEach(List<T> all, ToDoubleFunction<T> number) {
    Set<Long> seen = new HashSet<>();
    return all.stream().filter(t -> seen.add(Math.round(number.applyAsDouble(t) / ROUNDING)));
  }

  private FieldPlan at(SeatRange seat, LowEnd end, Map<BayRun, List<SeatRange>> ranges) {
    double height = seat.heights().to();
    List<BayRun> served =
        ranges.entrySet().stream()
            .filter(e -> e.getValue().stream().anyMatch(s -> s.contains(height)))
            .map(Map.Entry::getKey)
            .toList();
    return new FieldPlan(
        bays, kit, end, height, served, cuts(served, height), seat.binding(), List.of());
  }

  /** Both rails of a bay are notched at each place. */
  private int cuts(List<BayRun> served, double seatHigh) {
    return served.stream().mapToInt(r -> 2 * seats.notches(r, seatHigh).size()).sum();
  }

  private void keepIfItFits(BayRun run, List<BayRun> fit, List<Finding> findings) {
    Bay bay = run.bay();
    double high = bay.straightWidthAt(bay.stretch().from());
    double low = bay.straightWidthAt(run.lowFace());
    double narrow = Math.min(high, low);
    double wide = Math.max(high, low);
    Optional<Crossing> edge =
        run.bay().crossings().stream().filter(c -> cannotPass(run, c)).findFirst();
    double slant = slant(bay);
    if (slant > MOST_SLANT) {
      findings.add(open.onASlant(bay, slant));
    } else if (wide > kit.get(PAN_WIDEST) + SeatRange.SAME) {
      findings.add(open.width(bay, wide, PAN_WIDEST));
    } else if (narrow < kit.get(PAN_NARROWEST) - SeatRange.SAME) {
      findings.add(open.width(bay, narrow, PAN_NARROWEST));
    } else if (run.run() < SHORTEST_RUN) {
      findings.add(open.runTooShort(run));
    } else if (edge.isPresent()) {
      findings.add(open.pipeAtEdge(bay, edge.get()));
    } else {
      fit.add(run);
    }
  }

  /** How much further one side of a bay's high end lies than its middle, as at a hip. */
  private double slant(Bay bay) {
    double start = bay.stretch().from();
    return bays.field().high().stream()
        .flatMap(
            s ->
                Stream.of(bay.leftFace().at(start), bay.rightFace().at(start))
                    .map(u -> s.shape().alongAt(u).to()))
        .filter(v -> v > start && v < bay.stretch().middle())
        .mapToDouble(v -> v - start)
        .max()
        .orElse(0);
  }

  /** A hole in the pan must leave sheet all round, and at the sides clear the rails' ledges. */
  private boolean cannotPass(BayRun run, Crossing c) {
    if (c.way() != Way.THROUGH || c.stretch().from() > run.railEnd()) {
      return false;
    }
    double sheet = kit.get(COLLAR_CLEARANCE) + kit.get(COLLAR_EDGE);
    double half = c.acrossStretch().length() / 2 + kit.get(COLLAR_CLEARANCE);
    double edge = Math.max(kit.get(RAIL_LEDGE), kit.get(PAN_SIDE_GAP) + kit.get(COLLAR_EDGE));
    double v = c.stretch().middle();
    double u = c.acrossStretch().middle();
    return u - run.bay().leftFace().at(v) - half < edge
        || run.bay().rightFace().at(v) - u - half < edge
        || run.alongTo(c.stretch().from()) < sheet
        || run.alongTo(c.stretch().to()) > run.panLength() - sheet;
  }
}
