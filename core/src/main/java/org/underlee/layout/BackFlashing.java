package org.underlee.layout;

import static org.underlee.kit.DrainValue.FLASHING_DAM;
import static org.underlee.kit.DrainValue.FLASHING_LAP;
import static org.underlee.kit.DrainValue.FLASHING_LEG;
import static org.underlee.kit.DrainValue.FLASHING_OVER;
import static org.underlee.kit.DrainValue.FLASHING_UNDER;
import static org.underlee.kit.DrainValue.GUTTER_DEPTH;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.framing.Member;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/**
 * The flashing behind a gutter: from the face, over the gutter's back edge, so that what falls
 * between the two drips into the gutter.
 *
 * <p>Where the hangers' straps turn down the face, it lies over the straps and its back is turned
 * up against the face. Where they turn up, it lies under them; if the face ends above the gutter,
 * as a rim's does, it reaches under the face, past what drips from there, and its back is turned up
 * behind.
 *
 * @param standing plans of the field's posts
 */
record BackFlashing(FieldPlan plan, GutterLine line, List<PlanShape> standing) {
  /** Kept between it, the hangers' straps and the wood above. */
  private static final double PLAY = 0.0005;

  private static final double SAME = 1e-9;

  /** A stretch along the gutter with one back edge. */
  private record Span(Interval across, double back, boolean underFace, boolean turnedUp) {
    /** Over the next piece, beside what is turned up of it. */
    Span lapping(double sheet) {
      return new Span(across, back - sheet, underFace, false);
    }

    Span over(Interval other) {
      return new Span(other, back, underFace, turnedUp);
    }
  }

  static BackFlashing behind(FieldPlan plan, GutterLine line) {
    return new BackFlashing(
        plan,
        line,
        plan.bays().field().posts().stream()
            .map((Member m) -> plan.bays().field().shapeOf(m))
            .sorted(Comparator.comparingDouble(p -> p.across().from()))
            .toList());
  }

  /** How far the straps, where they turn up, lie above the rim, to pass over the flashing. */
  static double lift(FieldPlan plan, double gap, double reach) {
    Kit kit = plan.kit();
    int sheets = pieces(kit, new Interval(0, reach)).size();
    double width =
        gap + kit.get(FLASHING_UNDER) + kit.item(Items.GUTTER).thickness() + kit.get(FLASHING_OVER);
    return 2 * PLAY + sheets * kit.flashing().thickness() + kit.flashingFall() * width;
  }

  /** The longest piece that the strip's sheet gives. */
  static double longest(Kit kit) {
    return kit.flashing().stockLengths().stream().mapToDouble(l -> l).max().orElseThrow();
  }

  /** Its pieces along one piece of gutter, level, without their laps. */
  static List<Interval> pieces(Kit kit, Interval along) {
    double slope = Math.hypot(1, kit.gutterFall());
    return new Laps(longest(kit) / slope, kit.get(FLASHING_LAP)).split(along, false);
  }

  /** The most pieces that lie one on the other. */
  private int sheets() {
    return pieces(plan.kit(), new Interval(0, line.near().longest())).size();
  }

  double thickness() {
    return plan.kit().flashing().thickness();
  }

  /** Station of its drip edge. */
  private double drip() {
    return line.back() - plan.kit().item(Items.GUTTER).thickness() - plan.kit().get(FLASHING_OVER);
  }

  /** Height of its underside at the drip edge, above the rim. */
  private double aboveRim() {
    double straps =
        plan.kit().item(Items.HANGER).thickness() + GutterBuilder.STRAP * plan.kit().gutterFall();
    return PLAY + (line.strapsTurnUp() ? 0 : straps);
  }

  /** Height of its upper side at a station, where the gutter is highest. */
  private double topAt(double station) {
    double rise = plan.kit().flashingFall() * (station - drip());
    return line.highRim() + aboveRim() + thickness() + rise;
  }

  /** Whether the hangers' legs stand on its back instead of on the face. */
  boolean isBehindLegs() {
    return line.strapsTurnUp() && !reachesUnder();
  }

  /** Whether it goes on under a face that ends above it. */
  boolean reachesUnder() {
    double top = topAt(line.face() + plan.kit().get(FLASHING_UNDER));
    return line.strapsTurnUp()
        && line.near().faceBottom() > top + plan.kit().get(FLASHING_DAM) + PLAY;
  }

  /** Its widest stretch, flat: with what is turned up. */
  double flatWidth() {
    return width() + turnedUp(widest());
  }

  /** The widest stretch of one piece, flat: before a post it is narrower and turned up higher. */
  double flatWidth(GutterBuilder.Piece piece, Interval own) {
    return spans(piece, own).stream()
        .mapToDouble(s -> s.back - drip() + turnedUp(s))
        .max()
        .orElse(flatWidth());
  }

  double width() {
    return widest().back - drip();
  }

  double turnedUp() {
    return turnedUp(widest());
  }

  private Span widest() {
    return new Span(
        new Interval(0, 0),
        line.face() + (reachesUnder() ? plan.kit().get(FLASHING_UNDER) : 0),
        reachesUnder(),
        true);
  }

  private double turnedUp(Span span) {
    double top = topAt(span.back);
    double room = line.lowestJoist() - PLAY - top - (sheets() - 1) * thickness();
    double most = plan.kit().get(span.underFace ? FLASHING_DAM : FLASHING_LEG);
    return Math.max(0, Math.min(most, room));
  }

  /**
   * The solids along one piece of gutter.
   *
   * @param piece whose frame they are in: x level across, y up, z toward the outlet
   * @param own from the gutter's high end, level
   * @param lap how far it goes on over the next piece
   * @param above how many pieces' sheets it lies on
   */
  List<Extrusion> bodies(
      GutterBuilder.Piece piece, Transform frame, Interval own, double lap, int above) {
    List<Span> spans = new ArrayList<>(spans(piece, own));
    spans(piece, new Interval(own.to(), own.to() + lap))
        .forEach(s -> spans.add(s.lapping(thickness())));
    return spans.stream().map(s -> body(piece, frame, s, above * thickness())).toList();
  }

  private Extrusion body(GutterBuilder.Piece piece, Transform frame, Span span, double lifted) {
    double way = Math.signum(piece.outlet().u() - piece.highU());
    double start = way > 0 ? span.across.from() : span.across.to();
    double from = way * (start - piece.highU());
    double slope = plan.kit().gutterFall();
    double length = span.across.length();
    Transform at =
        new Transform(
            frame.apply(new Vec3(0, -slope * from, from)), frame.x(), frame.y(), frame.z());
    return new Extrusion(at, section(span, way, lifted), new Vec3(0, -slope * length, length));
  }

  private Outline section(Span span, double way, double lifted) {
    double t = thickness();
    double low = plan.kit().get(GUTTER_DEPTH) + aboveRim() + lifted;
    double front = drip() - line.middle();
    double back = span.back - line.middle();
    double high = low + plan.kit().flashingFall() * (back - front);
    double up = span.turnedUp ? turnedUp(span) : 0;
    List<Vec2> ring = new ArrayList<>();
    ring.add(new Vec2(way * front, low));
    ring.add(new Vec2(way * back, high));
    ring.add(new Vec2(way * back, high + t + up));
    if (up > 0) {
      ring.add(new Vec2(way * (back - t), high + t + up));
      ring.add(new Vec2(way * (back - t), high + t - plan.kit().flashingFall() * t));
    }
    ring.add(new Vec2(way * front, low + t));
    return Outline.of(ring);
  }

  /** Between posts it reaches to the face; before a post, to the post. */
  private List<Span> spans(GutterBuilder.Piece piece, Interval reach) {
    double way = Math.signum(piece.outlet().u() - piece.highU());
    double high = piece.highU() + way * reach.from();
    double low = piece.highU() + way * reach.to();
    Interval whole = new Interval(Math.min(high, low), Math.max(high, low));
    List<Span> spans = new ArrayList<>();
    double done = whole.from();
    Span open = widest();
    for (PlanShape post : posts()) {
      Interval before = post.across().meet(whole);
      if (!before.isEmpty() && before.length() > SAME && meets(post, before, piece)) {
        add(spans, new Interval(done, before.from()), open);
        add(spans, before, new Span(before, post.along().from(), false, true));
        done = Math.max(done, before.to());
      }
    }
    add(spans, new Interval(done, whole.to()), open);
    return spans;
  }

  /** Whether a post rises above the flashing's underside there: the gutter falls along it. */
  private boolean meets(PlanShape post, Interval before, GutterBuilder.Piece piece) {
    double rim =
        Math.min(
            line.rimAt(before.from(), piece.outlet()), line.rimAt(before.to(), piece.outlet()));
    double rise = plan.kit().flashingFall() * Math.max(0, post.along().from() - drip());
    return post.heights().to() > rim + aboveRim() + rise;
  }

  private static void add(List<Span> spans, Interval across, Span like) {
    if (across.length() > SAME) {
      spans.add(like.over(across));
    }
  }

  /** Posts that stand where the flashing is and do not begin above it, in order. */
  private List<PlanShape> posts() {
    double back = widest().back;
    return standing.stream()
        .filter(p -> p.along().from() < back && p.along().to() > drip())
        .filter(p -> p.heights().from() < line.highRim())
        .toList();
  }
}
