package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.ifc.shape.PlaneCut.Plane;

/** What is taken away from a solid. */
sealed interface Cutter {
  /** Each cut in pieces costs time for every piece. */
  int MAX_PIECES = 2_000;

  /** Convex regions without overlap, each where the heights over all its planes are negative. */
  record Regions(List<List<Plane>> convex) implements Cutter {
    /** How many regions {@link #less} gives. */
    double parts(Regions others) {
      double parts = convex.size();
      for (List<Plane> other : others.convex) {
        parts *= other.size();
      }
      return parts;
    }

    /** What other regions leave of these, made from planes alone. */
    Regions less(Regions others) {
      List<List<Plane>> left = convex;
      for (List<Plane> other : others.convex) {
        left = left.stream().flatMap(region -> beside(region, other).stream()).toList();
      }
      return new Regions(left);
    }

    /** Past the first plane of the other; before that and past the second; and so on. */
    private static List<List<Plane>> beside(List<Plane> region, List<Plane> other) {
      List<List<Plane>> parts = new ArrayList<>();
      for (int i = 0; i < other.size(); i++) {
        List<Plane> part = new ArrayList<>(region);
        part.addAll(other.subList(0, i));
        part.add(other.get(i).turned());
        parts.add(List.copyOf(part));
      }
      return parts;
    }
  }

  /** A closed solid of any form. */
  record Solid(Mesh mesh) implements Cutter {}

  /** The same in other coordinates; the map must be rigid. */
  default Cutter transformed(Transform map) {
    if (this instanceof Solid s) {
      return new Solid(s.mesh().transformed(map));
    }
    return new Regions(
        ((Regions) this)
            .convex().stream()
                .map(r -> r.stream().map(plane -> plane.transformed(map)).toList())
                .toList());
  }

  /**
   * A solid less all that is taken away; empty when nothing is left. First in a way that keeps one
   * surface; where that comes out unsound, in pieces, and at last by space partition. Solids go
   * before regions, while the faces that they may share with the body are still exact.
   *
   * @param grid see {@link PlaneCut#grid}
   * @param work what may be spent on all that is tried
   * @throws IllegalStateException when none closes, because a solid is not closed
   */
  static Mesh takeAll(Mesh solid, List<Cutter> cutters, double grid, CutWork work) {
    List<Cutter> ordered = new ArrayList<>(cutters);
    ordered.sort(Comparator.comparing(c -> c instanceof Regions));
    try {
      Mesh rest = solid;
      for (Cutter cutter : ordered) {
        rest = rest.isEmpty() ? rest : cutter.takeFrom(rest, grid, work);
      }
      return rest;
    } catch (IllegalStateException | IllegalArgumentException unsound) {
      return inPieces(solid, ordered, grid, work);
    }
  }

  private static Mesh inPieces(Mesh solid, List<Cutter> cutters, double grid, CutWork work) {
    try {
      List<Mesh> pieces = List.of(solid);
      for (Cutter cutter : cutters) {
        pieces = cutter.takeFrom(pieces, grid, work);
      }
      return pieces.size() == 1 ? pieces.get(0) : Mesh.union(pieces);
    } catch (IllegalStateException | IllegalArgumentException unsound) {
      return SpacePartition.difference(solid, cutters, grid);
    }
  }

  private Mesh takeFrom(Mesh solid, double grid, CutWork work) {
    if (this instanceof Solid s) {
      return SpacePartition.difference(solid, List.of(s), grid);
    }
    Mesh rest = solid;
    for (List<Plane> region : ((Regions) this).convex()) {
      rest = rest.isEmpty() ? rest : outside(rest, region, grid, work);
    }
    return rest;
  }

  private List<Mesh> takeFrom(List<Mesh> pieces, double grid, CutWork work) {
    List<Mesh> rest = pieces;
    if (this instanceof Solid s) {
      return rest.stream()
          .map(piece -> SpacePartition.difference(piece, List.of(s), grid))
          .filter(piece -> !piece.isEmpty())
          .toList();
    }
    for (List<Plane> region : ((Regions) this).convex()) {
      List<Mesh> next = new ArrayList<>();
      rest.forEach(piece -> next.addAll(sliced(piece, region, grid, work)));
      if (next.size() > MAX_PIECES) {
        throw new IllegalStateException("it falls into more than " + MAX_PIECES + " pieces");
      }
      rest = next;
    }
    return rest;
  }

  /** Whether one of the region's planes has it all on its other side: quick, and nearly always. */
  private static boolean isApart(Mesh piece, List<Plane> region) {
    for (Plane plane : region) {
      boolean above = true;
      for (int i = 0; above && i < piece.vertexCount(); i++) {
        above = plane.height(piece.vertex(i)) >= 0;
      }
      if (above) {
        return true;
      }
    }
    return false;
  }

  private static Mesh outside(Mesh solid, List<Plane> region, double grid, CutWork work) {
    if (region.size() == 1) {
      return PlaneCut.above(solid, region.get(0), grid, work);
    }
    work.look(solid);
    if (isApart(solid, region)) {
      return solid;
    }
    Mesh inside = PlaneCut.below(solid, region, grid, work);
    if (inside.isEmpty()) {
      return solid;
    }
    return ConvexCut.outside(solid, region, inside, grid, work);
  }

  /** The same in pieces that touch but do not overlap: sure, but with walls between them. */
  private static List<Mesh> sliced(Mesh piece, List<Plane> region, double grid, CutWork work) {
    work.look(piece);
    if (isApart(piece, region)) {
      return List.of(piece);
    }
    List<Mesh> parts = new ArrayList<>();
    Mesh inside = piece;
    for (Plane plane : region) {
      if (!inside.isEmpty()) {
        parts.add(PlaneCut.above(inside, plane, grid, work));
        inside = PlaneCut.above(inside, plane.turned(), grid, work);
      }
    }
    // A piece that the region does not enter stays whole rather than cut along its planes.
    return inside.isEmpty()
        ? List.of(piece)
        : parts.stream().filter(part -> !part.isEmpty()).toList();
  }
}
