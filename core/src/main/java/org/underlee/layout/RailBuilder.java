package org.underlee.layout;

import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.RAIL_LEDGE;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.underlee.geom.Extrusion;
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

  List<Part> parts(BayRun run) {
    List<Part> parts = new ArrayList<>();
    parts.addAll(rail(run, run.bay().leftFace(), 1, 1));
    parts.addAll(rail(run, run.bay().rightFace(), -1, parts.size() + 1));
    return parts;
  }

  /**
   * @param into +1 when the bay lies toward growing u
   */
  private List<Part> rail(BayRun run, Linear face, int into, int firstOrdinal) {
    StockItem stock = plan.kit().item(Items.SIDE_RAIL);
    double start = run.start();
    Vec3 along = new Vec3(face.slope(), 1, -plan.fall());
    double perStation = along.length();
    double length = (run.railEnd() - start) * perStation;
    double longest = stock.stockLengths().get(stock.stockLengths().size() - 1);
    int count = (int) Math.ceil(length / longest - 1e-9);
    Transform local = face(new Vec3(face.at(start), start, plan.seat(start)), along.unit());
    RunReckoning reckoning = new RunReckoning(plan, run);
    Derivation lengthWhy = lengthWhy(reckoning, perStation, count, longest);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Interval own = new Interval(length * i / count, length * (i + 1) / count);
      List<Gap> gaps = gaps(run, own, start, perStation);
      List<Step> top = profile(own, gaps);
      List<Derivation> derivations = new ArrayList<>(List.of(lengthWhy, widthWhy()));
      derivations.add(reckoning.fall());
      derivations.addAll(
          reckoning.seats(start + own.from() / perStation, start + own.to() / perStation));
      derivations.addAll(notchesWhy(gaps, own));
      PartNames.Shape shape =
          PartNames.Shape.of(
                  stock.id(),
                  own.length(),
                  plan.kit().get(RAIL_LEDGE),
                  bodies(local, own, top, into))
              .falling(plan.fall())
              .cutFrom(section(stock.thickness()))
              .cut(cuts(gaps, own))
              .derived(derivations);
      parts.add(
          names.inBay(run.bay().id(), PartKind.SIDE_RAIL, firstOrdinal + i, shape, why(run, into)));
    }
    return parts;
  }

  /** x along the rail, y up its leg, z toward growing u. */
  private Transform face(Vec3 origin, Vec3 along) {
    Vec3 up = Vec3.Z.minus(along.times(along.z())).unit();
    return plan.frame().after(new Transform(origin, along, up, along.cross(up)));
  }

  private List<Extrusion> bodies(Transform local, Interval own, List<Step> top, int into) {
    double t = plan.kit().item(Items.SIDE_RAIL).thickness();
    double ledge = plan.kit().get(RAIL_LEDGE);
    Extrusion leg = Sheet.plate(local, legOutline(own, top), into > 0 ? 0 : -t, t);
    Transform flat = new Transform(local.origin(), local.x(), local.z(), local.y().negated());
    Outline ledgeOutline =
        Outline.rectangle(
            own.from(), Math.min(0, into * ledge), own.to(), Math.max(0, into * ledge));
    return List.of(leg, Sheet.plate(flat, ledgeOutline, 0, t));
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

  /** A stretch of the leg with one height. */
  private record Step(Interval stretch, double height) {}

  /**
   * What is cut out of the leg.
   *
   * @param obstacle what it makes room for
   * @param stretch along the rail
   * @param height of the leg left below it
   */
  private record Gap(Obstacle obstacle, Interval stretch, double height) {}

  private List<Gap> gaps(BayRun run, Interval own, double start, double perStation) {
    List<Gap> gaps = new ArrayList<>();
    for (SeatRanges.Notch notch : seats.notches(run, plan.seatHigh())) {
      Interval gap =
          new Interval(
                  (notch.stretch().from() - start) * perStation,
                  (notch.stretch().to() - start) * perStation)
              .meet(own);
      if (!gap.isEmpty()) {
        double height = notch.bottom() - plan.seat(notch.stretch().from());
        gaps.add(new Gap(obstacle(run, notch), gap, height));
      }
    }
    return gaps;
  }

  private static Obstacle obstacle(BayRun run, SeatRanges.Notch notch) {
    return Obstacle.in(run).stream()
        .filter(o -> notch.stretch().contains(o.stretch().middle()))
        .findFirst()
        .orElseThrow();
  }

  private List<Step> profile(Interval own, List<Gap> gaps) {
    TreeSet<Double> stops = new TreeSet<>(List.of(own.from(), own.to()));
    gaps.forEach(g -> stops.addAll(List.of(g.stretch.from(), g.stretch.to())));
    List<Step> steps = new ArrayList<>();
    List<Double> at = List.copyOf(stops);
    for (int i = 0; i + 1 < at.size(); i++) {
      Interval stretch = new Interval(at.get(i), at.get(i + 1));
      double height =
          gaps.stream()
              .filter(g -> g.stretch.contains(stretch.middle()))
              .mapToDouble(Gap::height)
              .min()
              .orElse(plan.kit().get(RAIL_LEG));
      steps.add(new Step(stretch, Math.min(height, plan.kit().get(RAIL_LEG))));
    }
    return steps;
  }

  private static Outline legOutline(Interval own, List<Step> steps) {
    List<Vec2> ring = new ArrayList<>();
    ring.add(new Vec2(own.from(), 0));
    ring.add(new Vec2(own.to(), 0));
    for (int i = steps.size() - 1; i >= 0; i--) {
      Step step = steps.get(i);
      ring.add(new Vec2(step.stretch.to(), step.height));
      ring.add(new Vec2(step.stretch.from(), step.height));
    }
    return Outline.of(ring);
  }

  private List<Cut> cuts(List<Gap> gaps, Interval own) {
    double leg = plan.kit().get(RAIL_LEG);
    return gaps.stream()
        .map(
            g ->
                (Cut)
                    new Cut.Notch(
                        g.stretch.from() - own.from(), g.stretch.length(), leg - g.height))
        .toList();
  }

  private Derivation lengthWhy(
      RunReckoning reckoning, double perStation, int count, double longest) {
    Reckoning length = reckoning.railLength();
    double askew = perStation / Math.hypot(1, plan.fall());
    if (askew - 1 > SeatRange.SAME * SeatRange.SAME) {
      length.times("along a joist that runs askew", askew, reckoning.joists());
    }
    return count == 1
        ? length.gives(Dimension.LENGTH)
        : length
            .over(
                Words.of("equal pieces, none longer than the stock's %s", Quantity.length(longest)),
                count,
                new KitValue(Items.SIDE_RAIL, plan.kit().item(Items.SIDE_RAIL).source()))
            .gives(Dimension.LENGTH);
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

  private static String why(BayRun run, int into) {
    return "carries the pan's edge, screwed to the face of "
        + (into > 0 ? run.bay().left().id() : run.bay().right().id());
  }
}
