package org.underlee.layout;

import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.DrainValue.STRAP_SPACING;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.framing.Support;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** The straps that hold a downspout to its post: a ring around it and a tongue along the post. */
record StrapBuilder(FieldPlan plan, PartNames names, GutterLine line) {
  private static final int SIDES = 24;

  /** Height of a strap's sheet. */
  private static final double HIGH = 0.025;

  /** How far the tongue lies along the post's side. */
  private static final double TONGUE = 0.04;

  /** From the downspout's ends, and from the beam above, to a strap's middle. */
  private static final double FROM_END = 0.1;

  private static final double PLAY = 0.0005;

  /** A post that stands further from the gutter's back than this is not reached. */
  private static final double REACH = 0.06;

  /**
   * Straps near both ends of a downspout and between them.
   *
   * @param spout heights from the downspout's foot to its top
   * @param first ordinal of the first strap
   */
  List<Part> parts(GutterLine.Outlet outlet, Member post, Interval spout, int first) {
    Kit kit = plan.kit();
    double below = beamsAbove(outlet, post);
    double top = Math.min(spout.to(), below) - FROM_END;
    double bottom = spout.from() + FROM_END;
    List<Part> parts = new ArrayList<>();
    PlanShape shape = plan.bays().field().shapeOf(post);
    double behind = shape.along().from() - line.back();
    boolean near = behind > -REACH && behind < REACH;
    if (top > bottom && near) {
      double inner = top - bottom;
      int gaps = GutterBuilder.gaps(inner, kit.get(STRAP_SPACING));
      Derivation spacing = spacing(post, inner, gaps);
      for (int i = 0; i <= gaps; i++) {
        parts.add(strap(outlet, post, top - inner * i / gaps, spacing, first + i));
      }
    }
    return parts;
  }

  /** The lowest underside of the beams that a tongue could meet beside its post. */
  private double beamsAbove(GutterLine.Outlet outlet, Member post) {
    PlanShape shape = plan.bays().field().shapeOf(post);
    Interval along = new Interval(line.middle(), shape.along().from() + TONGUE);
    Interval across = shape.across().join(new Interval(outlet.u(), outlet.u()));
    Field field = plan.bays().field();
    return Stream.of(field.dropBeams(), field.carriers(), field.low())
        .flatMap(List::stream)
        .map(Support::shape)
        .filter(b -> !b.along().meet(along).isEmpty() && !b.across().meet(across).isEmpty())
        .mapToDouble(b -> b.heights().from())
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  private Part strap(
      GutterLine.Outlet outlet, Member post, double height, Derivation spacing, int ordinal) {
    double t = plan.kit().item(Items.STRAP).thickness();
    double radius = plan.kit().get(DOWNSPOUT_DIAMETER) / 2 + PLAY;
    PlanShape shape = plan.bays().field().shapeOf(post);
    boolean before = outlet.u() < shape.across().middle();
    double side = before ? shape.across().from() : shape.across().to();
    double way = before ? 1 : -1;
    double ring = outlet.u() + way * (radius + t);
    double v = line.middle();
    double end = shape.along().from() + TONGUE;
    Transform low = plan.frame().after(Transform.translation(new Vec3(0, 0, height - HIGH / 2)));
    List<Extrusion> bodies =
        List.of(
            Sheet.plate(
                low,
                new Outline(
                    Outline.circle(outlet.u(), v, radius + t, SIDES),
                    List.of(Outline.circle(outlet.u(), v, radius, SIDES))),
                0,
                HIGH),
            Sheet.plate(low, box(ring + way * PLAY, v - t / 2, side - way * t, v + t / 2), 0, HIGH),
            Sheet.plate(low, box(side - way * t, v - t / 2, side, end), 0, HIGH));
    double length = 2 * Math.PI * (radius + t) + Math.abs(side - ring) + end - v;
    return names.inField(
        PartKind.STRAP,
        ordinal,
        PartNames.Shape.of(Items.STRAP, length, HIGH, bodies)
            .derived(derivations(post, radius + t, length, spacing)),
        "holds the downspout to its post");
  }

  private static Outline box(double u0, double v0, double u1, double v1) {
    return Outline.rectangle(Math.min(u0, u1), v0, Math.max(u0, u1), v1);
  }

  private List<Derivation> derivations(
      Member post, double outside, double length, Derivation spacing) {
    Reckoning around =
        new Reckoning(plan.kit())
            .from(DOWNSPOUT_DIAMETER)
            .plus("play and sheet on both sides", 2 * outside - diameter(), stock())
            .times("around it", Math.PI, Reckoning.OWN)
            .plus(
                "tongue to the post and along its side",
                length - 2 * Math.PI * outside,
                new Measured(List.of(post.element())));
    return List.of(
        around.gives(Dimension.LENGTH),
        new Reckoning(plan.kit())
            .from(Words.of("width of the strap"), HIGH, stock())
            .gives(Dimension.WIDTH),
        spacing);
  }

  private double diameter() {
    return plan.kit().get(DOWNSPOUT_DIAMETER);
  }

  private KitValue stock() {
    return new KitValue(Items.STRAP, plan.kit().item(Items.STRAP).source());
  }

  private Derivation spacing(Member post, double inner, int gaps) {
    Reckoning r = new Reckoning(plan.kit());
    return r.from(
            Words.of("from the lowest strap to the highest, clear of the beam"),
            inner,
            new Measured(List.of(post.element())))
        .over(
            Words.of(
                "equal spaces, none more than %s", Quantity.length(plan.kit().get(STRAP_SPACING))),
            gaps,
            r.origin(STRAP_SPACING))
        .gives(Dimension.SPACING);
  }
}
