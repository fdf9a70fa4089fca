package org.underlee.layout;

import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_LAP;
import static org.underlee.kit.PanValue.RAIL_LEDGE;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.StockItem;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** The two side rails of a bay: a leg flat on the joist face, and a ledge that carries the pan. */
record RailBuilder(FieldPlan plan, PartNames names, SeatRanges seats) {
  /** A leg that ends less than this above the joist's bottom is taken to end below it. */
  private static final double BELOW = 0.001;

  /** Kept between a notch and a lap. */
  private static final double JOINT_OFF_NOTCH = 0.01;

  List<Part> parts(BayRun run) {
    List<Part> parts = new ArrayList<>();
    for (RailSide side : RailSide.values()) {
      parts.addAll(rail(run, side, parts.size() + 1));
    }
    return parts;
  }

  private List<Part> rail(BayRun run, RailSide side, int firstOrdinal) {
    Linear face = side.face(run.bay());
    StockItem stock = plan.kit().item(Items.SIDE_RAIL);
    double start = run.railStart();
    Vec3 along = new Vec3(face.slope(), 1, -plan.fall());
    double perStation = along.length();
    double length = (run.railEnd() - start) * perStation;
    double lap = plan.kit().get(PAN_LAP);
    List<Interval> stretches = stretches(run, side, length, perStation);
    Transform local = face(new Vec3(face.at(start), start, plan.seat(start)), along.unit());
    RunReckoning reckoning = new RunReckoning(plan, run);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Interval own = stretches.get(i);
      boolean last = i == stretches.size() - 1;
      double under = i * stock.thickness();
      List<Gap> gaps = gaps(run, side, own, start, perStation, under);
      RailShape form =
          new RailShape(plan.kit(), lowered(local, under), side.into(), own, last ? 0 : lap);
      List<Derivation> derivations = new ArrayList<>();
      derivations.add(lengthWhy(reckoning, perStation, stretches, i));
      derivations.add(widthWhy());
      derivations.add(reckoning.fall());
      derivations.addAll(
          reckoning.seats(
              start + own.from() / perStation,
              start + (own.to() + form.lap()) / perStation,
              under,
              sheet()));
      derivations.addAll(notchesWhy(gaps, own));
      if (!last) {
        derivations.addAll(lapWhy(own, gaps.size() + 1));
      }
      PartNames.Shape shape =
          PartNames.Shape.of(
                  stock.id(),
                  own.length() + form.lap(),
                  plan.kit().get(RAIL_LEDGE),
                  form.bodies(profile(own, gaps), tongues(run, gaps)))
              .falling(plan.fall())
              .cutFrom(section(stock.thickness()))
              .cut(cuts(gaps, form))
              .derived(derivations);
      parts.add(
          names.inBay(run.bay().id(), PartKind.SIDE_RAIL, firstOrdinal + i, shape, why(run, side)));
    }
    return parts;
  }

  private double longest() {
    List<Double> lengths = plan.kit().item(Items.SIDE_RAIL).stockLengths();
    return lengths.get(lengths.size() - 1);
  }

  /** Equal pieces, but for joints that would lie in a notch: they go where the pieces allow. */
  private List<Interval> stretches(BayRun run, RailSide side, double length, double perStation) {
    double lap = plan.kit().get(PAN_LAP);
    List<Interval> equal = new Laps(longest(), lap).split(new Interval(0, length), false);
    List<Interval> moved = new ArrayList<>();
    double done = 0;
    for (Interval own : equal) {
      boolean last = moved.size() == equal.size() - 1;
      double least = length - longest() - (equal.size() - moved.size() - 2) * (longest() - lap);
      double to =
          last
              ? length
              : joint(run, side, own.to(), new Interval(least, done + longest() - lap), perStation);
      moved.add(new Interval(done, to));
      done = to;
    }
    return moved;
  }

  /** The place for a joint that is nearest to the given one and whose lap meets no notch. */
  private double joint(
      BayRun run, RailSide side, double equal, Interval allowed, double perStation) {
    double lap = plan.kit().get(PAN_LAP);
    List<Interval> notches =
        notches(run, side)
            .map(
                n ->
                    new Interval(
                        (n.stretch().from() - run.railStart()) * perStation - lap - JOINT_OFF_NOTCH,
                        (n.stretch().to() - run.railStart()) * perStation + JOINT_OFF_NOTCH))
            .toList();
    return Stream.concat(
            Stream.of(equal), notches.stream().flatMap(n -> Stream.of(n.from(), n.to())))
        .filter(c -> allowed.contains(c))
        .filter(c -> notches.stream().noneMatch(n -> c > n.from() && c < n.to()))
        .min(Comparator.comparingDouble((Double c) -> Math.abs(c - equal)).thenComparing(c -> c))
        .orElse(equal);
  }

  /** Each piece lies under the one uphill of it, by its sheet. */
  private static Transform lowered(Transform local, double under) {
    return new Transform(
        local.origin().minus(local.y().times(under)), local.x(), local.y(), local.z());
  }

  private KitValue sheet() {
    return new KitValue(Items.SIDE_RAIL, plan.kit().item(Items.SIDE_RAIL).source());
  }

  /** x along the rail, y up its leg, z toward growing u. */
  private Transform face(Vec3 origin, Vec3 along) {
    Vec3 up = Vec3.Z.minus(along.times(along.z())).unit();
    return plan.frame().after(new Transform(origin, along, up, along.cross(up)));
  }

  private Outline section(double t) {
    double leg = plan.kit().get(RAIL_LEG);
    double ledge = plan.kit().get(RAIL_LEDGE);
    return Outline.of(
        List.of(
            new Vec2(0, -t),
            new Vec2(ledge, -t),
            new Vec2(ledge, 0),
            new Vec2(t, 0),
            new Vec2(t, leg),
            new Vec2(0, leg)));
  }

  /**
   * What is cut out of the leg.
   *
   * @param obstacle what it makes room for
   * @param stretch along the rail
   * @param height of the leg left below it
   * @param bottom the same in the field's frame, where the notch begins
   */
  private record Gap(Obstacle obstacle, Interval stretch, double height, double bottom) {}

  private List<Gap> gaps(
      BayRun run, RailSide side, Interval own, double start, double perStation, double under) {
    List<Gap> gaps = new ArrayList<>();
    for (SeatRanges.Notch notch : notches(run, side).toList()) {
      Interval gap =
          new Interval(
                  (notch.stretch().from() - start) * perStation,
                  (notch.stretch().to() - start) * perStation)
              .meet(own);
      if (!gap.isEmpty()) {
        double height = notch.bottom() - plan.seat(notch.stretch().from()) + under;
        gaps.add(new Gap(notch.obstacle(), gap, height, notch.bottom()));
      }
    }
    return gaps;
  }

  private Stream<SeatRanges.Notch> notches(BayRun run, RailSide side) {
    return seats.notches(run, plan.seatHigh()).stream().filter(n -> n.rails().contains(side));
  }

  private List<RailShape.Step> profile(Interval own, List<Gap> gaps) {
    TreeSet<Double> stops = new TreeSet<>(List.of(own.from(), own.to()));
    gaps.forEach(g -> stops.addAll(List.of(g.stretch.from(), g.stretch.to())));
    List<RailShape.Step> steps = new ArrayList<>();
    List<Double> at = List.copyOf(stops);
    for (int i = 0; i + 1 < at.size(); i++) {
      Interval stretch = new Interval(at.get(i), at.get(i + 1));
      double height =
          gaps.stream()
              .filter(g -> g.stretch.contains(stretch.middle()))
              .mapToDouble(Gap::height)
              .min()
              .orElse(plan.kit().get(RAIL_LEG));
      steps.add(new RailShape.Step(stretch, Math.min(height, plan.kit().get(RAIL_LEG))));
    }
    return steps;
  }

  /** Where a joist's bottom is above what is left of the leg, water would drip behind it. */
  private List<RailShape.Tongue> tongues(BayRun run, List<Gap> gaps) {
    return gaps.stream()
        .filter(g -> g.bottom < run.bay().joistBottom(g.obstacle.stretch().middle()) + BELOW)
        .map(g -> new RailShape.Tongue(g.stretch, g.height))
        .toList();
  }

  private List<Cut> cuts(List<Gap> gaps, RailShape form) {
    double leg = plan.kit().get(RAIL_LEG);
    Interval own = form.own();
    List<Cut> cuts = new ArrayList<>();
    for (Gap g : gaps) {
      cuts.add(new Cut.Notch(g.stretch.from() - own.from(), g.stretch.length(), leg - g.height));
    }
    if (form.lap() > 0) {
      cuts.add(new Cut.Notch(own.length(), form.lap(), leg));
    }
    return cuts;
  }

  private Derivation lengthWhy(
      RunReckoning reckoning, double perStation, List<Interval> stretches, int index) {
    int count = stretches.size();
    Reckoning length = reckoning.railLength();
    double askew = perStation / Math.hypot(1, plan.fall());
    if (askew - 1 > SeatRange.SAME * SeatRange.SAME) {
      length.times("along a joist that runs askew", askew, reckoning.joists());
    }
    if (count > 1) {
      length.over(
          Words.of(
              "equal pieces, none longer with its lap than the stock's %s",
              Quantity.length(longest())),
          count,
          sheet());
      double moved = stretches.get(index).length() - stretches.get(count - 1).to() / count;
      if (Math.abs(moved) > SeatRange.SAME) {
        length.plus("so that no notch lies at a joint", moved, Reckoning.OWN);
      }
    }
    boolean last = index == count - 1;
    return (last ? length : length.plus(PAN_LAP)).gives(Dimension.LENGTH);
  }

  /** The leg is cut away where the ledge lies on the next piece's. */
  private List<Derivation> lapWhy(Interval own, int ordinal) {
    Reckoning from =
        new Reckoning(plan.kit())
            .from(Words.of("where the next piece begins"), own.length(), Reckoning.OWN);
    return List.of(
        from.gives(Dimension.NOTCH_FROM, ordinal),
        new Reckoning(plan.kit()).from(PAN_LAP).gives(Dimension.NOTCH_LENGTH, ordinal),
        new Reckoning(plan.kit()).from(RAIL_LEG).gives(Dimension.NOTCH_DEPTH, ordinal));
  }

  private Derivation widthWhy() {
    return new Reckoning(plan.kit()).from(RAIL_LEDGE).gives(Dimension.WIDTH);
  }

  private List<Derivation> notchesWhy(List<Gap> gaps, Interval own) {
    List<Derivation> all = new ArrayList<>();
    for (int i = 0; i < gaps.size(); i++) {
      Gap gap = gaps.get(i);
      all.add(notchFrom(gap, own).gives(Dimension.NOTCH_FROM, i + 1));
      all.add(notchLength(gap, own).gives(Dimension.NOTCH_LENGTH, i + 1));
      all.add(notchDepth(gap).gives(Dimension.NOTCH_DEPTH, i + 1));
    }
    return all;
  }

  private Reckoning notchFrom(Gap gap, Interval own) {
    double from = gap.stretch.from() - own.from();
    Reckoning r = new Reckoning(plan.kit());
    return from <= 0
        ? r.from(Words.of("goes on from the piece uphill"), from, Reckoning.OWN)
        : r.from(
                Words.of("near face of %s from the rail's high end", gap.obstacle.words()),
                from + plan.kit().get(NOTCH_CLEARANCE),
                measured(gap))
            .minus(NOTCH_CLEARANCE);
  }

  private Reckoning notchLength(Gap gap, Interval own) {
    Reckoning r = new Reckoning(plan.kit());
    boolean whole = gap.stretch.from() > own.from() && gap.stretch.to() < own.to();
    return whole
        ? r.from(
                Words.of("length of %s along the rail", gap.obstacle.words()),
                gap.stretch.length() - 2 * plan.kit().get(NOTCH_CLEARANCE),
                measured(gap))
            .plus(NOTCH_CLEARANCE)
            .plus(NOTCH_CLEARANCE)
        : r.from(
            Words.of("part of the notch that falls on this piece"),
            gap.stretch.length(),
            measured(gap));
  }

  private Reckoning notchDepth(Gap gap) {
    return new Reckoning(plan.kit())
        .from(RAIL_LEG)
        .minus(
            "from the seat up to the underside of what stands there",
            gap.height + plan.kit().get(NOTCH_CLEARANCE),
            measured(gap))
        .plus(NOTCH_CLEARANCE);
  }

  private static Measured measured(Gap gap) {
    return new Measured(List.of(gap.obstacle.element()));
  }

  private static String why(BayRun run, RailSide side) {
    return "carries the pan's edge, screwed to the face of " + side.line(run.bay()).id();
  }
}
