package org.underlee.ifc.shape;

import java.util.List;
import java.util.Map;
import org.underlee.geom.Cuts;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Solids swept in a straight line, with one section or tapered to another, and the primitives that
 * are such: block, cylinder and pyramid.
 */
final class Sweeps {
  /**
   * A mesh whose volume differs more from section × height is of an outline that crosses itself.
   */
  private static final double VOLUME_AGREES = 1e-6;

  /** Sections that none of so many solids had are forgotten. */
  private static final int REMEMBERED = 256;

  private final Profiles profiles;
  private Cuts cuts = Cuts.none();
  private int solids;

  Sweeps(Profiles profiles) {
    this.profiles = profiles;
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCEXTRUDEDAREASOLID", this::mesh,
        "IFCEXTRUDEDAREASOLIDTAPERED", this::tapered,
        "IFCBLOCK", this::mesh,
        "IFCRIGHTCIRCULARCYLINDER", this::mesh,
        "IFCRECTANGULARPYRAMID", Sweeps::pyramid);
  }

  /** Whether {@link #extrusions} reads it. */
  boolean isStraight(StepInstance solid) {
    return switch (solid.keyword()) {
      case "IFCEXTRUDEDAREASOLID", "IFCBLOCK", "IFCRIGHTCIRCULARCYLINDER" -> true;
      default -> false;
    };
  }

  private Mesh mesh(StepInstance solid) {
    List<Mesh> parts = extrusions(solid).stream().map(e -> mesh(solid, e)).toList();
    if (++solids % REMEMBERED == 0) {
      cuts = cuts.next();
    }
    return parts.size() == 1 ? parts.get(0) : Mesh.union(parts);
  }

  private Mesh mesh(StepInstance solid, Extrusion extrusion) {
    Mesh mesh = extrusion.mesh(cuts);
    double volume = extrusion.volume();
    if (!(Math.abs(mesh.volume() - volume) <= VOLUME_AGREES * volume)) {
      throw Unreadable.degenerate(solid, "the outline of its profile crosses itself");
    }
    return mesh;
  }

  /** One for each outline of the profile, of which only a composite has several. */
  List<Extrusion> extrusions(StepInstance solid) {
    Transform frame =
        solid.keyword().equals("IFCEXTRUDEDAREASOLID")
            ? Axes.optionalPlacement(solid, 1)
            : Axes.placement(solid.follow(0));
    return switch (solid.keyword()) {
      case "IFCBLOCK" -> {
        Outline base =
            Outline.rectangle(0, 0, Curves.positive(solid, 1), Curves.positive(solid, 2));
        yield List.of(Extrusion.straight(frame, base, Curves.positive(solid, 3)));
      }
      case "IFCRIGHTCIRCULARCYLINDER" -> {
        Outline base = Outline.of(profiles.circle(Curves.positive(solid, 2)));
        yield List.of(Extrusion.straight(frame, base, Curves.positive(solid, 1)));
      }
      default -> {
        Vec3 sweep = sweep(solid);
        yield profiles.outlines(solid.follow(0)).stream()
            .map(outline -> new Extrusion(frame, outline, sweep))
            .toList();
      }
    };
  }

  private static Vec3 sweep(StepInstance solid) {
    Vec3 direction = Axes.direction(solid.follow(2));
    double depth = solid.number(3);
    if (!(depth > 0)) {
      throw Unreadable.degenerate(solid, "its depth is " + depth + ", not a positive length");
    }
    // The sine of the angle to the section: a slant this flat makes no solid.
    if (Math.abs(direction.z()) < 1e-9) {
      throw Unreadable.degenerate(solid, "it is swept along its own section");
    }
    return direction.times(depth);
  }

  private Mesh tapered(StepInstance solid) {
    Profiles alike = profiles.withAlikeArcs();
    Outline first = alike.only(solid.follow(0));
    Outline last = alike.only(solid.follow(4));
    Loft.requireAlike(solid, first, last);
    Transform frame = Axes.optionalPlacement(solid, 1);
    Transform end = frame.after(Transform.translation(sweep(solid)));
    return Loft.mesh(first, last, List.of(station(frame, first), station(end, last)), false);
  }

  /** The outline's points in a frame. */
  static List<Vec3> station(Transform frame, Outline outline) {
    return Loft.points(outline).stream().map(p -> frame.apply(new Vec3(p.x(), p.y(), 0))).toList();
  }

  private static Mesh pyramid(StepInstance solid) {
    double x = Curves.positive(solid, 1);
    double y = Curves.positive(solid, 2);
    Outline base = Outline.rectangle(0, 0, x, y);
    Transform frame = Axes.placement(solid.follow(0));
    Vec3 tip = frame.apply(new Vec3(x / 2, y / 2, Curves.positive(solid, 3)));
    List<Vec3> top = base.outer().stream().map((Vec2 p) -> tip).toList();
    return Loft.mesh(base, base, List.of(station(frame, base), top), false);
  }
}
