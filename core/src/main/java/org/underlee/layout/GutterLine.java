package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.DrainValue.DOWNSPOUT_OFF_POST;
import static org.underlee.kit.DrainValue.DRIP_CLEARANCE;
import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/**
 * Where the gutter runs: its stretch across the field, its place along the fall, the height of its
 * rim, and the outlets that it falls to.
 *
 * @param face station of the face behind it
 * @param highRim height of the rim at the gutter's highest points
 * @param lift how far the hangers' straps lie above the rim
 * @param outlets from low u to high u; each gutter piece falls to one of them
 * @param countWhy why there are so many, where the rain asks for them
 * @param near what stands there, which each of the gutter's parts asks for
 */
record GutterLine(
    FieldPlan plan,
    double face,
    double highRim,
    double lift,
    List<Outlet> outlets,
    String countWhy,
    Near near) {
  /** An outlet keeps this far from the gutter's ends. */
  static final double FROM_END = 0.1;

  /** A post stands by the gutter when it is this near to the face behind it. */
  private static final double POST_REACH = 0.6;

  /**
   * An outlet with the stretch of gutter that falls to it.
   *
   * @param u its place across the field
   * @param post the post that its downspout is fixed to
   */
  record Outlet(double u, Interval stretch, Optional<Member> post) {
    /** The longest way that water goes in the gutter. */
    double reach() {
      return Math.max(u - stretch.from(), stretch.to() - u);
    }

    double fromEnd() {
      return Math.min(u - stretch.from(), stretch.to() - u);
    }
  }

  /**
   * What the gutter keeps clear of.
   *
   * @param lowestJoist the lowest underside of the joists at the gutter
   * @param longest the longest way that water goes in the gutter to an outlet
   * @param faceBottom height at which the face behind begins
   */
  record Near(double back, double lowestJoist, double longest, double faceBottom) {
    /** Whether straps turn up: for want of face below the rim. */
    boolean turnUp(double rim) {
      return faceBottom > rim - GutterBuilder.STRAP_LEG;
    }
  }

  /**
   * @param lowest height of the lowest place that water drips from
   * @param capacity what a gutter carries of the rain
   * @param asked where the user wants outlets, metres along the gutter; none to choose them here
   */
  static GutterLine of(FieldPlan plan, double lowest, GutterCapacity capacity, List<Double> asked) {
    double face = face(plan);
    Interval across = across(plan, face);
    OutletCount count =
        asked.isEmpty()
            ? OutletCount.of(plan, face, across, capacity)
            : new OutletsAsked(plan, face, across, capacity).at(asked);
    List<Outlet> outlets = count.outlets();
    double rim = rim(plan, lowest);
    double reach = outlets.stream().mapToDouble(Outlet::reach).max().orElse(0);
    double back = back(plan, face);
    double lowestJoist = joistsAbove(plan).min().orElseThrow();
    Near near = new Near(back, lowestJoist, reach, plan.lowEnd().heights().from());
    double lift = near.turnUp(rim) ? BackFlashing.lift(plan, face - back, reach) : 0;
    return new GutterLine(plan, face, rim - lift, lift, outlets, count.why(), near);
  }

  /** Station of the face behind the gutter: the nearest to the house of those in served bays. */
  static double face(FieldPlan plan) {
    return plan.served().stream()
        .flatMap(r -> plan.lowEnd().faceIn(r.bay()).stream())
        .min(Double::compare)
        .orElseThrow();
  }

  /** Under all served bays, out to the far faces of the lines beside them. */
  private static Interval across(FieldPlan plan, double v) {
    double from =
        plan.served().stream().mapToDouble(r -> r.bay().left().left().at(v)).min().orElseThrow();
    double to =
        plan.served().stream().mapToDouble(r -> r.bay().right().right().at(v)).max().orElseThrow();
    return new Interval(from, to);
  }

  /** Below what drips, and below the joists, with room for the hanger straps. */
  private static double rim(FieldPlan plan, double lowest) {
    Kit kit = plan.kit();
    double joists = joistsAbove(plan).map(w -> w - kit.get(CLEARANCE_ABOVE)).min().orElseThrow();
    return Math.min(lowest, joists) - kit.get(DRIP_CLEARANCE) - kit.item(Items.HANGER).thickness();
  }

  /**
   * Beside the post that stands nearest to an end, of two as near that at smaller u; without posts,
   * near the far end.
   */
  static Outlet outlet(FieldPlan plan, double face, Interval stretch) {
    Interval allowed = new Interval(stretch.from() + FROM_END, stretch.to() - FROM_END);
    return besidePosts(plan, face, stretch).stream()
        .filter(o -> allowed.contains(o.u()))
        .min(
            Comparator.comparingLong((Outlet o) -> hundredths(o.fromEnd()))
                .thenComparingDouble(Outlet::u))
        .orElse(new Outlet(allowed.to(), stretch, Optional.empty()));
  }

  /** On both sides of each post by the gutter, wherever that is. */
  static List<Outlet> besidePosts(FieldPlan plan, double face, Interval stretch) {
    double off = plan.kit().get(DOWNSPOUT_DIAMETER) / 2 + plan.kit().get(DOWNSPOUT_OFF_POST);
    List<Outlet> choices = new ArrayList<>();
    for (Member post : plan.bays().field().posts()) {
      PlanShape shape = plan.bays().field().shapeOf(post);
      if (Math.abs(shape.along().middle() - face) <= POST_REACH) {
        choices.add(new Outlet(shape.across().from() - off, stretch, Optional.of(post)));
        choices.add(new Outlet(shape.across().to() + off, stretch, Optional.of(post)));
      }
    }
    return choices;
  }

  /** Millimetres by hundredths: two posts as near to the two ends must not be told by rounding. */
  private static long hundredths(double metres) {
    return Math.round(metres / SeatRange.SAME);
  }

  /** In world metres, for a hand that moves outlets. */
  GutterPlaces places() {
    double from = outlets.get(0).stretch().from();
    double to = outlets.get(outlets.size() - 1).stretch().to();
    Interval all = new Interval(from, to);
    Interval allowed = new Interval(from + FROM_END, to - FROM_END);
    return new GutterPlaces(
        plan.frame().apply(new Vec3(from, middle(), highRim)),
        plan.frame().apply(new Vec3(to, middle(), highRim)),
        outlets.stream().map(o -> o.u() - from).toList(),
        besidePosts(plan, face, all).stream()
            .map(Outlet::u)
            .filter(allowed::contains)
            .map(u -> u - from)
            .sorted()
            .toList());
  }

  /** Whether another stretch of gutter begins within a distance of an end. */
  boolean goesOn(double end, double within) {
    return outlets.stream()
            .flatMap(o -> Stream.of(o.stretch().from(), o.stretch().to()))
            .filter(u -> Math.abs(u - end) <= within * (1 + 1e-6))
            .count()
        > 1;
  }

  double middle() {
    return back() - plan.kit().get(GUTTER_WIDTH) / 2;
  }

  /** Clear of the face, and of posts that stand out from it. */
  double back() {
    return near.back;
  }

  private static double back(FieldPlan plan, double face) {
    double posts =
        postsBeside(plan, face).map(s -> s.along().from()).min(Double::compare).orElse(face);
    return Math.min(face, posts) - plan.kit().get(GUTTER_BACK_GAP);
  }

  /** Whether the hangers' straps turn up the face, for want of face below the rim. */
  boolean strapsTurnUp() {
    return near.turnUp(highRim + lift);
  }

  /** The lowest underside of the joists at the gutter. */
  double lowestJoist() {
    return near.lowestJoist;
  }

  private static DoubleStream joistsAbove(FieldPlan plan) {
    return plan.served().stream()
        .flatMap(r -> Stream.of(r.bay().left(), r.bay().right()))
        .mapToDouble(l -> l.bottom().at(l.stretch().to()));
  }

  /** Plans of the posts that stand under the low-end line. */
  static Stream<PlanShape> postsBeside(FieldPlan plan, double face) {
    return plan.bays().field().posts().stream()
        .map(plan.bays().field()::shapeOf)
        .filter(s -> s.along().from() <= face && s.along().to() >= face);
  }

  /** Height of the rim at a place across the field. */
  double rimAt(double u, Outlet outlet) {
    double toOutlet = Math.abs(u - outlet.u());
    return highRim - plan.kit().gutterFall() * (near.longest - toOutlet);
  }
}
