package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Solids between sections placed along an alignment. A section stands square to the line, its x to
 * the left and its y up, as IfcAxis2PlacementLinear has it where no axes are given.
 */
final class AlignmentSweeps {
  /** Halvings of the way between two sections at most. */
  private static final int MAX_HALVINGS = 14;

  /** The way between two sections is halved at least this often. */
  private static final int MIN_HALVINGS = 2;

  private final Profiles profiles;
  private final Curves curves;
  private final double sag;

  AlignmentSweeps(Profiles profiles, Curves curves) {
    this.profiles = profiles;
    this.curves = curves;
    this.sag = curves.sag();
  }

  Map<String, ItemReader> readers() {
    return Map.of("IFCSECTIONEDSOLIDHORIZONTAL", this::solid);
  }

  /** A section with its place along the line, and how far it stands left of it and above it. */
  private record Section(Outline outline, double along, Vec2 offset, boolean upright) {
    /** In a corner on the way to the next; a length of its own, so that the corner is met. */
    Section at(double corner, Section next) {
      double share = (corner - along) / (next.along - along);
      Outline there =
          outline.equals(next.outline) ? outline : Loft.between(outline, next.outline, share);
      return new Section(
          there, corner, offset.times(1 - share).plus(next.offset.times(share)), upright);
    }

    Section towards(Section next, double share) {
      return new Section(
          outline,
          share == 1 ? next.along : along + (next.along - along) * share,
          offset.times(1 - share).plus(next.offset.times(share)),
          upright);
    }

    Vec3 reach(Vec2 p, Alignment line) {
      Alignment.Station station = line.at(along);
      Vec3 run = upright ? station.tangent().horizontal() : station.tangent();
      Vec3 plane = upright ? station.normal().horizontal() : station.normal();
      Transform square = Transform.frame(station.point(), run, Vec3.Z.cross(run));
      Vec3 there = square.apply(new Vec3(p.x() + offset.x(), p.y() + offset.y(), 0));
      // In a corner it runs on, or falls short, to the plane that halves the turn.
      double past = there.minus(station.point()).dot(plane) / run.dot(plane);
      return there.minus(run.times(past));
    }

    List<Vec3> placed(List<Vec2> points, Alignment line) {
      return points.stream().map(p -> reach(p, line)).toList();
    }
  }

  private Mesh solid(StepInstance solid) {
    Alignment line = Alignment.of(solid.follow(0), curves);
    List<Section> sections = sections(solid);
    List<List<Vec3>> stations = new ArrayList<>();
    stations.add(sections.get(0).placed(Loft.points(sections.get(0).outline()), line));
    for (int i = 0; i + 1 < sections.size(); i++) {
      Section from = sections.get(i);
      for (Section to : withCorners(from, sections.get(i + 1), line)) {
        between(from, to, 0, 1, 0, line, stations);
        from = to;
      }
    }
    Outline first = sections.get(0).outline();
    Outline last = sections.get(sections.size() - 1).outline();
    return Loft.mesh(first, last, stations, false);
  }

  /** The next section, after those that stand in the corners on the way to it. */
  private static List<Section> withCorners(Section a, Section b, Alignment line) {
    List<Section> all = new ArrayList<>();
    for (double corner : line.corners()) {
      if (corner > a.along() && corner < b.along()) {
        all.add(a.at(corner, b));
      }
    }
    all.add(b);
    return all;
  }

  private List<Section> sections(StepInstance solid) {
    Profiles alike = profiles.withAlikeArcs();
    List<StepInstance> outlines = solid.followAll(1);
    List<StepInstance> positions = solid.followAll(2);
    if (outlines.size() < 2 || outlines.size() != positions.size()) {
      throw Unreadable.degenerate(
          solid, outlines.size() + " sections at " + positions.size() + " positions");
    }
    List<Section> sections = new ArrayList<>();
    for (int i = 0; i < outlines.size(); i++) {
      Section section = section(alike.only(outlines.get(i)), positions.get(i));
      if (i > 0) {
        Loft.requireAlike(solid, sections.get(0).outline(), section.outline());
        if (!(section.along() > sections.get(i - 1).along())) {
          throw Unreadable.degenerate(solid, "its sections do not follow each other");
        }
      }
      sections.add(section);
    }
    return sections;
  }

  private static Section section(Outline outline, StepInstance position) {
    boolean upright = false;
    StepInstance distance = position;
    if (position.keyword().equals("IFCAXIS2PLACEMENTLINEAR")) {
      distance = position.follow(0);
      upright = isUpright(position);
    }
    switch (distance.keyword()) {
      case "IFCPOINTBYDISTANCEEXPRESSION", "IFCDISTANCEEXPRESSION" -> {}
      default -> throw Unreadable.unsupported(distance, " as a place along a line");
    }
    double ahead = distance.optionalNumber(3).orElse(0);
    Vec2 offset =
        new Vec2(distance.optionalNumber(1).orElse(0), distance.optionalNumber(2).orElse(0));
    return new Section(outline, AlignmentSegment.measure(distance, 0) + ahead, offset, upright);
  }

  /** Whether the section stands upright rather than square to the slope. */
  private static boolean isUpright(StepInstance position) {
    if (!position.isOmitted(2)) {
      throw Unreadable.unsupported(position, " with a direction of its own");
    }
    if (position.isOmitted(1)) {
      return false;
    }
    if (Axes.direction(position.follow(1)).distance(Vec3.Z) > 1e-9) {
      throw Unreadable.unsupported(position, " with an axis that is not upright");
    }
    return true;
  }

  /** Adds stations up to a share of the way from one section to the next, close enough to it. */
  private void between(
      Section a,
      Section b,
      double from,
      double to,
      int depth,
      Alignment line,
      List<List<Vec3>> stations) {
    double middle = (from + to) / 2;
    List<Vec3> end = station(a, b, to, line);
    List<Vec3> half = station(a, b, middle, line);
    List<Vec3> start = stations.get(stations.size() - 1);
    double off = 0;
    for (int i = 0; i < end.size(); i++) {
      Vec3 chord = start.get(i).plus(end.get(i)).times(0.5);
      off = Math.max(off, chord.distance(half.get(i)));
    }
    if (depth < MIN_HALVINGS || (off > sag && depth < MAX_HALVINGS)) {
      between(a, b, from, middle, depth + 1, line, stations);
      between(a, b, middle, to, depth + 1, line, stations);
    } else {
      stations.add(end);
    }
  }

  private static List<Vec3> station(Section a, Section b, double share, Alignment line) {
    List<Vec2> points = Loft.between(Loft.points(a.outline()), Loft.points(b.outline()), share);
    return a.towards(b, share).placed(points, line);
  }
}
