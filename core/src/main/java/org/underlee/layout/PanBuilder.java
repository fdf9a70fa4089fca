package org.underlee.layout;

import static org.underlee.kit.PanValue.CLEARANCE_ABOVE;
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
import org.underlee.units.Lengths;

/**
 * Cuts the pan of a bay into pieces: a collar piece at each pipe, and no piece too long to form.
 */
record PanBuilder(FieldPlan plan, PartNames names) {
  /** Facets of a round hole; its area equals the circle's. */
  private static final int HOLE_SIDES = 32;

  /** Pan left over beyond a collar that is shorter than this many laps joins the collar piece. */
  private static final int SHORTEST_IN_LAPS = 2;

  private record Piece(PartKind kind, Interval stretch, List<List<Vec2>> holes) {}

  List<Part> parts(BayRun run) {
    List<Piece> pieces = pieces(run);
    Kit kit = plan.kit();
    double start = run.start();
    Transform slope = plan.sloped(0, start, plan.seat(start));
    double cosine = run.stationAt(1) - start;
    List<Part> parts = new ArrayList<>();
    int pans = 0;
    int collars = 0;
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
              piece.holes);
      int ordinal = piece.kind == PartKind.PAN ? ++pans : ++collars;
      parts.add(part(run, piece.kind, ordinal, trough, slope));
    }
    return parts;
  }

  private Part part(BayRun run, PartKind kind, int ordinal, TroughPiece trough, Transform slope) {
    double length = trough.to() - trough.from();
    PartNames.Shape shape =
        PartNames.Shape.of(Items.PAN_SHEET, length, trough.width(), trough.bodies(slope))
            .foldedFrom(trough.blankWidth())
            .falling(plan.fall());
    return names.inBay(run.bay().id(), kind, ordinal, shape, why(run, kind, trough));
  }

  private String why(BayRun run, PartKind kind, TroughPiece trough) {
    String width =
        "bay "
            + Lengths.millimetres(run.bay().clearWidthHigh())
            + " clear less "
            + Lengths.millimetres(plan.kit().get(PAN_SIDE_GAP))
            + " each side";
    String cut = "; cut " + Lengths.millimetres(trough.blankWidth()) + " wide before folding";
    return kind == PartKind.COLLAR_PIECE
        ? "collar at a pipe: slit on the downhill side, closed and sealed after fitting; "
            + width
            + cut
        : "clear run "
            + Lengths.millimetres(run.run())
            + " less end gap and drip setback gives "
            + Lengths.millimetres(run.panLength())
            + " in all; "
            + width
            + cut;
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
      pieces.addAll(pans(new Interval(done, collar.stretch.from()), true));
      pieces.add(collar);
      done = collar.stretch.to();
    }
    pieces.addAll(pans(new Interval(done, end), false));
    return pieces;
  }

  private List<Piece> pans(Interval stretch, boolean goesOn) {
    Laps laps = new Laps(plan.kit().get(PAN_LONGEST), plan.kit().get(PAN_LAP));
    return laps.split(stretch, goesOn).stream()
        .map(own -> new Piece(PartKind.PAN, own, List.of()))
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

  private static Piece joined(Piece a, Piece b) {
    List<List<Vec2>> holes = new ArrayList<>(a.holes);
    holes.addAll(b.holes);
    return new Piece(
        PartKind.COLLAR_PIECE,
        new Interval(a.stretch.from(), Math.max(a.stretch.to(), b.stretch.to())),
        holes);
  }

  private Piece collar(BayRun run, Crossing c, double end) {
    Kit kit = plan.kit();
    double clear = kit.get(COLLAR_CLEARANCE);
    double middle = run.alongTo(c.stretch().middle());
    double half =
        Math.max(
            kit.get(COLLAR_LENGTH) / 2,
            c.stretch().length() / 2 + clear + kit.get(COLLAR_EDGE) + kit.get(PAN_LAP));
    double from = middle - half < shortest() ? 0 : middle - half;
    double to = middle + half > end - shortest() ? end : middle + half;
    return new Piece(
        PartKind.COLLAR_PIECE, new Interval(from, to), List.of(hole(c, middle, clear)));
  }

  private static List<Vec2> hole(Crossing c, double middle, double clear) {
    double u = c.acrossStretch().middle();
    if (c.round()) {
      return Outline.circle(u, middle, c.size() / 2 + clear, HOLE_SIDES);
    }
    double halfU = c.acrossStretch().length() / 2 + clear;
    double halfV = c.stretch().length() / 2 + clear;
    return Outline.rectangle(u - halfU, middle - halfV, u + halfU, middle + halfV).outer();
  }
}
