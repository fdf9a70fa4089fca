package org.underlee.layout;

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
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;

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
    RailReckoning reckoning = new RailReckoning(plan, run, perStation, stretches);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Interval own = stretches.get(i);
      boolean last = i == stretches.size() - 1;
      double under = i * stock.thickness();
      List<RailGap> gaps = gaps(run, side, own, start, perStation, under);
      RailShape form =
          new RailShape(plan.kit(), lowered(local, under), side.into(), own, last ? 0 : lap);
      List<Derivation> derivations = reckoning.of(i, under, form.lap(), gaps);
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

  static double longest(Kit kit) {
    List<Double> lengths = kit.item(Items.SIDE_RAIL).stockLengths();
    return lengths.get(lengths.size() - 1);
  }

  /** Equal pieces, but for joints that would lie in a notch: they go where the pieces allow. */
  private List<Interval> stretches(BayRun run, RailSide side, double length, double perStation) {
    double lap = plan.kit().get(PAN_LAP);
    List<Interval> equal = new Laps(longest(plan.kit()), lap).split(new Interval(0, length), false);
    List<Interval> moved = new ArrayList<>();
    double done = 0;
    for (Interval own : equal) {
      boolean last = moved.size() == equal.size() - 1;
      double least =
          length
              - longest(plan.kit())
              - (equal.size() - moved.size() - 2) * (longest(plan.kit()) - lap);
      double to =
          last
              ? length
              : joint(
                  run,
                  side,
                  own.to(),
                  new Interval(least, done + longest(plan.kit()) - lap),
                  perStation);
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

  private List<RailGap> gaps(
      BayRun run, RailSide side, Interval own, double start, double perStation, double under) {
    List<RailGap> gaps = new ArrayList<>();
    for (SeatRanges.Notch notch : notches(run, side).toList()) {
      Interval gap =
          new Interval(
                  (notch.stretch().from() - start) * perStation,
                  (notch.stretch().to() - start) * perStation)
              .meet(own);
      if (!gap.isEmpty()) {
        double height = notch.bottom() - plan.seat(notch.stretch().from()) + under;
        gaps.add(new RailGap(notch.obstacle(), gap, height, notch.bottom()));
      }
    }
    return gaps;
  }

  private Stream<SeatRanges.Notch> notches(BayRun run, RailSide side) {
    return seats.notches(run, plan.seatHigh()).stream().filter(n -> n.rails().contains(side));
  }

  private List<RailShape.Step> profile(Interval own, List<RailGap> gaps) {
    TreeSet<Double> stops = new TreeSet<>(List.of(own.from(), own.to()));
    gaps.forEach(g -> stops.addAll(List.of(g.stretch().from(), g.stretch().to())));
    List<RailShape.Step> steps = new ArrayList<>();
    List<Double> at = List.copyOf(stops);
    for (int i = 0; i + 1 < at.size(); i++) {
      Interval stretch = new Interval(at.get(i), at.get(i + 1));
      double height =
          gaps.stream()
              .filter(g -> g.stretch().contains(stretch.middle()))
              .mapToDouble(RailGap::height)
              .min()
              .orElse(plan.kit().get(RAIL_LEG));
      steps.add(new RailShape.Step(stretch, Math.min(height, plan.kit().get(RAIL_LEG))));
    }
    return steps;
  }

  /** Where a joist's bottom is above what is left of the leg, water would drip behind it. */
  private List<RailShape.Tongue> tongues(BayRun run, List<RailGap> gaps) {
    return gaps.stream()
        .filter(g -> g.bottom() < run.bay().joistBottom(g.obstacle().stretch().middle()) + BELOW)
        .map(g -> new RailShape.Tongue(g.stretch(), g.height()))
        .toList();
  }

  private List<Cut> cuts(List<RailGap> gaps, RailShape form) {
    double leg = plan.kit().get(RAIL_LEG);
    Interval own = form.own();
    List<Cut> cuts = new ArrayList<>();
    for (RailGap g : gaps) {
      cuts.add(
          new Cut.Notch(g.stretch().from() - own.from(), g.stretch().length(), leg - g.height()));
    }
    if (form.lap() > 0) {
      cuts.add(new Cut.Notch(own.length(), form.lap(), leg));
    }
    return cuts;
  }

  private static String why(BayRun run, RailSide side) {
    return "carries the pan's edge, screwed to the face of " + side.line(run.bay()).id();
  }
}
