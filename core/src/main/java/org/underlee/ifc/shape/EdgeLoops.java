package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * The bounds of faces as rings of points. An edge is drawn once, so that the faces on both of its
 * sides have the same points on it.
 */
final class EdgeLoops {
  /** Sides of a full circle: a cylinder loses 0.04 % of its volume, a sphere 0.08 %. */
  static final int SIDES = 128;

  private static final int MAX_SIDES = 512;

  /** Points nearer than this share of an edge's size are one. */
  private static final double SAME = 1e-6;

  private final Curves curves;
  private final Map<Long, List<Vec3>> drawn = new HashMap<>();

  EdgeLoops(Curves curves) {
    this.curves = curves.toSweepAlong();
  }

  /** A bound's points in the sense of the face; none where the bound is a single point. */
  List<Vec3> ring(StepInstance bound) {
    StepInstance loop = bound.follow(0);
    List<Vec3> ring =
        switch (loop.keyword()) {
          case "IFCPOLYLOOP" ->
              new ArrayList<>(loop.followAll(0).stream().map(Axes::point).toList());
          case "IFCEDGELOOP" -> edges(loop);
          case "IFCVERTEXLOOP" -> new ArrayList<>();
          default -> throw Unreadable.unsupported(loop, " as the bound of a face");
        };
    if (!bound.isTrue(1)) {
      Collections.reverse(ring);
    }
    return ring;
  }

  private List<Vec3> edges(StepInstance loop) {
    List<Vec3> ring = new ArrayList<>();
    for (StepInstance edge : loop.followAll(0)) {
      List<Vec3> points = new ArrayList<>(edge(edge));
      // The last point of an edge is the first of the next.
      ring.addAll(points.subList(0, points.size() - 1));
    }
    return ring;
  }

  private List<Vec3> edge(StepInstance edge) {
    if (!edge.keyword().equals("IFCORIENTEDEDGE")) {
      return drawn(edge);
    }
    List<Vec3> points = drawn(edge.follow(2));
    if (edge.isTrue(3)) {
      return points;
    }
    List<Vec3> back = new ArrayList<>(points);
    Collections.reverse(back);
    return back;
  }

  private List<Vec3> drawn(StepInstance edge) {
    List<Vec3> known = drawn.get(edge.id());
    if (known == null) {
      known = draw(edge);
      drawn.put(edge.id(), known);
    }
    return known;
  }

  private List<Vec3> draw(StepInstance edge) {
    Vec3 start = vertex(edge.follow(0));
    Vec3 end = vertex(edge.follow(1));
    return switch (edge.keyword()) {
      case "IFCEDGE" -> List.of(start, end);
      case "IFCEDGECURVE" -> along(edge.follow(2), start, end, edge.isTrue(3));
      default -> throw Unreadable.unsupported(edge, " as the edge of a face");
    };
  }

  private static Vec3 vertex(StepInstance vertex) {
    if (!vertex.keyword().equals("IFCVERTEXPOINT")) {
      throw Unreadable.unsupported(vertex, " as the end of an edge");
    }
    return Axes.point(vertex.follow(0));
  }

  private List<Vec3> along(StepInstance curve, Vec3 start, Vec3 end, boolean forward) {
    return switch (curve.keyword()) {
      case "IFCLINE" -> List.of(start, end);
      case "IFCCIRCLE", "IFCELLIPSE" -> arc(curves.conic(curve), start, end, forward);
      case "IFCSURFACECURVE", "IFCSEAMCURVE", "IFCINTERSECTIONCURVE" ->
          along(curve.follow(0), start, end, forward);
      default -> {
        List<Vec3> points =
            SplineCurve.reads(curve.keyword())
                ? SplineCurve.of(curve).smooth()
                : curves.points(curve);
        yield part(points, start, end, forward);
      }
    };
  }

  private List<Vec3> arc(Arc arc, Vec3 start, Vec3 end, boolean forward) {
    double radius = Math.max(arc.u().length(), arc.v().length());
    double from = arc.parameter(start);
    boolean whole = start.distance(end) <= SAME * radius;
    double to = whole ? from : arc.parameter(end);
    double turn = Curves.beyond(from, to, forward) - from;
    // A chord of a turn t falls short of its arc by radius · t² / 8.
    double fine = Math.sqrt(radius / (8 * curves.sag()));
    double sides = Math.min(MAX_SIDES, Math.max(SIDES, 2 * Math.PI * fine));
    int n = Math.max(whole ? 4 : 1, (int) Math.ceil(Math.abs(turn) / (2 * Math.PI) * sides - 1e-9));
    List<Vec3> points = new ArrayList<>(List.of(start));
    for (int i = 1; i < n; i++) {
      points.add(arc.at(from + turn * i / n, 1));
    }
    points.add(end);
    return points;
  }

  /** The part of a curve from one vertex to the other, which it may not quite meet. */
  private static List<Vec3> part(List<Vec3> curve, Vec3 start, Vec3 end, boolean forward) {
    List<Vec3> points = new ArrayList<>(curve);
    if (!forward) {
      Collections.reverse(points);
    }
    Track track = new Track(points);
    double near = SAME * track.length();
    double from = Math.max(0, track.nearest(start));
    double to = Math.min(track.length(), track.nearest(end));
    if (track.isClosed() && to <= from + near) {
      to += track.length();
    } else if (to <= from) {
      from = 0;
      to = track.length();
    }
    List<Vec3> part = new ArrayList<>(List.of(start));
    part.addAll(track.corners(from + near, to - near));
    part.add(end);
    return part;
  }
}
