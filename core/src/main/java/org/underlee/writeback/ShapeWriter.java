package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Placements and bodies in the model's length unit. Frames given here are rigid. */
final class ShapeWriter {
  /**
   * Direction ratios are rounded to 15 places: half of that turns a 100 m part by less than a
   * nanometre, and noise such as 1E-17 goes.
   */
  private static final double RATIO_STEPS = 1e15;

  private static final Value AREA = Value.enumeration("AREA");

  private final InstanceWriter out;
  private final ModelUnits units;
  private final Value context;

  ShapeWriter(Draft draft) {
    this.out = draft.out();
    this.units = draft.host().units();
    this.context = draft.host().body().orElseGet(() -> ownContext(draft.host().model()));
  }

  private Value ownContext(Value parent) {
    return out.add(
        "IfcGeometricRepresentationSubContext",
        Value.label("Body"),
        Value.label("Model"),
        Value.DERIVED,
        Value.DERIVED,
        Value.DERIVED,
        Value.DERIVED,
        parent,
        Value.UNSET,
        Value.enumeration("MODEL_VIEW"),
        Value.UNSET);
  }

  /** The frame, given in that of the placement it is relative to. */
  Value localPlacement(Value relativeTo, Transform frame) {
    return out.add("IfcLocalPlacement", relativeTo, axisPlacement(frame));
  }

  /** A product's shape: solids swept in its frame. */
  Value shape(List<Value> solids) {
    Value body =
        out.add(
            "IfcShapeRepresentation",
            context,
            Value.label("Body"),
            Value.label("SweptSolid"),
            Value.list(solids));
    return out.add("IfcProductDefinitionShape", Value.UNSET, Value.UNSET, Value.list(body));
  }

  /**
   * @param sweep in standard form, in world metres
   * @param product the product's frame in world metres
   */
  Value solid(Extrusion sweep, Transform product) {
    Vec3 along = sweep.sweep();
    return out.add(
        "IfcExtrudedAreaSolid",
        profile(sweep.section(), Value.UNSET),
        axisPlacement(relative(product, sweep.frame())),
        direction(along.unit()),
        units.length(along.length()));
  }

  Value profile(Outline section, Value name) {
    Value outer = ring(section.outer());
    if (section.holes().isEmpty()) {
      return out.shared("IfcArbitraryClosedProfileDef", AREA, name, outer);
    }
    Value holes = Value.list(section.holes().stream().map(this::ring).toList());
    return out.shared("IfcArbitraryProfileDefWithVoids", AREA, name, outer, holes);
  }

  /** The inner frame as seen from the outer one; both rigid. */
  static Transform relative(Transform outer, Transform inner) {
    return new Transform(
        outer.toLocal(inner.origin()),
        outer.directionToLocal(inner.x()),
        outer.directionToLocal(inner.y()),
        outer.directionToLocal(inner.z()));
  }

  private Value ring(List<Vec2> points) {
    List<Value> corners = new ArrayList<>();
    for (Vec2 p : points) {
      corners.add(point(p.x(), p.y()));
    }
    corners.add(corners.get(0));
    return out.shared("IfcPolyline", Value.list(corners));
  }

  private Value axisPlacement(Transform frame) {
    Vec3 o = frame.origin();
    Value axis = direction(frame.z());
    Value reference = direction(frame.x());
    return out.shared("IfcAxis2Placement3D", point(o.x(), o.y(), o.z()), axis, reference);
  }

  private Value point(double... metres) {
    Value[] coordinates = new Value[metres.length];
    for (int i = 0; i < metres.length; i++) {
      coordinates[i] = units.length(metres[i]);
    }
    return out.shared("IfcCartesianPoint", Value.list(coordinates));
  }

  private Value direction(Vec3 d) {
    Value ratios = Value.list(ratio(d.x()), ratio(d.y()), ratio(d.z()));
    return out.shared("IfcDirection", ratios);
  }

  private static Value ratio(double r) {
    return Value.real(Math.rint(r * RATIO_STEPS) / RATIO_STEPS);
  }
}
