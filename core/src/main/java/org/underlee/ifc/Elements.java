package org.underlee.ifc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Reads every element that has a representation, in file order. */
final class Elements {
  /** InteriorOrExteriorSpace in IFC2X3, PredefinedType from IFC4 on: INTERNAL or EXTERNAL. */
  private static final int INSIDE_OR_OUTSIDE = 9;

  private final StepFile step;
  private final IfcSchema schema;
  private final Relations relations;
  private final SpatialTree tree;
  private final Bodies bodies;
  private final ElementTable table = new ElementTable();
  private final List<BuildingElement> read = new ArrayList<>();
  private final List<NotMeasured> notMeasured = new ArrayList<>();

  /** What could be read, and what could not. */
  record Result(
      List<BuildingElement> elements,
      List<BuildingElement> spaces,
      List<NotMeasured> notMeasured,
      List<Finding> findings) {}

  Elements(StepFile step, IfcSchema schema, Relations relations, SpatialTree tree, Bodies bodies) {
    this.step = step;
    this.schema = schema;
    this.relations = relations;
    this.tree = tree;
    this.bodies = bodies;
  }

  Result read() {
    for (int index = 0; index < step.count(); index++) {
      if (table.isElement(step.keyword(index))) {
        element(index);
      }
    }
    return new Result(List.copyOf(read), spaces(), List.copyOf(notMeasured), bodies.findings());
  }

  /** Spaces with a body that can be read; the others say nothing about the framing. */
  private List<BuildingElement> spaces() {
    List<BuildingElement> spaces = new ArrayList<>();
    for (int index : step.ofKeyword("IFCSPACE")) {
      space(index).ifPresent(spaces::add);
    }
    return List.copyOf(spaces);
  }

  private Optional<BuildingElement> space(int index) {
    try {
      StepInstance space = step.decode(index);
      return space.isOmitted(6) ? Optional.empty() : Optional.of(space(space));
    } catch (InputException | IllegalArgumentException | ArithmeticException e) {
      return Optional.empty();
    }
  }

  private BuildingElement space(StepInstance space) {
    return new BuildingElement(
        space.id(),
        space.optionalText(0).orElse(""),
        "IfcSpace",
        space.optionalText(2).orElse(""),
        "",
        space.optionalEnumeration(INSIDE_OR_OUTSIDE).orElse(""),
        Optional.empty(),
        bodies.body(space));
  }

  private void element(int index) {
    String globalId = "";
    try {
      StepInstance product = step.decode(index);
      globalId = product.optionalText(0).orElse("");
      if (!product.isOmitted(6)) {
        read.add(element(product, globalId));
      }
    } catch (InputException e) {
      skip(index, globalId, String.valueOf(e.getMessage()));
    } catch (IllegalArgumentException | ArithmeticException e) {
      skip(index, globalId, "its coordinates are too large to place: " + e.getMessage());
    }
  }

  private void skip(int index, String globalId, String why) {
    Place place = Place.element(step.id(index), globalId).inFile(step.name());
    notMeasured.add(new NotMeasured(globalId, place, why));
  }

  private BuildingElement element(StepInstance product, String globalId) {
    OptionalLong typeId = relations.type(product.id());
    Optional<StepInstance> type =
        typeId.isPresent() ? Optional.of(step.instance(typeId.getAsLong())) : Optional.empty();
    return new BuildingElement(
        product.id(),
        globalId,
        table.spelling(product.keyword()),
        product.optionalText(2).orElse(""),
        type.flatMap(t -> t.optionalText(2)).orElse(""),
        predefinedType(product, type),
        tree.storeyOf(product.id()),
        bodies.body(product));
  }

  /** The element's own, or else its type's. */
  private String predefinedType(StepInstance product, Optional<StepInstance> type) {
    Optional<String> own =
        table
            .predefinedType(product.keyword(), schema)
            .flatMap(product::optionalEnumeration)
            .filter(name -> !name.equals("NOTDEFINED"));
    return own.or(() -> type.flatMap(Elements::typePredefined)).orElse("");
  }

  /** PredefinedType stands at 9 in every element type but furniture, where it is 10. */
  private static Optional<String> typePredefined(StepInstance type) {
    int at = type.keyword().equals("IFCFURNITURETYPE") ? 10 : 9;
    return type.optionalEnumeration(at).filter(name -> !name.equals("NOTDEFINED"));
  }
}
