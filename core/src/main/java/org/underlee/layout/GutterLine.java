package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.DrainValue.DOWNSPOUT_OFF_POST;
import static org.underlee.kit.DrainValue.DRIP_CLEARANCE;
import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;
import static org.underlee.kit.PanValue.PAN_DRIP;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/**
 * Where the gutter runs: its stretch across the field, its place along the fall, the height of its
 * rim, and the outlets that it falls to.
 *
 * @param face station of the face behind it
 * @param highRim height of the rim at the gutter's highest points
 * @param outlets from low u to high u; each gutter piece falls to one of them
 */
record GutterLine(FieldPlan plan, double face, double highRim, List<Outlet> outlets) {
  /** An outlet keeps this far from the gutter's ends. */
  private static final double FROM_END = 0.1;

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
  }

  static GutterLine of(FieldPlan plan, StripBuilder strips) {
    double face = face(plan);
    Interval across = across(plan, face);
    List<Outlet> outlets =
        GutterStretches.of(plan, face, across).stream().map(s -> outlet(plan, face, s)).toList();
    return new GutterLine(plan, face, rim(plan, strips), outlets);
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

  /** Below the lowest drip, the rails' ends and the joists, with room for the hanger straps. */
  private static double rim(FieldPlan plan, StripBuilder strips) {
    Kit kit = plan.kit();
    double strap = kit.item(Items.HANGER).thickness();
    DoubleStream drips =
        plan.served().stream().mapToDouble(r -> plan.seat(r.panEnd()) - kit.get(PAN_DRIP));
    DoubleStream rails =
        plan.served().stream()
            .mapToDouble(r -> plan.seat(r.railEnd()) - kit.item(Items.SIDE_RAIL).thickness());
    DoubleStream joists =
        plan.served().stream()
            .flatMap(r -> Stream.of(r.bay().left(), r.bay().right()))
            .mapToDouble(l -> l.bottom().at(l.stretch().to()) - kit.get(CLEARANCE_ABOVE));
    double end = plan.served().stream().mapToDouble(BayRun::panEnd).max().orElseThrow();
    DoubleStream stripDrips =
        plan.bays().field().lines().stream()
            .filter(l -> l.pliesAbreast() > 1 && isServed(plan, l))
            .mapToDouble(l -> strips.floor(l, end) - kit.get(PAN_DRIP));
    double lowest =
        Stream.of(drips, rails, joists, stripDrips).flatMapToDouble(s -> s).min().orElseThrow();
    return lowest - kit.get(DRIP_CLEARANCE) - strap;
  }

  private static boolean isServed(FieldPlan plan, JoistLine line) {
    return plan.served().stream()
        .anyMatch(r -> r.bay().left().equals(line) || r.bay().right().equals(line));
  }

  /** Beside the post that stands nearest to an end; without posts, near the far end. */
  private static Outlet outlet(FieldPlan plan, double face, Interval stretch) {
    Interval allowed = new Interval(stretch.from() + FROM_END, stretch.to() - FROM_END);
    double off = plan.kit().get(DOWNSPOUT_DIAMETER) / 2 + plan.kit().get(DOWNSPOUT_OFF_POST);
    List<Outlet> choices = new ArrayList<>();
    for (Member post : plan.bays().field().posts()) {
      PlanShape shape = plan.bays().field().shapeOf(post);
      if (Math.abs(shape.along().middle() - face) <= POST_REACH) {
        choices.add(new Outlet(shape.across().from() - off, stretch, Optional.of(post)));
        choices.add(new Outlet(shape.across().to() + off, stretch, Optional.of(post)));
      }
    }
    return choices.stream()
        .filter(o -> allowed.contains(o.u()))
        .min(
            Comparator.comparingDouble(
                    (Outlet o) -> Math.min(o.u() - stretch.from(), stretch.to() - o.u()))
                .thenComparingDouble(Outlet::u))
        .orElse(new Outlet(allowed.to(), stretch, Optional.empty()));
  }

  double middle() {
    return back() - plan.kit().get(GUTTER_WIDTH) / 2;
  }

  /** Clear of the face, and of posts that stand out from it. */
  double back() {
    double posts =
        postsBeside(plan, face).map(s -> s.along().from()).min(Double::compare).orElse(face);
    return Math.min(face, posts) - plan.kit().get(GUTTER_BACK_GAP);
  }

  /** Plans of the posts that stand under the low-end line. */
  static Stream<PlanShape> postsBeside(FieldPlan plan, double face) {
    return plan.bays().field().posts().stream()
        .map(plan.bays().field()::shapeOf)
        .filter(s -> s.along().from() <= face && s.along().to() >= face);
  }

  /** Height of the rim at a place across the field. */
  double rimAt(double u, Outlet outlet) {
    double longest = outlets.stream().mapToDouble(Outlet::reach).max().orElseThrow();
    double toOutlet = Math.abs(u - outlet.u());
    return highRim - plan.kit().gutterFall() * (longest - toOutlet);
  }
}
