package org.underlee.ifc;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.InputException;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.ifc.shape.ShapeReader;
import org.underlee.step.StepInstance;

/**
 * The body of a product in world metres: its representation {@code Body}, else {@code Facetation},
 * else the first that is no axis, plan, box or other view of it.
 */
final class Bodies {
  private static final List<String> PREFERRED = List.of("BODY", "FACETATION");

  private static final Set<String> VIEWS =
      Set.of(
          "AXIS",
          "FOOTPRINT",
          "BOX",
          "PROFILE",
          "PLAN",
          "ANNOTATION",
          "COG",
          "CLEARANCE",
          "LIGHTING",
          "REFERENCE",
          "SURVEYPOINTS");

  /** Representation types that hold no solid. */
  private static final Set<String> FLAT =
      Set.of(
          "POINT",
          "POINTCLOUD",
          "CURVE",
          "CURVE2D",
          "CURVE3D",
          "GEOMETRICSET",
          "GEOMETRICCURVESET",
          "ANNOTATION2D",
          "BOUNDINGBOX",
          "TEXT",
          "FILLAREA");

  private final ShapeReader shapes;
  private final Placements placements;
  private final double metresPerUnit;

  Bodies(IfcUnits units, Placements placements) {
    this.shapes = new ShapeReader(units.radiansPerAngleUnit());
    this.placements = placements;
    this.metresPerUnit = units.metresPerLengthUnit();
  }

  Mesh body(StepInstance product) {
    StepInstance shape = product.follow(6);
    StepInstance representation = choose(shape).orElseThrow(() -> bodiless(shape));
    Transform place = product.isOmitted(5) ? Transform.IDENTITY : placements.world(product.ref(5));
    Mesh mesh =
        shapes
            .representation(representation)
            .transformed(place.after(Transform.scaling(metresPerUnit)));
    if (mesh.isEmpty()) {
      throw representation.error("its body has no faces");
    }
    return mesh;
  }

  private static Optional<StepInstance> choose(StepInstance shape) {
    List<StepInstance> all = shape.followAll(2);
    for (String identifier : PREFERRED) {
      Optional<StepInstance> found =
          all.stream().filter(r -> upper(r, 1).equals(identifier)).findFirst();
      if (found.isPresent()) {
        return found;
      }
    }
    return all.stream()
        .filter(r -> !VIEWS.contains(upper(r, 1)) && !FLAT.contains(upper(r, 2)))
        .findFirst();
  }

  private static String upper(StepInstance representation, int attribute) {
    return representation
        .optionalText(attribute)
        .orElse("")
        .replace(" ", "")
        .toUpperCase(Locale.ROOT);
  }

  private static InputException bodiless(StepInstance shape) {
    List<String> there =
        shape.followAll(2).stream().map(r -> r.optionalText(1).orElse("unnamed")).toList();
    return new InputException(
        shape.place(),
        shape.place() + ": no representation is a body; there is only " + there,
        "Export the element with its body.");
  }
}
