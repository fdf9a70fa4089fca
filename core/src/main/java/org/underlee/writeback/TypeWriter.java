package org.underlee.writeback;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.geom.Outline;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;

/**
 * One type for each stock item that parts are cut from, with its material; the parts refer to it.
 * An item that serves as two classes of part gets a type for each.
 */
final class TypeWriter {
  private final Draft draft;
  private final MaterialWriter materials;
  private final Kit kit;

  TypeWriter(Draft draft, MaterialWriter materials, Kit kit) {
    this.draft = draft;
    this.materials = materials;
    this.kit = kit;
  }

  private record Key(String item, IfcClass ifcClass) {}

  /** The types written. */
  List<Value> write(List<PlacedPart> parts) {
    Map<Key, List<PlacedPart>> byType = new LinkedHashMap<>();
    for (PlacedPart p : parts) {
      byType.computeIfAbsent(new Key(p.part().item(), p.ifcClass()), k -> new ArrayList<>()).add(p);
    }
    List<Value> types = new ArrayList<>();
    byType.forEach((key, members) -> types.add(type(key, members)));
    return types;
  }

  private Value type(Key key, List<PlacedPart> members) {
    StockItem item = kit.item(key.item());
    IfcFamily family = key.ifcClass().family();
    String name = family.type() + " " + key.ifcClass().predefined() + " " + item.id();
    List<Value> rest =
        new ArrayList<>(
            List.of(Value.UNSET, Value.UNSET, Value.UNSET, Value.label(item.id()), Value.UNSET));
    rest.addAll(family.typeTail(Value.enumeration(key.ifcClass().predefined()), draft.ifc2x3()));
    Value type =
        draft.root(
            family.type(),
            draft.ids().of("", "type", name),
            Value.label(item.description()),
            Value.text(item.source()),
            rest);
    Value elements = Value.list(members.stream().map(PlacedPart::element).toList());
    draft.relate(
        "IfcRelDefinesByType", draft.ids().of("", "defines-by-type", name), elements, type);
    draft.relate(
        "IfcRelAssociatesMaterial",
        draft.ids().of("", "associates-material", name),
        Value.list(type),
        materials.madeOf(item, family, commonSection(members)));
    return type;
  }

  /** The section that all members share; none when one of them differs or has none. */
  private static Optional<Outline> commonSection(List<PlacedPart> members) {
    Optional<Outline> first = members.get(0).part().section();
    return members.stream().allMatch(m -> m.part().section().equals(first))
        ? first
        : Optional.empty();
  }
}
