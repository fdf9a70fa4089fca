package org.underlee.layout;

import static org.underlee.kit.PanValue.PAN_DRIP_SETBACK;
import static org.underlee.kit.PanValue.RAIL_END_GAP;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.Support;
import org.underlee.kit.DrainValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Op;
import org.underlee.layout.Derivation.Ruled;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** What the derivations of a bay's parts have in common: its run, its faces, its seat. */
record RunReckoning(FieldPlan plan, BayRun run) {

  /** The clear run of the bay. */
  Reckoning clearRun() {
    Bay bay = run.bay();
    List<BuildingElement> ends = new ArrayList<>();
    bay.high().map(Support::member).map(Member::element).ifPresent(ends::add);
    boolean atPost =
        plan.lowEnd()
            .faceIn(bay)
            .filter(f -> Math.abs(f - run.lowFace()) <= SeatRange.SAME)
            .isEmpty();
    if (atPost) {
      plan.bays().field().posts().forEach(p -> ends.add(p.element()));
    } else {
      plan.lowEnd().members().forEach(s -> ends.add(s.member().element()));
    }
    return new Reckoning(plan.kit())
        .from(
            Words.of(
                "clear run of bay %s to %s",
                bay.id(),
                atPost
                    ? "the posts, which stand out from the face behind the gutter"
                    : plan.lowEnd().words()),
            run.run(),
            new Measured(ends));
  }

  Reckoning railLength() {
    return clearRun().minus(RAIL_END_GAP);
  }

  Reckoning panLength() {
    return railLength().minus(PAN_DRIP_SETBACK);
  }

  /** The width between the straight joist faces at a station. */
  Reckoning straightWidth(double v) {
    return new Reckoning(plan.kit())
        .from(
            Words.of("clear width of bay %s where the piece is widest", run.bay().id()),
            run.bay().straightWidthAt(v),
            joists());
  }

  Measured joists() {
    return new Measured(List.of(element(run.bay().left()), element(run.bay().right())));
  }

  static Measured measured(List<Crossing> pipes) {
    return new Measured(pipes.stream().map(Crossing::element).toList());
  }

  static BuildingElement element(JoistLine line) {
    return line.plies().get(0).element();
  }

  /** The seat at both ends of a part whose ends lie at these stations. */
  List<Derivation> seats(double from, double to) {
    return List.of(seat(from).gives(Dimension.SEAT_HIGH), seat(to).gives(Dimension.SEAT_LOW));
  }

  /** As {@link #seats(double, double)}, for a piece of rail that lies under those uphill of it. */
  List<Derivation> seats(double from, double to, double under, Derivation.Origin stock) {
    if (under <= 0) {
      return seats(from, to);
    }
    String why = "sheet of the pieces uphill, which lie on this one";
    return List.of(
        seat(from).minus(why, under, stock).gives(Dimension.SEAT_HIGH),
        seat(to).minus(why, under, stock).gives(Dimension.SEAT_LOW));
  }

  private Reckoning seat(double station) {
    Reckoning r = new Reckoning(plan.kit());
    return r.from(Words.of("from the field's high end, level"), station, joists())
        .step(
            Op.TIMES,
            Words.plain("fall"),
            plan.fall(),
            Kind.FALL,
            r.origin(DrainValue.RUN_PER_FALL))
        .step(
            Op.TAKEN_FROM,
            Words.of("seat of the field at its high end, the height that serves most bays"),
            plan.seatHigh(),
            Kind.LENGTH,
            new Ruled(Words.of("set by %s", plan.binding())));
  }

  Derivation fall() {
    return Reckoning.fall(plan.kit(), DrainValue.RUN_PER_FALL);
  }
}
