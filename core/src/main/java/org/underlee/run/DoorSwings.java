package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.clash.Cause;
import org.underlee.clash.Solid;
import org.underlee.clash.Theirs.Zone;
import org.underlee.finding.InputException;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepInstance;

/**
 * The room that a door's leaves sweep, where the model says how it opens: in the standard a leaf
 * swings to the positive y of the door's own placement, x running along its width. The room is
 * taken for the box around the sweep.
 */
final class DoorSwings {
  private static final Set<String> DOORS = Set.of("IfcDoor", "IfcDoorStandardCase");

  // Attributes of IfcDoor; IFC2X3 ends after the width.
  private static final int PLACEMENT = 5;
  private static final int HEIGHT = 8;
  private static final int WIDTH = 9;
  private static final int OPERATION = 11;

  // Of a type, and of a style of IFC2X3.
  private static final int OPERATION_OF_TYPE = 10;
  private static final int OPERATION_OF_STYLE = 8;

  private DoorSwings() {}

  static List<Zone> of(IfcModel model, BuildingElement element, Transform toDeck) {
    if (!DOORS.contains(element.ifcClass())) {
      return List.of();
    }
    StepInstance door = model.step().instance(element.instance());
    if (door.isOmitted(PLACEMENT)) {
      return List.of();
    }
    String operation = operation(model, door);
    double metres = model.units().metresPerLengthUnit();
    double width = door.optionalNumber(WIDTH).orElse(0) * metres;
    double height = door.optionalNumber(HEIGHT).orElse(0) * metres;
    if (!operation.contains("SWING") || !(width > 0 && height > 0)) {
      return List.of();
    }
    double leaf = operation.startsWith("DOUBLE_DOOR") ? width / 2 : width;
    boolean both = operation.startsWith("DOUBLE_SWING") || operation.endsWith("DOUBLE_SWING");
    try {
      Transform frame = toDeck.after(model.placement(door.ref(PLACEMENT)));
      return List.of(zone(frame, width, both ? -leaf : 0, leaf, height));
    } catch (InputException e) {
      return List.of(); // a door that cannot be placed has no shape in its place either
    }
  }

  /** The door's own, or else its type's; empty when neither says. */
  private static String operation(IfcModel model, StepInstance door) {
    return known(door, OPERATION)
        .or(() -> model.typeOf(door.id()).flatMap(DoorSwings::operationOfType))
        .orElse("");
  }

  private static Optional<String> operationOfType(StepInstance type) {
    return switch (type.keyword()) {
      case "IFCDOORTYPE" -> known(type, OPERATION_OF_TYPE);
      case "IFCDOORSTYLE" -> known(type, OPERATION_OF_STYLE);
      default -> Optional.empty();
    };
  }

  private static Optional<String> known(StepInstance instance, int attribute) {
    return instance.optionalEnumeration(attribute).filter(name -> !name.equals("NOTDEFINED"));
  }

  private static Zone zone(Transform frame, double width, double from, double to, double height) {
    List<Vec2> ring = new ArrayList<>();
    ring.add(new Vec2(0, from));
    ring.add(new Vec2(width, from));
    ring.add(new Vec2(width, to));
    ring.add(new Vec2(0, to));
    Outline outline = new Outline(ring, List.of());
    return new Zone(Cause.SWING, Solid.of(Extrusion.straight(frame, outline, height).mesh()));
  }
}
