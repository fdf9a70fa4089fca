package org.underlee.ifc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.ifc.shape.CutWork;
import org.underlee.ifc.shape.Reach;
import org.underlee.ifc.shape.ShapeReader;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/**
 * The body of a product in world metres: its representation {@code Body}, else {@code Facetation},
 * else the first that is no axis, plan or other view of it, else its bounding box with a finding.
 * Openings are cut out; one that cannot be is left uncut, with a finding.
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

  private final StepFile step;
  private final Relations relations;
  private final ShapeReader shapes;
  private final Reach reach = new Reach();
  private final Placements placements;
  private final double metresPerUnit;
  private final List<Finding> findings = new ArrayList<>();

  Bodies(StepFile step, IfcUnits units, Relations relations, Placements placements) {
    this.step = step;
    this.relations = relations;
    this.shapes = new ShapeReader(units.radiansPerAngleUnit(), units.metresPerLengthUnit());
    this.placements = placements;
    this.metresPerUnit = units.metresPerLengthUnit();
  }

  Mesh body(StepInstance product) {
    StepInstance shape = product.follow(6);
    StepInstance representation =
        choose(shape).or(() -> box(product, shape)).orElseThrow(() -> bodiless(shape));
    Transform place = place(product);
    Mesh mesh = withOpenings(product, place, shapes.representation(representation));
    if (mesh.isEmpty()) {
      throw representation.error("its body has no faces");
    }
    return mesh.transformed(place.after(Transform.scaling(metresPerUnit)));
  }

  /** A box in world metres that surely holds the body, where it can be told without its solid. */
  Optional<Box> reach(StepInstance product) {
    return choose(product.follow(6))
        .flatMap(reach::of)
        .map(box -> box.surelyMoved(place(product).after(Transform.scaling(metresPerUnit))));
  }

  private Transform place(StepInstance product) {
    return product.isOmitted(5) ? Transform.IDENTITY : placements.world(product.ref(5));
  }

  /** What could not be read as it should since this was last asked. */
  List<Finding> takeFindings() {
    List<Finding> taken = List.copyOf(findings);
    findings.clear();
    return taken;
  }

  private Mesh withOpenings(StepInstance product, Transform place, Mesh whole) {
    List<ShapeReader.Hole> holes = new ArrayList<>();
    for (long id : relations.openings(product.id())) {
      noting(product, () -> hole(id, place).ifPresent(holes::add));
    }
    if (holes.isEmpty()) {
      return whole;
    }
    Mesh rest;
    try {
      rest = shapes.cut(whole, holes, new CutWork());
    } catch (InputException together) {
      rest = oneByOne(product, whole, holes);
    }
    if (rest.isEmpty()) {
      throw product.error("its openings leave nothing of it");
    }
    return rest;
  }

  /** Where the holes cannot be cut all together: those that can. */
  private Mesh oneByOne(StepInstance product, Mesh whole, List<ShapeReader.Hole> holes) {
    Mesh[] rest = {whole};
    CutWork work = new CutWork();
    for (ShapeReader.Hole hole : holes) {
      noting(product, () -> rest[0] = shapes.cut(rest[0], List.of(hole), work));
    }
    return rest[0];
  }

  private Optional<ShapeReader.Hole> hole(long openingId, Transform body) {
    StepInstance opening = step.instance(openingId);
    return opening
        .optionalFollow(6)
        .flatMap(Bodies::choose)
        .map(shape -> shapes.hole(shape, toBody(body, place(opening))));
  }

  private void noting(StepInstance product, Runnable work) {
    try {
      work.run();
    } catch (InputException e) {
      findings.add(
          Finding.of(
              IfcRules.OPENING_NOT_CUT,
              product.place(),
              String.valueOf(e.getMessage()),
              e.advice()));
    }
  }

  /** From one local frame into the other, both rigid, in file units. */
  private Transform toBody(Transform body, Transform opening) {
    return new Transform(
        body.toLocal(opening.origin()).times(1 / metresPerUnit),
        body.directionToLocal(opening.x()),
        body.directionToLocal(opening.y()),
        body.directionToLocal(opening.z()));
  }

  private Optional<StepInstance> box(StepInstance product, StepInstance shape) {
    Optional<StepInstance> box =
        shape.followAll(2).stream().filter(r -> upper(r, 2).equals("BOUNDINGBOX")).findFirst();
    box.ifPresent(
        b ->
            findings.add(
                Finding.of(
                    IfcRules.BOUNDING_BOX_ONLY,
                    product.place(),
                    "The model has no body of this element; it is taken for the box around it.",
                    "Export the element with its body.")));
    return box;
  }

  private static Optional<StepInstance> choose(StepInstance shape) {
    List<StepInstance> all = shape.followAll(2);
    for (String identifier : PREFERRED) {
      for (StepInstance one : all) {
        if (upper(one, 1).equals(identifier)) {
          return Optional.of(one);
        }
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
        "no representation is a body; there is only " + there,
        "Export the element with its body.");
  }
}
