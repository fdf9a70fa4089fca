package org.underlee.ifc.shape;

import java.util.HashMap;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.step.StepInstance;

/**
 * Shapes drawn once and used in many places (IfcMappedItem). The map's origin goes to the target
 * operator's origin, as ISO 10303-43 says of mapped_item. Each source is read once and kept.
 */
final class MappedItems {
  private final ShapeReader shapes;
  private final Map<Long, Mesh> sources = new HashMap<>();

  MappedItems(ShapeReader shapes) {
    this.shapes = shapes;
  }

  Map<String, ItemReader> readers() {
    return Map.of("IFCMAPPEDITEM", this::mapped);
  }

  private Mesh mapped(StepInstance item) {
    StepInstance map = item.follow(0);
    Transform origin = Axes.placement(map.follow(0));
    Transform target = Axes.operator(item.follow(1));
    return source(map.follow(1)).transformed(target.after(origin.inverse()));
  }

  private Mesh source(StepInstance representation) {
    Mesh known = sources.get(representation.id());
    if (known == null) {
      known = shapes.representation(representation);
      sources.put(representation.id(), known);
    }
    return known;
  }
}
