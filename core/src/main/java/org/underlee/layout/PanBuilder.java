package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.PanValue.COLLAR_CLEARANCE;
import static org.underlee.kit.PanValue.COLLAR_EDGE;
import static org.underlee.kit.PanValue.COLLAR_LENGTH;
import static org.underlee.kit.PanValue.PAN_DRIP;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_LAP;
import static org.underlee.kit.PanValue.PAN_LONGEST;
import static org.underlee.kit.PanValue.PAN_SIDE_GAP;
import static org.underlee.kit.PanValue.RAIL_LEDGE;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Crossing;
import org.underlee.bay.Way;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * Cuts the pan of a bay into pieces: a collar piece at each pipe, and no piece too long to form.
 */
record PanBuilder(FieldPlan plan, PartNames names) {
  /** Facets of a round hole; its area equals the circle's. */
  private static final int HOLE_SIDES = 32;

  /** Pan left over beyond a collar that is shorter than this many laps joins the collar piece. */
  private static final int SHORTEST_IN_LAPS = 2;

  /**
   * @param length where its length without its lap comes from
   * @param pipes whose holes it has
   */
  private record Piece(PartKind kind, Interval stretch, Reckoning length, List<Crossing> pipes) {}

  List<Part> parts(BayRun run) {
    List<Piece> pieces = pieces(run);
    Kit kit = plan.kit();
    double start = run.start();
    Transform slope = plan.sloped(0, start, plan.seat(start));
    double cosine = run.stationAt(1) - start;
    List<Part> parts = new ArrayList<>();
    int pans = 0;
    int collars = 0;
    int saddles = 0;
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      boolean last = i == pieces.size() - 1;
      double to = last ? piece.stretch.to() : piece.stretch.to() + kit.get(PAN_LAP);
      TroughPiece trough =
          new TroughPiece(
              edge(run.bay().leftFace(), start, cosine).plus(kit.get(PAN_SIDE_GAP)),
              edge(run.bay().rightFace(), start, cosine).plus(-kit.get(PAN_SIDE_GAP)),
              piece.stretch.from(),
              to,
              pieces.size() - 1 - i,
              kit.item(Items.PAN_SHEET).thickness(),
              kit.get(PAN_HEM),
              last ? kit.get(PAN_DRIP) : 0,
              kit.get(RAIL_LEDGE),
              i == 0,
              piece.pipes.stream().map(c -> hole(run, c)).toList());
      int ordinal = piece.kind == PartKind.PAN ? ++pans : ++collars;
      Reckoning length = last ? piece.length : piece.length.plus(PAN_LAP);
      parts.add(part(run, piece, length, ordinal, trough, slope));
      SaddleBuilder saddle = new SaddleBuilder(plan, names, run, trough);
      List<Part> own = saddle.parts(piece.pipes, slope, saddles + 1);
      saddles += own.size();
      parts.addAll(own);
    }
    return parts;
  }

  private Part part(
      BayRun run,
      Piece piece,
      Reckoning lengthWhy,
      int ordinal,
      TroughPiece trough,
      Transform slope) {
    double length = trough.to() - trough.from();
    PartNames.Shape shape =
        PartNames.Shape.of(Items.PAN_SHEET, length, trough.width(), trough.bodies(slope))
            .foldedFrom(trough.blankWidth())
            .cutTo(trough.blankLength())
            .falling(plan.fall())
            .cut(new CollarCuts(plan, run, trough).of(piece.pipes))
            .derived(derivations(run, piece, lengthWhy, trough));
    return names.inBay(run.bay().id(), piece.kind, ordinal, shape, why(piece.kind));
  }

  private List<Derivation> derivations(
      BayRun run, Piece piece, Reckoning length, TroughPiece trough) {
    RunReckoning reckoning = new RunReckoning(plan, run);
    double from = run.stationAt(trough.from());
    double to = run.stationAt(trough.to());
    boolean highWider = run.bay().straightWidthAt(from) >= run.bay().straightWidthAt(to);
    Reckoning width =
        reckoning.straightWidth(highWider ? from : to).minus(PAN_SIDE_GAP).minus(PAN_SIDE_GAP);
    List<Derivation> all =
        new ArrayList<>(
            List.of(
                length.gives(Dimension.LENGTH),
                blankLength(length, trough),
                width.gives(Dimension.WIDTH),
                new Reckoning(width).plus(PAN_HEM).plus(PAN_HEM).gives(Dimension.FLAT_WIDTH),
                reckoning.fall()));
    all.addAll(reckoning.seats(from, to));
    all.addAll(new CollarCuts(plan, run, trough).derivations(piece.pipes));
    return all;
  }

  private static Derivation blankLength(Reckoning length, TroughPiece trough) {
    Reckoning blank = new Reckoning(length);
    if (trough.dam()) {
      blank.plus(PAN_HEM);
    }
    if (trough.drip() > 0) {
      blank.plus(PAN_DRIP);
    }
    return blank.gives(Dimension.FLAT_LENGTH);
  }

  private static String why(PartKind kind) {
    return kind == PartKind.COLLAR_PIECE
        ? "lets a pipe through: slit on the downhill side, closed and sealed after fitting"
        : "catches the bay's water and drips into the gutter or onto the piece below";
  }

  /** A joist face in the slope's frame: x over the distance down the slope. */
  private static Linear edge(Linear face, double start, double cosine) {
    return new Linear(face.at(start), face.slope() * cosine);
  }

  private List<Piece> pieces(BayRun run) {
    double end = run.panLength();
    List<Piece> pieces = new ArrayList<>();
    double done = 0;
    for (Piece collar : collars(run, end)) {
      double head = collar.stretch.from();
      pieces.addAll(pans(new Interval(done, head), true, headOf(collar)));
      pieces.add(collar);
      done = collar.stretch.to();
    }
    pieces.addAll(pans(new Interval(done, end), false, new RunReckoning(plan, run).panLength()));
    return pieces;
  }

  private Reckoning headOf(Piece collar) {
    return new Reckoning(plan.kit())
        .from(
            Words.of("head of the collar piece, from the pan's head"),
            collar.stretch.from(),
            RunReckoning.measured(collar.pipes));
  }

  /**
   * @param to where the derivation of the stretch's end comes from
   */
  private List<Piece> pans(Interval stretch, boolean goesOn, Reckoning to) {
    double longest = plan.kit().get(PAN_LONGEST);
    Laps laps = new Laps(longest, plan.kit().get(PAN_LAP));
    List<Interval> split = laps.split(stretch, goesOn);
    if (stretch.from() > 0) {
      to.minus("low end of the collar piece uphill", stretch.from(), Reckoning.OWN);
    }
    if (split.size() > 1) {
      to.over(
          Words.of("equal pieces, none longer with its lap than %s", Quantity.length(longest)),
          split.size(),
          to.origin(PAN_LONGEST));
    }
    return split.stream()
        .map(own -> new Piece(PartKind.PAN, own, new Reckoning(to), List.of()))
        .toList();
  }

  private List<Piece> collars(BayRun run, double end) {
    List<Piece> collars = new ArrayList<>();
    for (Crossing c : run.bay().crossings()) {
      if (c.way() == Way.THROUGH && c.stretch().from() < run.panEnd() && meetsPan(c)) {
        Piece collar = collar(run, c, end);
        Piece before = collars.isEmpty() ? null : collars.get(collars.size() - 1);
        if (before != null && collar.stretch.from() - before.stretch.to() < shortest()) {
          collars.set(collars.size() - 1, joined(before, collar));
        } else {
          collars.add(collar);
        }
      }
    }
    return collars;
  }

  /** A pipe that ends above the pan's edges, or below the pan, needs no hole. */
  private boolean meetsPan(Crossing c) {
    double seat = plan.seat(c.stretch().middle());
    double clear = plan.kit().get(CLEARANCE_ABOVE);
    return c.heights().from() < seat + plan.kit().get(PAN_HEM) + clear
        && c.heights().to() > seat - clear;
  }

  private double shortest() {
    return SHORTEST_IN_LAPS * plan.kit().get(PAN_LAP);
  }

  private Piece joined(Piece a, Piece b) {
    List<Crossing> pipes = new ArrayList<>(a.pipes);
    pipes.addAll(b.pipes);
    double to = Math.max(a.stretch.to(), b.stretch.to());
    Reckoning length =
        new Reckoning(a.length)
            .plus(
                "one piece with the collar at the next pipe",
                to - a.stretch.to(),
                RunReckoning.measured(b.pipes));
    return new Piece(PartKind.COLLAR_PIECE, new Interval(a.stretch.from(), to), length, pipes);
  }

  private Piece collar(BayRun run, Crossing c, double end) {
    double middle = run.alongTo(c.stretch().middle());
    Reckoning length = collarLength(c);
    double half = length.value() / 2;
    double from = middle - half < shortest() ? 0 : middle - half;
    double to = middle + half > end - shortest() ? end : middle + half;
    double more = to - from - 2 * half;
    if (Math.abs(more) > SeatRange.SAME) {
      length.plus("to the pan's own end, too short for a piece of its own", more, Reckoning.OWN);
    }
    return new Piece(PartKind.COLLAR_PIECE, new Interval(from, to), length, List.of(c));
  }

  private Reckoning collarLength(Crossing c) {
    Kit kit = plan.kit();
    double round = kit.get(COLLAR_CLEARANCE) + kit.get(COLLAR_EDGE) + kit.get(PAN_LAP);
    return new Reckoning(kit)
        .from(COLLAR_LENGTH)
        .step(
            Op.AT_LEAST,
            Words.of("the pipe with its clearance, edge and lap on both sides"),
            c.stretch().length() + 2 * round,
            Kind.LENGTH,
            RunReckoning.measured(List.of(c)));
  }

  private List<Vec2> hole(BayRun run, Crossing c) {
    double clear = plan.kit().get(COLLAR_CLEARANCE);
    double middle = run.alongTo(c.stretch().middle());
    double u = c.acrossStretch().middle();
    if (c.round()) {
      return Outline.circle(u, middle, c.size() / 2 + clear, HOLE_SIDES);
    }
    double halfU = c.acrossStretch().length() / 2 + clear;
    double halfV = c.stretch().length() / 2 + clear;
    return Outline.rectangle(u - halfU, middle - halfV, u + halfU, middle + halfV).outer();
  }
}
