package org.underlee.layout;

import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;
import static org.underlee.kit.DrainValue.GUTTER_DEPTH;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;
import static org.underlee.kit.DrainValue.HANGER_END;
import static org.underlee.kit.DrainValue.HANGER_SPACING;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/** The gutter pieces with their end caps and hangers. */
final class GutterBuilder {
  /** Width of a hanger's strap, and how far its leg reaches along the face it is fixed to. */
  static final double STRAP = 0.025;

  static final double STRAP_LEG = 0.06;

  /** Kept between a hanger and what stands beside it: room for a rail's leg. */
  private static final double BESIDE = 0.005;

  private final FieldPlan plan;
  private final PartNames names;
  private final GutterLine line;
  private final Kit kit;
  private final BackFlashing flashing;
  private int caps;
  private int hangers;

  /**
   * Where a hanger's middle must not be; two short pieces that meet have theirs near each other.
   */
  private final Taken taken;

  GutterBuilder(FieldPlan plan, PartNames names, GutterLine line) {
    this.plan = plan;
    this.names = names;
    this.line = line;
    this.kit = plan.kit();
    this.flashing = BackFlashing.behind(plan, line);
    this.taken = taken();
  }

  /** The piece that falls to an outlet from one side. */
  record Piece(GutterLine.Outlet outlet, double highU) {
    double level() {
      return Math.abs(highU - outlet.u());
    }
  }

  static List<Piece> pieces(GutterLine line) {
    return line.outlets().stream()
        .flatMap(
            o ->
                java.util.stream.Stream.of(
                    new Piece(o, o.stretch().from()), new Piece(o, o.stretch().to())))
        .toList();
  }

  List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    List<Piece> pieces = pieces(line);
    for (int i = 0; i < pieces.size(); i++) {
      parts.add(gutter(pieces.get(i), i + 1));
    }
    pieces.forEach(p -> parts.add(cap(p)));
    pieces.forEach(p -> parts.addAll(hangers(p)));
    FlashingBuilder flashings = new FlashingBuilder(plan, names, line, flashing);
    pieces.forEach(p -> parts.addAll(flashings.parts(p, frame(p))));
    return parts;
  }

  private Part gutter(Piece piece, int ordinal) {
    double slope = kit.gutterFall();
    double length = piece.level() * Math.hypot(1, slope);
    Vec3 sweep = new Vec3(0, -piece.level() * slope, piece.level());
    PartNames.Shape shape =
        PartNames.Shape.of(
                Items.GUTTER,
                length,
                kit.get(GUTTER_WIDTH),
                List.of(new Extrusion(frame(piece), section(), sweep)))
            .falling(slope)
            .cutFrom(section())
            .derived(new GutterReckoning(plan, line).gutter(piece));
    return names.inField(
        PartKind.GUTTER,
        ordinal,
        shape,
        "along " + plan.lowEnd().words() + ", falling to its outlet; rim below the lowest drip");
  }

  /**
   * z level toward the outlet, x level across, y up; the origin on the floor's underside at the
   * high end. Ends are cut upright, so that two pieces meet face to face over their outlet.
   */
  private Transform frame(Piece piece) {
    double way = Math.signum(piece.outlet().u() - piece.highU());
    double w = line.rimAt(piece.highU(), piece.outlet()) - kit.get(GUTTER_DEPTH);
    Vec3 origin = new Vec3(piece.highU(), line.middle(), w);
    return plan.frame().after(Transform.frame(origin, new Vec3(way, 0, 0), new Vec3(0, way, 0)));
  }

  private Outline section() {
    double half = kit.get(GUTTER_WIDTH) / 2;
    double depth = kit.get(GUTTER_DEPTH);
    double t = kit.item(Items.GUTTER).thickness();
    return Outline.of(
        List.of(
            new Vec2(-half, 0),
            new Vec2(half, 0),
            new Vec2(half, depth),
            new Vec2(half - t, depth),
            new Vec2(half - t, t),
            new Vec2(-half + t, t),
            new Vec2(-half + t, depth),
            new Vec2(-half, depth)));
  }

  /** Set on the outside of the piece's high end. */
  private Part cap(Piece piece) {
    double half = kit.get(GUTTER_WIDTH) / 2;
    double t = kit.item(Items.END_CAP).thickness();
    Outline outline = Outline.rectangle(-half, 0, half, kit.get(GUTTER_DEPTH));
    return names.inField(
        PartKind.END_CAP,
        ++caps,
        PartNames.Shape.of(
                Items.END_CAP,
                t,
                kit.get(GUTTER_WIDTH),
                List.of(Sheet.plate(frame(piece), outline, -t, t)))
            .derived(new GutterReckoning(plan, line).cap()),
        "closes the gutter's high end");
  }

  private List<Part> hangers(Piece piece) {
    List<Part> parts = new ArrayList<>();
    double way = Math.signum(piece.outlet().u() - piece.highU());
    for (double along : stations(piece.level(), kit.get(HANGER_END), kit.get(HANGER_SPACING))) {
      parts.add(hanger(piece, clear(piece, piece.highU() + way * along)));
    }
    return parts;
  }

  /** Moved aside, to the nearest place where the hanger meets neither a joist nor a post. */
  private double clear(Piece piece, double u) {
    Interval gutter = piece.outlet().stretch();
    double chosen =
        taken.nearestFree(u, c -> gutter.contains(c - STRAP / 2) && gutter.contains(c + STRAP / 2));
    taken.add(new Interval(chosen - STRAP - BESIDE, chosen + STRAP + BESIDE));
    return chosen;
  }

  /** Joists that a hanger's leg rises between, and posts. */
  private Taken taken() {
    double reach = STRAP / 2 + BESIDE;
    Taken taken = new Taken();
    if (line.strapsTurnUp()) {
      for (JoistLine joist : plan.bays().field().lines()) {
        double v = line.face();
        taken.add(new Interval(joist.left().at(v) - reach, joist.right().at(v) + reach));
      }
    }
    GutterLine.postsBeside(plan, line.face())
        .forEach(p -> taken.add(new Interval(p.across().from() - reach, p.across().to() + reach)));
    return taken;
  }

  /**
   * Places along a length: one at the given distance from each end, the rest equally between, none
   * further apart than the spacing (common practice; count = ceil((L − 2e)/s) + 1). A piece too
   * short for two gets one in the middle.
   */
  static List<Double> stations(double length, double end, double spacing) {
    double inner = length - 2 * end;
    if (inner <= 0) {
      return List.of(length / 2);
    }
    int gaps = gaps(inner, spacing);
    List<Double> stations = new ArrayList<>();
    for (int i = 0; i <= gaps; i++) {
      stations.add(end + inner * i / gaps);
    }
    return stations;
  }

  static int gaps(double inner, double spacing) {
    return (int) Math.ceil(inner / spacing - 1e-9);
  }

  /** A strap across the rim, turned along the face behind the gutter to be screwed there. */
  private Part hanger(Piece piece, double u) {
    double t = kit.item(Items.HANGER).thickness();
    double rim = line.rimAt(u - STRAP / 2, piece.outlet());
    double other = line.rimAt(u + STRAP / 2, piece.outlet());
    double w = Math.max(rim, other) + line.lift();
    double front = line.back() - kit.get(GUTTER_WIDTH);
    double face = line.face() - (flashing.isBehindLegs() ? flashing.thickness() : 0);
    Outline across = Outline.rectangle(u - STRAP / 2, front, u + STRAP / 2, face - t);
    Interval leg = leg(w, t);
    Transform upright = new Transform(new Vec3(0, face, 0), Vec3.X, Vec3.Z, Vec3.Y.negated());
    Outline legOutline = Outline.rectangle(u - STRAP / 2, leg.from(), u + STRAP / 2, leg.to());
    List<Extrusion> bodies =
        List.of(
            Sheet.plate(plan.frame(), across, w, t),
            Sheet.plate(plan.frame().after(upright), legOutline, 0, t));
    return names.inField(
        PartKind.HANGER,
        ++hangers,
        PartNames.Shape.of(
                Items.HANGER, kit.get(GUTTER_WIDTH) + kit.get(GUTTER_BACK_GAP), STRAP, bodies)
            .derived(new GutterReckoning(plan, line).hanger(piece)),
        "holds the gutter, screwed to " + plan.lowEnd().words());
  }

  /** Down the face where it reaches below the rim, else up to it. */
  private Interval leg(double w, double t) {
    return !line.strapsTurnUp()
        ? new Interval(w + t - STRAP_LEG, w + t)
        : new Interval(w, Math.max(w, line.near().faceBottom()) + STRAP_LEG);
  }
}
