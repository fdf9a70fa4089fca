package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.underlee.clash.Cause;
import org.underlee.clash.Solid;
import org.underlee.clash.Sweep;
import org.underlee.clash.Theirs.Zone;
import org.underlee.finding.InputException;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepInstance;

/**
 * The room that the leaves of a door or a window sweep, where the model says how they open: the
 * element itself in IFC4, else its style or type. In the standard x runs along the width, and a
 * door's leaf swings to the positive y of the door's own placement; for a sash it is swept on both
 * sides. A leaf that slides, folds or rolls needs no room here.
 */
final class Swings {
  private static final Set<String> DOORS = Set.of("IfcDoor", "IfcDoorStandardCase");
  private static final Set<String> WINDOWS = Set.of("IfcWindow", "IfcWindowStandardCase");

  // Attributes of IfcDoor and IfcWindow; those of IFC2X3 end after the width.
  private static final int PLACEMENT = 5;
  private static final int HEIGHT = 8;
  private static final int WIDTH = 9;
  private static final int OPERATION = 11;

  private final IfcModel model;
  private final StepInstance opening;
  private final Transform frame;
  private final double width;
  private final double height;
  private final List<Zone> zones = new ArrayList<>();

  private Swings(IfcModel model, StepInstance opening, Transform own, Mesh shape) {
    this.model = model;
    this.opening = opening;
    double metres = model.units().metresPerLengthUnit();
    Box local = local(shape, own);
    double stated = opening.optionalNumber(WIDTH).orElse(0) * metres;
    double tall = opening.optionalNumber(HEIGHT).orElse(0) * metres;
    this.width = stated > 0 ? stated : local.size().x();
    this.height = tall > 0 ? tall : local.size().z();
    boolean drawn = !(stated > 0);
    this.frame = drawn ? shifted(own, local.min().x(), 0, 0) : own;
  }

  static List<Zone> of(IfcModel model, BuildingElement element, Transform toDeck) {
    boolean door = DOORS.contains(element.ifcClass());
    if (!door && !WINDOWS.contains(element.ifcClass())) {
      return List.of();
    }
    try {
      StepInstance opening = model.step().instance(element.instance());
      if (opening.isOmitted(PLACEMENT)) {
        return List.of();
      }
      Transform own = toDeck.after(model.placement(opening.ref(PLACEMENT)));
      Swings swings = new Swings(model, opening, own, element.shape());
      if (swings.width > 0 && swings.height > 0) {
        swings.add(door);
      }
      return swings.zones;
    } catch (InputException e) {
      return List.of(); // one that cannot be placed has no shape in its place either
    }
  }

  private static Box local(Mesh shape, Transform own) {
    Box box = Box.EMPTY;
    for (int v = 0; v < shape.vertexCount(); v++) {
      box = box.with(own.toLocal(shape.vertex(v)));
    }
    return box;
  }

  private void add(boolean door) {
    if (door) {
      door(doorOperation());
    } else {
      List<StepInstance> panels =
          model.definitions(opening.id()).stream()
              .filter(d -> d.keyword().equals("IFCWINDOWPANELPROPERTIES"))
              .toList();
      panels.forEach(p -> sash(word(p, 4), Panel.of(word(p, 5), panels.size(), width, height)));
    }
  }

  private String doorOperation() {
    String own = opening.size() > OPERATION ? word(opening, OPERATION) : "";
    if (!own.isEmpty() && !own.equals("NOTDEFINED")) {
      return own;
    }
    return model
        .type(opening.id())
        .map(t -> word(t, t.keyword().equals("IFCDOORSTYLE") ? 8 : 10))
        .orElse("");
  }

  private static String word(StepInstance of, int attribute) {
    return of.size() > attribute ? of.optionalEnumeration(attribute).orElse("") : "";
  }

  /** IfcDoorTypeOperationEnum; where two leaves may open to either side, both sides are swept. */
  private void door(String operation) {
    double half = width / 2;
    switch (operation) {
      case "SINGLE_SWING_LEFT" -> left(width, 0, 90);
      case "SINGLE_SWING_RIGHT" -> right(width, 90, 180);
      case "DOUBLE_SWING_LEFT" -> left(width, -90, 90);
      case "DOUBLE_SWING_RIGHT" -> right(width, 90, 270);
      case "SWING_FIXED_LEFT" -> left(half, 0, 90);
      case "SWING_FIXED_RIGHT" -> right(half, 90, 180);
      case "DOUBLE_DOOR_SINGLE_SWING" -> {
        left(half, 0, 90);
        right(half, 90, 180);
      }
      case "DOUBLE_DOOR_DOUBLE_SWING",
          "DOUBLE_DOOR_SINGLE_SWING_OPPOSITE_LEFT",
          "DOUBLE_DOOR_SINGLE_SWING_OPPOSITE_RIGHT" -> {
        left(half, -90, 90);
        right(half, 90, 270);
      }
      default -> {}
    }
  }

  private void left(double leaf, double from, double to) {
    add(Sweep.of(frame, leaf, from, to, height));
  }

  private void right(double leaf, double from, double to) {
    add(Sweep.of(shifted(frame, width, 0, 0), leaf, from, to, height));
  }

  /**
   * The part of a window that one sash fills.
   *
   * @param x of its left edge, z of its lower edge, in the window
   */
  private record Panel(double x, double z, double width, double height) {
    /** A share of the window on the side where it is said to be; all of it where that is not. */
    static Panel of(String position, int panels, double width, double height) {
      double w = width / panels;
      double h = height / panels;
      if (panels == 1) {
        return new Panel(0, 0, width, height);
      }
      return switch (position) {
        case "LEFT" -> new Panel(0, 0, w, height);
        case "MIDDLE" -> new Panel(w, 0, w, height);
        case "RIGHT" -> new Panel(width - w, 0, w, height);
        case "BOTTOM" -> new Panel(0, 0, width, h);
        case "TOP" -> new Panel(0, height - h, width, h);
        default -> new Panel(0, 0, width, height);
      };
    }
  }

  /** IfcWindowPanelOperationEnum. */
  private void sash(String operation, Panel p) {
    Transform left = shifted(frame, p.x, 0, p.z);
    Transform right = shifted(frame, p.x + p.width, 0, p.z);
    switch (operation) {
      case "SIDEHUNGLEFTHAND", "TILTANDTURNLEFTHAND" ->
          add(Sweep.of(left, p.width, -90, 90, p.height));
      case "SIDEHUNGRIGHTHAND", "TILTANDTURNRIGHTHAND" ->
          add(Sweep.of(right, p.width, 90, 270, p.height));
      case "TOPHUNG" ->
          add(Sweep.of(lying(frame, p.x, p.z + p.height), p.height, 180, 360, p.width));
      case "BOTTOMHUNG" -> add(Sweep.of(lying(frame, p.x, p.z), p.height, 0, 180, p.width));
      case "PIVOTVERTICAL" -> {
        Transform middle = shifted(frame, p.x + p.width / 2, 0, p.z);
        add(Sweep.of(middle, p.width / 2, -90, 90, p.height));
        add(Sweep.of(middle, p.width / 2, 90, 270, p.height));
      }
      case "PIVOTHORIZONTAL" -> {
        Transform middle = lying(frame, p.x, p.z + p.height / 2);
        add(Sweep.of(middle, p.height / 2, 0, 180, p.width));
        add(Sweep.of(middle, p.height / 2, 180, 360, p.width));
      }
      default -> {}
    }
  }

  private void add(Solid room) {
    zones.add(new Zone(Cause.SWING, room));
  }

  private static Transform shifted(Transform frame, double x, double y, double z) {
    return frame.after(Transform.translation(new Vec3(x, y, z)));
  }

  /** A hinge along the width: its x is the window's y, its y the window's z. */
  private static Transform lying(Transform frame, double x, double z) {
    return frame.after(new Transform(new Vec3(x, 0, z), Vec3.Y, Vec3.Z, Vec3.X));
  }
}
