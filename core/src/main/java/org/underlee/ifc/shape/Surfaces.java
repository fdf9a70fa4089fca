package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** Reads the surfaces on which curved faces lie. */
final class Surfaces {
  private final Curves curves;

  Surfaces(Curves curves) {
    this.curves = curves.toSweepAlong();
  }

  ParametricSurface read(StepInstance surface) {
    return switch (surface.keyword()) {
      case "IFCCYLINDRICALSURFACE" ->
          new RoundSurfaces.Cylinder(frame(surface), Curves.positive(surface, 1));
      case "IFCSPHERICALSURFACE" ->
          new RoundSurfaces.Sphere(frame(surface), Curves.positive(surface, 1));
      case "IFCTOROIDALSURFACE" ->
          new RoundSurfaces.Torus(
              frame(surface), Curves.positive(surface, 1), Curves.positive(surface, 2));
      case "IFCSURFACEOFLINEAREXTRUSION" -> extruded(surface);
      case "IFCSURFACEOFREVOLUTION" -> revolved(surface);
      case "IFCRECTANGULARTRIMMEDSURFACE" -> read(surface.follow(0));
      default -> {
        if (!SplineSurface.reads(surface.keyword())) {
          throw Unreadable.unsupported(surface, " as the surface of a face");
        }
        yield SplineSurface.of(surface);
      }
    };
  }

  private static Transform frame(StepInstance surface) {
    return Axes.placement(surface.follow(0));
  }

  private ParametricSurface extruded(StepInstance surface) {
    Transform frame = Axes.optionalPlacement(surface, 1);
    Vec3 direction = frame.direction(Axes.direction(surface.follow(2)));
    return SweptSurfaces.Extruded.of(profile(surface, frame), direction);
  }

  private ParametricSurface revolved(StepInstance surface) {
    Transform frame = Axes.optionalPlacement(surface, 1);
    StepInstance axis = surface.follow(2);
    Vec3 z = axis.optionalFollow(1).map(Axes::direction).orElse(Vec3.Z);
    Vec3 origin = frame.apply(Axes.point(axis.follow(0)));
    Transform about = FlatFace.frame(origin, frame.direction(z));
    return SweptSurfaces.Revolved.of(about, profile(surface, frame));
  }

  /** The curve that is swept, which the file wraps into a profile. */
  private List<Vec3> profile(StepInstance surface, Transform frame) {
    StepInstance profile = surface.follow(0);
    return switch (profile.keyword()) {
      case "IFCARBITRARYOPENPROFILEDEF", "IFCARBITRARYCLOSEDPROFILEDEF" ->
          curves.points(profile.follow(2)).stream().map(frame::apply).toList();
      default ->
          throw Unreadable.unsupported(profile, " as the curve that a surface is swept from");
    };
  }
}
