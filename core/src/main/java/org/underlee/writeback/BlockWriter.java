package org.underlee.writeback;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.takeoff.Order;

/** All the instances of a design, in order: assemblies, types, bill. */
final class BlockWriter {
  private final Draft draft;
  private final Provenance provenance;
  private final Map<String, PlacedPart> parts = new LinkedHashMap<>();

  BlockWriter(Host host, Provenance provenance) {
    this.draft = new Draft(host, provenance);
    this.provenance = provenance;
  }

  void write(Layout layout, List<BillLine> bill, Order order) {
    requireOwnIds(layout.parts());
    Kit kit = layout.kit();
    ShapeWriter shapes = new ShapeWriter(draft);
    MaterialWriter materials = new MaterialWriter(draft, shapes, kit);
    Definitions definitions = new Definitions(draft);
    AssemblyWriter assemblies =
        new AssemblyWriter(
            draft,
            shapes,
            new PartWriter(draft, shapes, materials),
            new PropertyWriter(draft, definitions, kit),
            new QuantityWriter(draft, kit, definitions),
            provenance);
    for (FieldLayout field : layout.fields()) {
      if (!field.parts().isEmpty()) {
        assemblies.write(field).forEach(p -> parts.put(p.part().id(), p));
      }
    }
    List<PlacedPart> all = List.copyOf(parts.values());
    List<Value> types = new TypeWriter(draft, materials, kit).write(all);
    new ClassificationWriter(draft).write(all);
    declare(types, new BillWriter(draft, definitions, parts).write(bill, order));
  }

  /** What is in the way of parts that have been written. */
  void write(List<Interference> interferences) {
    new InterferenceWriter(draft).write(interferences, parts);
  }

  /** The lines of the new instances. */
  List<String> lines() {
    return draft.out().lines();
  }

  /** The GlobalIds of all the new instances. */
  Set<String> allGlobalIds() {
    return draft.globalIds();
  }

  /** GlobalIds by part id. */
  Map<String, String> globalIds() {
    Map<String, String> ids = new LinkedHashMap<>();
    parts.forEach((id, part) -> ids.put(id, part.globalId()));
    return ids;
  }

  private static void requireOwnIds(List<Part> all) {
    Set<String> ids = new HashSet<>();
    for (Part part : all) {
      if (!ids.add(part.id())) {
        throw new IllegalArgumentException("two parts have the id " + part.id());
      }
    }
  }

  /** Types and the bill belong to the project's context; IFC2X3 has no way to say so. */
  private void declare(List<Value> types, Optional<Value> schedule) {
    List<Value> declared = new ArrayList<>();
    Stream.concat(types.stream(), schedule.stream()).forEach(declared::add);
    if (!draft.ifc2x3() && !declared.isEmpty()) {
      draft.relate(
          "IfcRelDeclares",
          draft.ids().of("", "declares", ""),
          draft.host().project(),
          Value.list(declared));
    }
  }
}
