package org.underlee.layout;

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
import org.underlee.units.Lengths;

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
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Interval own = new Interval(length * i / count, length * (i + 1) / count);
      List<Step> top = profile(run, own, start, perStation);
      PartNames.Shape shape =
          PartNames.Shape.of(
                  stock.id(),
                  own.length(),
                  plan.kit().get(RAIL_LEDGE),
                  bodies(local, own, top, into))
              .falling(plan.fall())
              .cutFrom(section(stock.thickness()));
      parts.add(
          names.inBay(
              run.bay().id(), PartKind.SIDE_RAIL, firstOrdinal + i, shape, why(run, into, top)));
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

  private List<Step> profile(BayRun run, Interval own, double start, double perStation) {
    record Gap(Interval stretch, double height) {}
    List<Gap> gaps = new ArrayList<>();
    TreeSet<Double> stops = new TreeSet<>(List.of(own.from(), own.to()));
    for (SeatRanges.Notch notch : seats.notches(run, plan.seatHigh())) {
      Interval gap =
          new Interval(
                  (notch.stretch().from() - start) * perStation,
                  (notch.stretch().to() - start) * perStation)
              .meet(own);
      if (!gap.isEmpty()) {
        gaps.add(new Gap(gap, notch.bottom() - plan.seat(notch.stretch().from())));
        stops.add(gap.from());
        stops.add(gap.to());
      }
    }
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

  private String why(BayRun run, int into, List<Step> top) {
    String side =
        into > 0
            ? "on the face of " + run.bay().left().id()
            : "on the face of " + run.bay().right().id();
    StringBuilder words =
        new StringBuilder(side)
            .append("; clear run ")
            .append(Lengths.millimetres(run.run()))
            .append(" less the end gap");
    for (Step step : top) {
      if (step.height < plan.kit().get(RAIL_LEG)) {
        words
            .append("; leg notched from ")
            .append(Lengths.millimetres(step.stretch.from()))
            .append(" to ")
            .append(Lengths.millimetres(step.stretch.to()))
            .append(" down to ")
            .append(Lengths.millimetres(step.height));
      }
    }
    return words.toString();
  }
}
