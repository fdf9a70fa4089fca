package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Linear;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;

/**
 * A piece of formed trough on a slope: a floor with upturned edges, at its head an end dam, and at
 * its low end a drip bent down. Pans, collar pieces and ply strips are such pieces.
 *
 * <p>In the slope's frame x runs across, y down the fall, z up from the seat. Where pieces lap, the
 * uphill piece nests in the downhill one: for each piece further down it is a sheet thickness
 * higher and, at each side, a thickness narrower, and its edges end at the same height.
 *
 * @param left outer edge of the lowest piece, as x over y; likewise right
 * @param from y of the head; {@code to} y of the low end, lap included
 * @param rank how many pieces lie below this one along the fall
 * @param hem height of the upturned edges above the seat
 * @param drip depth of the drip below the seat, zero for none
 * @param dripInset how much narrower the drip is at each side, to pass between rail ledges
 * @param dam whether the head is turned up between the edges: the end dam
 * @param holes in the floor
 */
record TroughPiece(
    Linear left,
    Linear right,
    double from,
    double to,
    int rank,
    double thickness,
    double hem,
    double drip,
    double dripInset,
    boolean dam,
    List<List<Vec2>> holes) {

  List<Extrusion> bodies(Transform slope) {
    double t = thickness;
    double floor = rank * t;
    Linear inLeft = left.plus(rank * t);
    Linear inRight = right.plus(-rank * t);
    List<Extrusion> bodies = new ArrayList<>();
    bodies.add(
        Sheet.plate(slope, new Outline(Sheet.ring(inLeft, inRight, from, to), holes), floor, t));
    double edge = hem - floor - t;
    bodies.add(
        Sheet.plate(slope, Sheet.between(inLeft, inLeft.plus(t), from, to), floor + t, edge));
    bodies.add(
        Sheet.plate(slope, Sheet.between(inRight.plus(-t), inRight, from, to), floor + t, edge));
    if (dam) {
      Outline head = Sheet.between(inLeft.plus(t), inRight.plus(-t), from, from + t);
      bodies.add(Sheet.plate(slope, head, floor + t, edge));
    }
    if (drip > 0) {
      Outline lip = Sheet.between(inLeft.plus(dripInset), inRight.plus(-dripInset), to - t, to);
      bodies.add(Sheet.plate(slope, lip, floor - drip, drip));
    }
    return bodies;
  }

  /** The length of flat sheet, with the end dam and the drip. */
  double blankLength() {
    return to - from + (dam ? hem : 0) + drip;
  }

  double width() {
    return Math.max(right.at(from) - left.at(from), right.at(to) - left.at(to));
  }

  /** The width of flat sheet that the piece is folded from. */
  double blankWidth() {
    return width() + 2 * hem;
  }
}
