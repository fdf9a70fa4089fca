package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/** One part as one element with its body, and the pipe hole of a collar piece as an opening. */
final class PartWriter {
  private final Draft draft;
  private final ShapeWriter shapes;
  private final MaterialWriter materials;

  PartWriter(Draft draft, ShapeWriter shapes, MaterialWriter materials) {
    this.draft = draft;
    this.shapes = shapes;
    this.materials = materials;
  }

  /**
   * @param assembly the placement of the assembly, and its frame in world metres
   */
  PlacedPart write(Part part, Value assembly, Transform assemblyFrame) {
    List<Extrusion> sweeps = part.bodies().stream().map(StandardSweep::of).toList();
    Transform frame = sweeps.isEmpty() ? assemblyFrame : sweeps.get(0).frame();
    Value placement = shapes.localPlacement(assembly, ShapeWriter.relative(assemblyFrame, frame));
    String globalId = draft.ids().of(part.field(), part.kind().word(), part.id());
    Value shape = sweeps.isEmpty() ? Value.UNSET : body(part, sweeps, frame);
    IfcClass ifc = IfcClass.of(part.kind());
    List<Value> rest =
        new ArrayList<>(
            List.of(Value.label(part.kind().word()), placement, shape, Value.label(part.id())));
    rest.addAll(ifc.family().occurrenceTail(Value.enumeration(ifc.predefined()), draft.ifc2x3()));
    Value element =
        draft.root(
            ifc.family().occurrence(draft.ifc2x3()),
            globalId,
            Value.label(part.label()),
            Value.text(part.why().reason().toString()),
            rest);
    PlacedPart placed = new PlacedPart(part, element, globalId, placement, frame);
    if (isCollar(part)) {
      new OpeningWriter(draft, shapes).write(placed, sweeps);
    }
    return placed;
  }

  private Value body(Part part, List<Extrusion> sweeps, Transform frame) {
    List<Value> solids = new ArrayList<>();
    for (Extrusion sweep : sweeps) {
      Value solid = shapes.solid(isCollar(part) ? withoutHoles(sweep) : sweep, frame);
      materials.style(solid, part.item());
      solids.add(solid);
    }
    return shapes.shape(solids);
  }

  private static boolean isCollar(Part part) {
    return part.kind() == PartKind.COLLAR_PIECE;
  }

  private static Extrusion withoutHoles(Extrusion e) {
    return new Extrusion(e.frame(), Outline.of(e.section().outer()), e.sweep());
  }
}
