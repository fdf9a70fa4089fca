package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Sorts the rings of a cut into faces: counter-clockwise ones are outer, the others their holes.
 */
final class CapFaces {
  private CapFaces() {}

  /** A plane face: its outer ring and its holes. */
  record Face(List<Vec3> outer, List<List<Vec3>> holes) {}

  private record Ring(List<Vec3> points, List<Vec2> flat, double area) {
    double length() {
      double sum = 0;
      for (int i = 0; i < flat.size(); i++) {
        sum += flat.get(i).minus(flat.get((i + 1) % flat.size())).length();
      }
      return sum;
    }
  }

  /**
   * The faces of rings in the x-y plane of the frame. A ring no wider than {@code grid} is a seam
   * where a long edge meets several short ones; it needs no cap.
   */
  static List<Face> of(List<List<Vec3>> rings, Transform frame, double grid) {
    List<Ring> outers = new ArrayList<>();
    List<Ring> inners = new ArrayList<>();
    for (List<Vec3> points : rings) {
      if (points.size() >= 3) {
        Ring ring = ring(points, frame);
        if (Math.abs(ring.area()) > grid * ring.length()) {
          (ring.area() > 0 ? outers : inners).add(ring);
        }
      }
    }
    List<Face> faces = new ArrayList<>();
    outers.forEach(o -> faces.add(new Face(o.points(), new ArrayList<>())));
    for (Ring inner : inners) {
      int owner = owner(inner, outers);
      if (owner >= 0) {
        faces.get(owner).holes().add(inner.points());
      }
    }
    return faces;
  }

  private static Ring ring(List<Vec3> points, Transform frame) {
    List<Vec2> flat = points.stream().map(frame::toLocal).map(p -> new Vec2(p.x(), p.y())).toList();
    return new Ring(points, flat, Outline.signedArea(flat));
  }

  /** The smallest outer ring that holds the hole, or −1. */
  private static int owner(Ring hole, List<Ring> outers) {
    int owner = -1;
    for (int i = 0; i < outers.size(); i++) {
      Ring outer = outers.get(i);
      boolean smaller = owner < 0 || outer.area() < outers.get(owner).area();
      if (smaller && outer.area() >= -hole.area() && holds(outer, hole)) {
        owner = i;
      }
    }
    return owner;
  }

  /** By the first corner of the hole that is not on the outer ring itself. */
  private static boolean holds(Ring outer, Ring hole) {
    Coordinate[] ring = new Coordinate[outer.flat().size() + 1];
    for (int i = 0; i < ring.length; i++) {
      Vec2 p = outer.flat().get(i % outer.flat().size());
      ring[i] = new Coordinate(p.x(), p.y());
    }
    for (Vec2 p : hole.flat()) {
      int where = PointLocation.locateInRing(new Coordinate(p.x(), p.y()), ring);
      if (where != Location.BOUNDARY) {
        return where == Location.INTERIOR;
      }
    }
    return true;
  }
}
