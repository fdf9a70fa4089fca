package org.underlee.layout;

import static org.underlee.kit.SheetValue.BATTEN_DEPTH;
import static org.underlee.kit.SheetValue.BATTEN_END;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_GRIP;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_WIDTH;
import static org.underlee.kit.SheetValue.BATTEN_SPACING;
import static org.underlee.kit.SheetValue.BATTEN_SPAN;
import static org.underlee.kit.SheetValue.BATTEN_WIDTH;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The battens across the joists that sheets are screwed to, and the straps that hang them from the
 * joists' sides: each batten hangs lower than the one uphill of it, so that the fall is theirs.
 */
final class BattenBuilder {
  /** Kept between a hanger and what stands in the bay beside it. */
  private static final double BESIDE = 0.005;

  /** A batten is moved aside by steps of this. */
  private static final double STEP = 0.01;

  /** Battens more than the spacing asks for, where moved ones stand too far apart. */
  private static final int MOST_MORE = 5;

  private final FieldPlan plan;
  private final PartNames names;
  private final Kit kit;
  private final List<Part> battens = new ArrayList<>();
  private final List<Part> hangers = new ArrayList<>();

  BattenBuilder(FieldPlan plan, PartNames names) {
    this.plan = plan;
    this.names = names;
    this.kit = plan.kit();
  }

  /** Battens, then their hangers. */
  List<Part> parts() {
    return Stream.concat(battens.stream(), hangers.stream()).toList();
  }

  BattenBuilder add(SheetGroup group) {
    List<Double> stations = stations(group);
    double apart =
        stations.size() < 2
            ? 0
            : (stations.get(stations.size() - 1) - stations.get(0)) / (stations.size() - 1);
    for (double v : stations) {
      for (Interval piece : pieces(group.lines(), v)) {
        batten(group, piece, v, apart);
      }
    }
    return this;
  }

  /**
   * Level stations of the battens' middles: equally spaced, each moved to the nearest place where
   * its hangers meet nothing that stands between the joists; one more where that makes a space too
   * wide.
   */
  private List<Double> stations(SheetGroup group) {
    Interval along = group.along();
    double inner = along.length() - 2 * kit.get(BATTEN_END);
    int gaps = Math.max(1, GutterBuilder.gaps(inner, kit.get(BATTEN_SPACING)));
    List<Double> stations = stations(group, gaps);
    for (int more = 1; more <= MOST_MORE && isTooWide(stations); more++) {
      stations = stations(group, gaps + more);
    }
    return stations;
  }

  private List<Double> stations(SheetGroup group, int gaps) {
    double from = group.along().from() + kit.get(BATTEN_END);
    double inner = group.along().length() - 2 * kit.get(BATTEN_END);
    List<Double> stations = new ArrayList<>();
    for (int i = 0; i <= gaps; i++) {
      double v = free(group, from + inner * i / gaps);
      if (stations.isEmpty() || v - stations.get(stations.size() - 1) > 2 * kit.get(BATTEN_WIDTH)) {
        stations.add(v);
      }
    }
    return stations;
  }

  private boolean isTooWide(List<Double> stations) {
    for (int i = 0; i + 1 < stations.size(); i++) {
      if (stations.get(i + 1) - stations.get(i) > kit.get(BATTEN_SPACING) + SeatRange.SAME) {
        return true;
      }
    }
    return false;
  }

  private double free(SheetGroup group, double v) {
    double half = kit.get(BATTEN_WIDTH) / 2;
    for (double off = 0; off < kit.get(BATTEN_SPACING); off += STEP) {
      for (double at : List.of(v - off, v + off)) {
        if (group.along().contains(at - half)
            && group.along().contains(at + half)
            && pieces(group.lines(), at).stream().allMatch(p -> isHung(group, p, at))) {
          return at;
        }
      }
    }
    return v;
  }

  private boolean isHung(SheetGroup group, Interval piece, double v) {
    return !hooks(group, piece, v).isEmpty();
  }

  /** The furthest line that a batten from another line reaches in one stock length. */
  private int reach(List<JoistLine> lines, int from, double v) {
    List<Double> lengths = kit.item(Items.BATTEN).stockLengths();
    double longest = lengths.get(lengths.size() - 1);
    int to = from + 1;
    while (to + 1 < lines.size()
        && lines.get(to + 1).rightAt(v) - lines.get(from).leftAt(v) <= longest) {
      to++;
    }
    return to;
  }

  /** Numbers of the lines from and to which each piece of a batten reaches. */
  private List<Interval> pieces(List<JoistLine> lines, double v) {
    List<Interval> pieces = new ArrayList<>();
    int from = 0;
    while (from < lines.size() - 1) {
      int to = reach(lines, from, v);
      pieces.add(new Interval(from, to));
      from = to;
    }
    return pieces;
  }

  /**
   * A hanger's place: beside a joist line.
   *
   * @param into +1 when it hangs in the bay on the high-u side
   */
  private record Hook(JoistLine line, int into) {}

  /**
   * The fewest hangers that hold a piece, each as far from the last as it may be; empty where none
   * do, because something stands beside the joists.
   */
  private List<Hook> hooks(SheetGroup group, Interval piece, double v) {
    List<Hook> free = new ArrayList<>();
    for (int i = (int) piece.from(); i <= (int) piece.to(); i++) {
      JoistLine line = group.lines().get(i);
      boolean right = i < (int) piece.to() && isFree(group.runs().get(i), v);
      boolean left = i > (int) piece.from() && isFree(group.runs().get(i - 1), v);
      if (right || left) {
        free.add(new Hook(line, right ? 1 : -1));
      }
    }
    double span = kit.get(BATTEN_SPAN);
    List<Hook> hooks = new ArrayList<>();
    double held = group.lines().get((int) piece.from()).centre(v);
    double end = group.lines().get((int) piece.to()).centre(v);
    for (int i = 0; i < free.size(); i++) {
      double here = free.get(i).line.centre(v);
      double reach = hooks.isEmpty() ? span / 2 : span;
      if (here - held > reach + SeatRange.SAME) {
        return List.of();
      }
      boolean last = i + 1 == free.size();
      boolean needed = last || free.get(i + 1).line.centre(v) - held > reach || hooks.isEmpty();
      if (needed) {
        hooks.add(free.get(i));
        held = here;
      }
    }
    return end - held > span / 2 ? List.of() : hooks;
  }

  /** Whether nothing stands in the bay at the station, as high as a hanger reaches. */
  private boolean isFree(BayRun run, double v) {
    double reach = kit.get(BATTEN_HANGER_WIDTH) / 2 + BESIDE;
    Interval stretch = new Interval(v - reach, v + reach);
    double head = run.bay().joistBottom(v) + kit.get(BATTEN_HANGER_GRIP);
    double foot = plan.seat(v);
    return Obstacle.in(run).stream()
        .noneMatch(
            o ->
                !o.stretch().meet(stretch).isEmpty()
                    && o.heights().from() < head
                    && o.heights().to() > foot);
  }

  private void batten(SheetGroup group, Interval piece, double v, double apart) {
    List<JoistLine> lines = group.lines().subList((int) piece.from(), (int) piece.to() + 1);
    JoistLine first = lines.get(0);
    JoistLine last = lines.get(lines.size() - 1);
    boolean outerLeft = first.equals(group.lines().get(0));
    boolean outerRight = last.equals(group.lines().get(group.lines().size() - 1));
    Interval across =
        new Interval(
            outerLeft ? first.leftAt(v) : first.centre(v),
            outerRight ? last.rightAt(v) : last.centre(v));
    double half = kit.get(BATTEN_WIDTH) / 2;
    double bottom = plan.seat(v - half);
    battens.add(
        names.inField(
            PartKind.BATTEN,
            battens.size() + 1,
            PartNames.Shape.of(
                    Items.BATTEN,
                    across.length(),
                    kit.get(BATTEN_WIDTH),
                    List.of(bar(across, v, bottom)))
                .cutFrom(Outline.rectangle(-half, 0, half, kit.get(BATTEN_DEPTH)))
                .derived(derivations(lines, across, apart)),
            "carries the sheets, level across the joists, lower than the batten uphill of it"));
    hooks(group, piece, v).forEach(h -> hanger(h.line, v, bottom + kit.get(BATTEN_DEPTH), h.into));
  }

  private Extrusion bar(Interval across, double v, double bottom) {
    double half = kit.get(BATTEN_WIDTH) / 2;
    Vec3 origin = new Vec3(across.from(), v, bottom);
    Transform end = new Transform(origin, Vec3.Y, Vec3.Z, Vec3.X);
    return Extrusion.straight(
        plan.frame().after(end),
        Outline.rectangle(-half, 0, half, kit.get(BATTEN_DEPTH)),
        across.length());
  }

  private List<Derivation> derivations(List<JoistLine> lines, Interval across, double apart) {
    Measured joists =
        new Measured(
            List.of(
                RunReckoning.element(lines.get(0)),
                RunReckoning.element(lines.get(lines.size() - 1))));
    List<Derivation> all = new ArrayList<>();
    all.add(
        new Reckoning(kit)
            .from(
                Words.of("from %s to %s", lines.get(0).id(), lines.get(lines.size() - 1).id()),
                across.length(),
                joists)
            .gives(Dimension.LENGTH));
    all.add(new Reckoning(kit).from(BATTEN_WIDTH).gives(Dimension.WIDTH));
    if (apart > 0) {
      Reckoning spacing = new Reckoning(kit);
      all.add(
          spacing
              .from(
                  Words.of(
                      "from one batten to the next on average, none more than %s",
                      Quantity.length(kit.get(BATTEN_SPACING))),
                  apart,
                  spacing.origin(BATTEN_SPACING))
              .gives(Dimension.SPACING));
    }
    return all;
  }

  /**
   * A strap down a joist's side, with a foot on the batten.
   *
   * @param into +1 when it hangs in the bay on the high-u side
   */
  private void hanger(JoistLine line, double v, double top, int into) {
    StockItem stock = kit.item(Items.BATTEN_HANGER);
    double t = stock.thickness();
    double wide = kit.get(BATTEN_HANGER_WIDTH);
    double half = wide / 2;
    double face =
        into > 0
            ? Math.max(line.rightAt(v - half), line.rightAt(v + half))
            : Math.min(line.leftAt(v - half), line.leftAt(v + half));
    double head = line.bottomAt(v) + kit.get(BATTEN_HANGER_GRIP);
    Vec3 out = Vec3.X.times(into);
    List<Extrusion> bodies =
        List.of(
            Sheet.prism(plan.frame(), upright(face, v, half, top, head), out.times(t)),
            Sheet.prism(
                plan.frame(),
                upright(face + into * t, v, half, top, top + t),
                out.times(wide - t)));
    Reckoning length =
        new Reckoning(kit)
            .from(
                Words.of("from the batten's top up to the joist's bottom"),
                line.bottomAt(v) - top,
                new Measured(List.of(RunReckoning.element(line))))
            .plus(BATTEN_HANGER_GRIP)
            .plus(BATTEN_HANGER_WIDTH);
    hangers.add(
        names.inField(
            PartKind.BATTEN_HANGER,
            hangers.size() + 1,
            PartNames.Shape.of(Items.BATTEN_HANGER, length.value(), wide, bodies)
                .derived(
                    List.of(
                        length.gives(Dimension.LENGTH),
                        new Reckoning(kit).from(BATTEN_HANGER_WIDTH).gives(Dimension.WIDTH))),
            "hangs the batten from the side of " + line.id()));
  }

  private static List<Vec3> upright(double u, double v, double half, double from, double to) {
    return List.of(
        new Vec3(u, v - half, from),
        new Vec3(u, v + half, from),
        new Vec3(u, v + half, to),
        new Vec3(u, v - half, to));
  }
}
