package org.underlee.layout;

import static org.underlee.kit.DrainValue.DISCHARGE_HEIGHT;
import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.DrainValue.GUTTER_DEPTH;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;

/** Outlet, downspout and elbow below each low point of the gutter, and how the water passes on. */
final class DownspoutBuilder {
  private static final int SIDES = 24;

  /** The outlet's tube: how far it reaches down, and how far the downspout slips over it. */
  static final double OUTLET_TUBE = 0.08;

  static final double SLIP = 0.05;

  /** Play between a tube and the one it slips into. */
  static final double PLAY = 0.0005;

  /** The elbow: its socket around the downspout's foot, and its leg at 45°. */
  static final double SOCKET = 0.06;

  static final double ELBOW_LEG = 0.1;

  private final FieldPlan plan;
  private final PartNames names;
  private final GutterLine line;
  private final double ground;
  private final SpoutReckoning reckoning;
  private final List<Part> parts = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();
  private int downspouts;
  private int straps;

  /**
   * @param ground height of the ground in the field's frame
   */
  DownspoutBuilder(FieldPlan plan, PartNames names, GutterLine line, double ground) {
    this.plan = plan;
    this.names = names;
    this.line = line;
    this.ground = ground;
    this.reckoning = new SpoutReckoning(plan);
  }

  List<Part> parts() {
    return List.copyOf(parts);
  }

  List<Link> links() {
    return List.copyOf(links);
  }

  /**
   * @param gutters the gutter parts, two for each outlet, in the order of the line's outlets
   */
  DownspoutBuilder build(List<Part> gutters) {
    for (int i = 0; i < line.outlets().size(); i++) {
      GutterLine.Outlet outlet = line.outlets().get(i);
      double floor = line.rimAt(outlet.u(), outlet) - plan.kit().get(GUTTER_DEPTH);
      Part tube = outlet(outlet, floor, i + 1);
      parts.add(tube);
      Vec3 top = plan.frame().apply(new Vec3(outlet.u(), line.middle(), floor));
      links.add(new Link(gutters.get(2 * i).id(), tube.id(), top));
      links.add(new Link(gutters.get(2 * i + 1).id(), tube.id(), top));
      down(outlet, floor, tube, i + 1);
    }
    return this;
  }

  private Part outlet(GutterLine.Outlet outlet, double floor, int ordinal) {
    double t = plan.kit().item(Items.OUTLET).thickness();
    double radius = radius() - plan.kit().item(Items.DOWNSPOUT).thickness() - PLAY;
    return names.inField(
        PartKind.OUTLET,
        ordinal,
        PartNames.Shape.of(
                Items.OUTLET,
                OUTLET_TUBE,
                2 * radius,
                List.of(
                    tube(outlet.u(), line.middle(), floor - OUTLET_TUBE, OUTLET_TUBE, radius, t)))
            .derived(reckoning.outlet()),
        (outlet.post().isPresent()
                ? "beside a post, to fix the downspout to"
                : "near the gutter's end; no post was found to fix the downspout to")
            + line.countWhy());
  }

  private void down(GutterLine.Outlet outlet, double floor, Part tube, int ordinal) {
    StockItem stock = plan.kit().item(Items.DOWNSPOUT);
    double top = floor - (OUTLET_TUBE - SLIP);
    double foot = foot();
    double longest = stock.stockLengths().get(stock.stockLengths().size() - 1);
    int count = (int) Math.ceil((top - foot) / longest - 1e-9);
    String above = tube.id();
    double at = top;
    for (int i = 0; i < count; i++) {
      double length = (top - foot) / count;
      Part piece =
          downspout(
              outlet,
              at - length,
              length,
              stock,
              reckoning.downspout(outlet, floor - ground, count, longest));
      parts.add(piece);
      links.add(
          new Link(above, piece.id(), plan.frame().apply(new Vec3(outlet.u(), line.middle(), at))));
      above = piece.id();
      at -= length;
    }
    Part elbow = elbow(outlet, foot, ordinal);
    parts.add(elbow);
    StrapBuilder builder = new StrapBuilder(plan, names, line);
    outlet
        .post()
        .map(p -> builder.parts(outlet, p, new Interval(foot, top), straps + 1))
        .ifPresent(parts::addAll);
    straps = (int) parts.stream().filter(p -> p.kind() == PartKind.STRAP).count();
    links.add(
        new Link(above, elbow.id(), plan.frame().apply(new Vec3(outlet.u(), line.middle(), foot))));
  }

  /**
   * Where the downspout ends: the elbow's leg below it ends at the kit's height above the ground.
   */
  private double foot() {
    return ground + plan.kit().get(DISCHARGE_HEIGHT) + reckoning.elbowHeight();
  }

  private Part downspout(
      GutterLine.Outlet outlet,
      double bottom,
      double length,
      StockItem stock,
      List<Derivation> derivations) {
    PartNames.Shape shape =
        PartNames.Shape.of(
                stock.id(),
                length,
                2 * radius(),
                List.of(
                    tube(outlet.u(), line.middle(), bottom, length, radius(), stock.thickness())))
            .cutFrom(ring(radius(), stock.thickness()))
            .derived(derivations);
    return names.inField(
        PartKind.DOWNSPOUT,
        ++downspouts,
        shape,
        "from the outlet to the elbow above the ground, which is taken at the foot of the posts");
  }

  private Part elbow(GutterLine.Outlet outlet, double foot, int ordinal) {
    Kit kit = plan.kit();
    double t = kit.item(Items.ELBOW).thickness();
    double inner = radius() + PLAY;
    double drop = (inner + t) * Math.sqrt(0.5) + PLAY;
    Vec3 start = new Vec3(outlet.u(), line.middle(), foot - drop);
    Transform leg = plan.frame().after(Transform.frame(start, new Vec3(0, 1, -1), Vec3.X));
    List<Extrusion> bodies =
        List.of(
            tube(outlet.u(), line.middle(), foot, SOCKET, inner + t, t),
            Extrusion.straight(leg, ring(inner + t, t), ELBOW_LEG));
    return names.inField(
        PartKind.ELBOW,
        ordinal,
        PartNames.Shape.of(Items.ELBOW, SOCKET + ELBOW_LEG, 2 * (inner + t), bodies)
            .derived(reckoning.elbow()),
        "turns the water away from the house; lead it on to where your local code allows");
  }

  private double radius() {
    return plan.kit().get(DOWNSPOUT_DIAMETER) / 2;
  }

  private Extrusion tube(
      double u, double v, double bottom, double height, double radius, double t) {
    Transform upright = plan.frame().after(Transform.translation(new Vec3(u, v, bottom)));
    return Extrusion.straight(upright, ring(radius, t), height);
  }

  private static Outline ring(double radius, double t) {
    return new Outline(
        Outline.circle(0, 0, radius, SIDES), List.of(Outline.circle(0, 0, radius - t, SIDES)));
  }
}
