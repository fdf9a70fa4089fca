package org.underlee.ifc.shape;

import java.util.Map;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** Solids swept in a straight line, and the primitives that are such: block and cylinder. */
final class Sweeps {
  /**
   * A mesh whose volume differs more from section × height is of an outline that crosses itself.
   */
  private static final double VOLUME_AGREES = 1e-6;

  private final Profiles profiles;

  Sweeps(Profiles profiles) {
    this.profiles = profiles;
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCEXTRUDEDAREASOLID", this::mesh,
        "IFCBLOCK", this::mesh,
        "IFCRIGHTCIRCULARCYLINDER", this::mesh);
  }

  boolean reads(StepInstance solid) {
    return readers().containsKey(solid.keyword());
  }

  private Mesh mesh(StepInstance solid) {
    Extrusion extrusion = extrusion(solid);
    Mesh mesh = extrusion.mesh();
    double volume = extrusion.volume();
    if (!(Math.abs(mesh.volume() - volume) <= VOLUME_AGREES * volume)) {
      throw Unreadable.degenerate(solid, "the outline of its profile crosses itself");
    }
    return mesh;
  }

  Extrusion extrusion(StepInstance solid) {
    Transform frame =
        solid.keyword().equals("IFCEXTRUDEDAREASOLID")
            ? Axes.optionalPlacement(solid, 1)
            : Axes.placement(solid.follow(0));
    return switch (solid.keyword()) {
      case "IFCBLOCK" -> {
        Outline base =
            Outline.rectangle(0, 0, Curves.positive(solid, 1), Curves.positive(solid, 2));
        yield Extrusion.straight(frame, base, Curves.positive(solid, 3));
      }
      case "IFCRIGHTCIRCULARCYLINDER" -> {
        Outline base = Outline.of(Outline.circle(0, 0, Curves.positive(solid, 2), Arc.SIDES));
        yield Extrusion.straight(frame, base, Curves.positive(solid, 1));
      }
      default -> new Extrusion(frame, profiles.outline(solid.follow(0)), sweep(solid));
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
}
