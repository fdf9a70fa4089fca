package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * Solids swept along a curve: discs, areas turned by a fixed reference or by the surface that the
 * curve lies on, and sections placed along a spine. Corners of the curve are mitred, which keeps
 * the volume of section × length.
 */
final class DirectrixSweeps {
  /** Steps of the path shorter than this share of it are one point. */
  private static final double SAME = 1e-9;

  /** Mitres sharper than this cosine of half the turn would run out far beyond the corner. */
  private static final double SHARPEST = 0.05;

  /** Chords of one arc are alike but for rounding, as a share of their length. */
  private static final double ALIKE = 1e-6;

  /** The largest turn between two chords of an arc: twice that of the coarsest circle. */
  private static final double GENTLE = Math.PI / 8;

  private final Profiles profiles;
  private final Curves curves;

  DirectrixSweeps(Profiles profiles, Curves curves) {
    this.profiles = profiles;
    this.curves = curves.toSweepAlong();
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCSWEPTDISKSOLID", this::disk,
        "IFCSWEPTDISKSOLIDPOLYGONAL", this::disk,
        "IFCFIXEDREFERENCESWEPTAREASOLID", this::fixedReference,
        "IFCSURFACECURVESWEPTAREASOLID", this::onSurface,
        "IFCSECTIONEDSPINE", this::spine);
  }

  /** Which way the x axis of the section points, at a place of the path with that tangent. */
  @FunctionalInterface
  private interface Reference {
    Vec3 at(Vec3 tangent);
  }

  private Mesh disk(StepInstance solid) {
    double radius = Curves.positive(solid, 1);
    List<List<Vec2>> holes = new ArrayList<>();
    OptionalDouble inner = solid.optionalNumber(2);
    if (inner.isPresent() && inner.getAsDouble() > 0) {
      if (inner.getAsDouble() >= radius) {
        throw Unreadable.degenerate(solid, "its inner radius is not below its outer one");
      }
      holes.add(profiles.circle(inner.getAsDouble()));
    }
    Outline section = new Outline(profiles.circle(radius), holes);
    List<Vec3> path = path(solid, 0, 3);
    OptionalDouble fillet = solid.optionalNumber(5);
    if (fillet.isPresent() && fillet.getAsDouble() > 0) {
      path = Fillets.path(path, fillet.getAsDouble(), curves.sag());
    }
    return swept(solid, section, path, Transform.IDENTITY, carried(path));
  }

  /** A reference that is turned from each tangent to the next along with them, without twist. */
  private static Reference carried(List<Vec3> path) {
    Vec3[] tangents = {path.get(1).minus(path.get(0)).unit()};
    Vec3[] last = {FlatFace.frame(Vec3.ZERO, tangents[0]).x()};
    return tangent -> {
      Vec3 axis = tangents[0].cross(tangent);
      double cosine = tangents[0].dot(tangent);
      Vec3 along = axis.times(axis.dot(last[0]) / (1 + cosine));
      last[0] = last[0].times(cosine).plus(axis.cross(last[0])).plus(along);
      tangents[0] = tangent;
      return last[0];
    };
  }

  private Mesh fixedReference(StepInstance solid) {
    Vec3 fixed = Axes.direction(solid.follow(5));
    return swept(solid, path -> tangent -> fixed);
  }

  private Mesh onSurface(StepInstance solid) {
    StepInstance surface = solid.follow(5);
    return switch (surface.keyword()) {
      case "IFCPLANE" -> {
        Vec3 normal = Axes.placement(surface.follow(0)).z();
        yield swept(solid, path -> tangent -> normal);
      }
      case "IFCSURFACEOFLINEAREXTRUSION" -> {
        Vec3 along = Axes.direction(surface.follow(2));
        yield swept(solid, path -> tangent -> tangent.cross(along));
      }
      default -> throw Unreadable.unsupported(surface, " as the surface to sweep on");
    };
  }

  private Mesh swept(StepInstance solid, java.util.function.Function<List<Vec3>, Reference> by) {
    List<Vec3> path = path(solid, 2, 3);
    Transform frame = Axes.optionalPlacement(solid, 1);
    List<Mesh> parts = new ArrayList<>();
    for (Outline outline : profiles.outlines(solid.follow(0))) {
      parts.add(swept(solid, outline, path, frame, by.apply(path)));
    }
    return Mesh.union(parts);
  }

  private List<Vec3> path(StepInstance solid, int directrix, int start) {
    StepInstance curve = solid.follow(directrix);
    List<Vec3> all = trimmed(solid, curve, start);
    double size = 0;
    for (Vec3 p : all) {
      size = Math.max(size, p.distance(all.get(0)));
    }
    List<Vec3> path = Paths.apart(all, SAME * size);
    if (path.size() < 2) {
      throw Unreadable.degenerate(curve, "nothing can be swept along a curve without length");
    }
    return path;
  }

  /** The directrix from its start to its end parameter. */
  private List<Vec3> trimmed(StepInstance solid, StepInstance curve, int start) {
    List<Vec3> all = curves.points(curve);
    OptionalDouble from = solid.optionalNumber(start);
    OptionalDouble to = solid.optionalNumber(start + 1);
    if (from.isEmpty() && to.isEmpty()) {
      return all;
    }
    double low = from.orElse(0);
    return switch (curve.keyword()) {
      case "IFCPOLYLINE" -> Paths.part(all, low, to.orElse(all.size() - 1.0));
      case "IFCCIRCLE", "IFCELLIPSE" ->
          curves.conic(curve).along(curves.radians(low), curves.radians(to.orElse(low)));
      default -> {
        if (to.isPresent() && !isWhole(curve, all, to.getAsDouble() - low)) {
          throw Unreadable.unsupported(curve, " from parameter " + low + " to " + to.getAsDouble());
        }
        yield all;
      }
    };
  }

  /**
   * Whether a span of parameters is the whole curve, counted in segments, in lengths or in the
   * parameters of its own trims, all of which are met.
   */
  private static boolean isWhole(StepInstance curve, List<Vec3> points, double span) {
    double length = 0;
    for (int i = 1; i < points.size(); i++) {
      length += points.get(i).distance(points.get(i - 1));
    }
    double own =
        switch (curve.keyword()) {
          case "IFCCOMPOSITECURVE" -> curve.list(0).size();
          case "IFCINDEXEDPOLYCURVE" ->
              curve.isOmitted(1) ? points.size() - 1 : curve.list(1).size();
          case "IFCTRIMMEDCURVE" -> Math.abs(trim(curve, 2) - trim(curve, 1));
          default -> 1;
        };
    // The polyline is a little shorter than its arcs; parameters are written with few digits.
    return Math.abs(span - own) <= 1e-6 * own || Math.abs(span - length) <= 1e-3 * length;
  }

  private static double trim(StepInstance curve, int attribute) {
    return curve.list(attribute).stream()
        .filter(v -> v instanceof StepValue.Typed)
        .map(v -> ((StepValue.Typed) v).value())
        .filter(v -> v instanceof StepValue.Numeral)
        .mapToDouble(v -> ((StepValue.Numeral) v).value())
        .findFirst()
        .orElse(Double.NaN);
  }

  private static Mesh swept(
      StepInstance solid, Outline section, List<Vec3> path, Transform frame, Reference reference) {
    double size = path.get(0).distance(path.get(path.size() / 2));
    boolean closed =
        path.size() > 3 && path.get(0).distance(path.get(path.size() - 1)) <= 1e-6 * size;
    List<Vec3> open = closed ? path.subList(0, path.size() - 1) : path;
    List<List<Vec3>> stations = new ArrayList<>();
    int n = open.size();
    Vec3 atStart = tangent(open.get(0), open.get(1), open.get(Math.min(2, n - 1)));
    Vec3 atEnd = tangent(open.get(n - 1), open.get(n - 2), open.get(Math.max(0, n - 3))).negated();
    for (int i = 0; i < n; i++) {
      Vec3 in = open.get(i).minus(open.get(closed ? (i + n - 1) % n : Math.max(0, i - 1)));
      Vec3 out = open.get(closed ? (i + 1) % n : Math.min(n - 1, i + 1)).minus(open.get(i));
      Vec3 before = i == 0 && !closed ? mirrored(out.unit(), atStart) : in.unit();
      Vec3 after = i == n - 1 && !closed ? mirrored(in.unit(), atEnd) : out.unit();
      stations.add(
          mitred(solid, section, open.get(i), before, after, reference).stream()
              .map(frame::apply)
              .toList());
    }
    return Loft.mesh(section, section, stations, closed);
  }

  /**
   * The tangent in the first of three points: where two chords of one length follow each other
   * gently they are taken for those of an arc, whose tangent leans away from the first chord by
   * half of their turn.
   */
  private static Vec3 tangent(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 first = b.minus(a);
    Vec3 second = c.minus(b);
    boolean arc =
        Math.abs(first.length() - second.length()) <= ALIKE * first.length()
            && first.dot(second) > Math.cos(GENTLE) * first.length() * second.length();
    Vec3 chord = first.unit();
    return arc ? mirrored(chord.plus(second.unit()).unit(), chord) : chord;
  }

  /** A direction on the other side of an axis. */
  private static Vec3 mirrored(Vec3 direction, Vec3 axis) {
    return axis.times(2 * direction.dot(axis)).minus(direction);
  }

  /** The section square to the incoming direction, run on to the plane that halves the corner. */
  private static List<Vec3> mitred(
      StepInstance solid, Outline section, Vec3 at, Vec3 before, Vec3 after, Reference reference) {
    Vec3 middle = before.plus(after);
    if (middle.length() < 2 * SHARPEST) {
      throw Unreadable.degenerate(solid, "the curve it is swept along turns back on itself");
    }
    Vec3 normal = middle.unit();
    Vec3 hint = reference.at(before);
    Transform square = Transform.frame(at, before, hint);
    double lean = before.dot(normal);
    List<Vec3> station = new ArrayList<>();
    for (Vec3 p : Sweeps.station(square, section)) {
      station.add(p.minus(before.times(p.minus(at).dot(normal) / lean)));
    }
    return station;
  }

  private Mesh spine(StepInstance solid) {
    Profiles alike = profiles.withAlikeArcs();
    List<StepInstance> sections = solid.followAll(1);
    List<StepInstance> positions = solid.followAll(2);
    if (sections.size() < 2 || sections.size() != positions.size()) {
      throw Unreadable.degenerate(
          solid, sections.size() + " sections at " + positions.size() + " positions");
    }
    List<Outline> outlines = sections.stream().map(alike::only).toList();
    List<List<Vec3>> stations = new ArrayList<>();
    for (int i = 0; i < outlines.size(); i++) {
      Loft.requireAlike(solid, outlines.get(0), outlines.get(i));
      stations.add(Sweeps.station(Axes.placement(positions.get(i)), outlines.get(i)));
    }
    return Loft.mesh(outlines.get(0), outlines.get(outlines.size() - 1), stations, false);
  }
}
