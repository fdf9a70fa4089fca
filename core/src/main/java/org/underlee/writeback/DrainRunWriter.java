package org.underlee.writeback;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcSchema;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Link;
import org.underlee.layout.PartKind;

/**
 * The drain run of a field as a rainwater system: its parts, and ports that connect it end to end.
 * A link becomes a source on the part upstream and a sink on the part downstream. A part that
 * nothing runs into has an open sink at its top, and one that runs into nothing an open source at
 * its bottom. Links from parts that IFC does not let carry ports (pans) are left to the layout.
 */
final class DrainRunWriter {
  private static final Set<PartKind> CARRIES =
      Set.of(PartKind.GUTTER, PartKind.OUTLET, PartKind.DOWNSPOUT, PartKind.ELBOW);

  private final Draft draft;
  private final ShapeWriter shapes;

  DrainRunWriter(Draft draft, ShapeWriter shapes) {
    this.draft = draft;
    this.shapes = shapes;
  }

  void write(FieldLayout field, List<PlacedPart> parts) {
    List<PlacedPart> run =
        parts.stream()
            .filter(p -> CARRIES.contains(p.part().kind()) || p.part().kind() == PartKind.END_CAP)
            .toList();
    if (run.isEmpty()) {
      return;
    }
    system(field, run);
    Map<String, PlacedPart> carriers =
        run.stream()
            .filter(p -> CARRIES.contains(p.part().kind()))
            .collect(
                Collectors.toMap(
                    p -> p.part().id(), Function.identity(), (a, b) -> a, LinkedHashMap::new));
    new Ports(carriers).write(field.links());
  }

  private void system(FieldLayout field, List<PlacedPart> run) {
    Value name = Value.label("Drain run of " + field.field());
    Value purpose = Value.label("rainwater");
    Value system =
        draft.ifc2x3()
            ? draft.root("IfcSystem", id(field, "system"), name, Value.UNSET, purpose)
            : draft.root(
                "IfcDistributionSystem",
                id(field, "system"),
                name,
                Value.UNSET,
                purpose,
                Value.UNSET,
                Value.enumeration("RAINWATER"));
    draft.relate(
        "IfcRelAssignsToGroup",
        id(field, "assigns-to-group"),
        Value.list(run.stream().map(PlacedPart::element).toList()),
        Value.UNSET,
        system);
    draft.host().building().ifPresent(building -> serves(field, system, building));
  }

  /** IFC4X3 says it as it says any reference to a place, and deprecates the older relationship. */
  private void serves(FieldLayout field, Value system, Value building) {
    if (draft.host().schema() == IfcSchema.IFC4X3) {
      draft.relate(
          "IfcRelReferencedInSpatialStructure",
          id(field, "referenced-in"),
          Value.list(system),
          building);
    } else {
      draft.relate(
          "IfcRelServicesBuildings", id(field, "services-buildings"), system, Value.list(building));
    }
  }

  private String id(FieldLayout field, String role) {
    return draft.ids().of(field.field(), role, "");
  }

  /** The ports of one run. */
  private final class Ports {
    private final Map<String, PlacedPart> carriers;
    private final Map<String, List<Value>> inlets = new HashMap<>();
    private final Map<String, List<Value>> outlets = new HashMap<>();

    Ports(Map<String, PlacedPart> carriers) {
      this.carriers = carriers;
    }

    void write(List<Link> links) {
      for (Link link : links) {
        PlacedPart from = carriers.get(link.from());
        PlacedPart to = carriers.get(link.to());
        if (from != null && to != null) {
          connect(from, to, link.at());
        }
      }
      for (PlacedPart part : carriers.values()) {
        openEnds(part);
        nest(part);
      }
    }

    private void connect(PlacedPart from, PlacedPart to, Vec3 at) {
      Value source = source(from, at);
      Value sink = sink(to, at);
      String way = from.part().id() + "/out-" + outletsOf(from).size() + ">" + to.part().id();
      String id = draft.ids().of(from.part().field(), "connects-ports", way);
      draft.relate("IfcRelConnectsPorts", id, source, sink, Value.UNSET);
    }

    private void openEnds(PlacedPart part) {
      Box box = part.part().bounds();
      Vec3 middle = box.centre();
      if (inletsOf(part).isEmpty()) {
        sink(part, new Vec3(middle.x(), middle.y(), box.max().z()));
      }
      if (outletsOf(part).isEmpty()) {
        source(part, new Vec3(middle.x(), middle.y(), box.min().z()));
      }
    }

    private Value sink(PlacedPart part, Vec3 at) {
      return port(part, "SINK", "in-" + (inletsOf(part).size() + 1), at, inletsOf(part));
    }

    private Value source(PlacedPart part, Vec3 at) {
      return port(part, "SOURCE", "out-" + (outletsOf(part).size() + 1), at, outletsOf(part));
    }

    private List<Value> inletsOf(PlacedPart part) {
      return inlets.computeIfAbsent(part.part().id(), id -> new ArrayList<>());
    }

    private List<Value> outletsOf(PlacedPart part) {
      return outlets.computeIfAbsent(part.part().id(), id -> new ArrayList<>());
    }

    private Value port(PlacedPart part, String direction, String name, Vec3 at, List<Value> to) {
      Transform here = Transform.translation(part.frame().toLocal(at));
      List<Value> rest =
          new ArrayList<>(
              List.of(
                  Value.UNSET,
                  shapes.localPlacement(part.placement(), here),
                  Value.UNSET,
                  Value.enumeration(direction)));
      if (!draft.ifc2x3()) {
        rest.add(Value.enumeration("PIPE"));
        rest.add(Value.enumeration("RAINWATER"));
      }
      String globalId = draft.ids().of(part.part().field(), "port", part.part().id() + "/" + name);
      Value port =
          draft.root("IfcDistributionPort", globalId, Value.label(name), Value.UNSET, rest);
      to.add(port);
      return port;
    }

    /** Ports belong to their part by nesting, or in IFC2X3 by a relationship each. */
    private void nest(PlacedPart part) {
      List<Value> ports = new ArrayList<>(inletsOf(part));
      ports.addAll(outletsOf(part));
      String field = part.part().field();
      if (!draft.ifc2x3()) {
        String id = draft.ids().of(field, "nests-ports", part.part().id());
        draft.relate("IfcRelNests", id, part.element(), Value.list(ports));
        return;
      }
      for (int i = 0; i < ports.size(); i++) {
        String id = draft.ids().of(field, "connects-port", part.part().id() + "/" + i);
        draft.relate("IfcRelConnectsPortToElement", id, ports.get(i), part.element());
      }
    }
  }
}
