package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.StopSign;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;

/** The assembly of one field, with its parts, under the storey of its framing. */
final class AssemblyWriter {
  private final Draft draft;
  private final ShapeWriter shapes;
  private final PartWriter partWriter;
  private final PropertyWriter properties;
  private final QuantityWriter quantities;
  private final Provenance provenance;

  AssemblyWriter(
      Draft draft,
      ShapeWriter shapes,
      PartWriter partWriter,
      PropertyWriter properties,
      QuantityWriter quantities,
      Provenance provenance) {
    this.draft = draft;
    this.shapes = shapes;
    this.partWriter = partWriter;
    this.properties = properties;
    this.quantities = quantities;
    this.provenance = provenance;
  }

  List<PlacedPart> write(FieldLayout field) {
    SpatialPlace place = draft.host().place(field.storey());
    Transform frame = Transform.translation(corner(field));
    Value placement =
        shapes.localPlacement(place.placement(), ShapeWriter.relative(place.frame(), frame));
    Value assembly = assembly(field, placement);
    contain(field, assembly, place);
    List<PlacedPart> parts = new ArrayList<>();
    StopSign stop = StopSign.here();
    for (Part part : field.parts()) {
      stop.obey();
      PlacedPart placed = partWriter.write(part, placement, frame);
      quantities.write(placed);
      properties.write(placed);
      parts.add(placed);
    }
    Value elements = Value.list(parts.stream().map(PlacedPart::element).toList());
    draft.relate("IfcRelAggregates", id(field, "aggregates"), assembly, elements);
    properties.writeLayout(assembly, field, provenance);
    new DrainRunWriter(draft, shapes).write(field, parts);
    return parts;
  }

  private Value assembly(FieldLayout field, Value placement) {
    return draft.root(
        "IfcElementAssembly",
        id(field, "assembly"),
        Value.label("Under-deck drainage of " + field.field()),
        Value.UNSET,
        Value.label("under-deck drainage"),
        placement,
        Value.UNSET,
        Value.label(field.field()),
        Value.enumeration("SITE"),
        Value.enumeration("ACCESSORY_ASSEMBLY"));
  }

  private void contain(FieldLayout field, Value assembly, SpatialPlace place) {
    if (!place.isWorld()) {
      draft.relate(
          "IfcRelContainedInSpatialStructure",
          id(field, "contained"),
          Value.list(assembly),
          place.element());
    }
  }

  /** The least corner of all parts: coordinates from there are small numbers. */
  private static Vec3 corner(FieldLayout field) {
    Box all = Box.around(field.parts().stream().map(p -> p.bounds()).toList());
    return all.isEmpty() ? Vec3.ZERO : all.min();
  }

  private String id(FieldLayout field, String role) {
    return draft.ids().of(field.field(), role, "");
  }
}
