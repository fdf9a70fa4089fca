package org.underlee.writeback;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.geom.Outline;
import org.underlee.kit.Kit;
import org.underlee.kit.Material;
import org.underlee.kit.StockItem;

/** Materials, what a stock item is made of, and the colour of bodies. */
final class MaterialWriter {
  private static final double COLOUR_STEPS = 255;

  private final Draft draft;
  private final ShapeWriter shapes;
  private final Kit kit;
  private final Map<String, Value> styles = new HashMap<>();
  private final Map<String, Value> materials = new HashMap<>();

  MaterialWriter(Draft draft, ShapeWriter shapes, Kit kit) {
    this.draft = draft;
    this.shapes = shapes;
    this.kit = kit;
  }

  /** Gives a solid the colour of the item's material. */
  void style(Value solid, String item) {
    Material material = kit.materialOf(kit.item(item));
    Value style = styles.computeIfAbsent(material.id(), id -> surfaceStyle(material));
    draft.out().add("IfcStyledItem", solid, Value.list(style), Value.UNSET);
  }

  /**
   * What an item is made of: a profile for formed lengths (IFC4 and later), a layer for sheet, else
   * the material alone.
   *
   * @param section of the formed length, where all its parts have the same
   */
  Value madeOf(StockItem item, IfcFamily family, Optional<Outline> section) {
    Value material = material(kit.materialOf(item));
    boolean formed = family == IfcFamily.MEMBER || family == IfcFamily.SEGMENT;
    if (formed && section.isPresent() && !draft.ifc2x3()) {
      return profileSet(item, material, section.get());
    }
    boolean sheet = family == IfcFamily.PLATE || family == IfcFamily.COVERING;
    return sheet && item.thickness() > 0 ? layerSet(item, material) : material;
  }

  private Value profileSet(StockItem item, Value material, Outline section) {
    Value name = Value.label(item.id());
    Value profile =
        draft
            .out()
            .add(
                "IfcMaterialProfile",
                name,
                Value.UNSET,
                material,
                shapes.profile(section, name),
                Value.UNSET,
                Value.UNSET);
    return draft
        .out()
        .add("IfcMaterialProfileSet", name, Value.UNSET, Value.list(profile), Value.UNSET);
  }

  private Value layerSet(StockItem item, Value material) {
    Value thickness = draft.host().units().length(item.thickness());
    Value name = Value.label(item.id());
    if (draft.ifc2x3()) {
      Value layer = draft.out().add("IfcMaterialLayer", material, thickness, Value.UNSET);
      return draft.out().add("IfcMaterialLayerSet", Value.list(layer), name);
    }
    Value layer =
        draft
            .out()
            .add(
                "IfcMaterialLayer",
                material,
                thickness,
                Value.UNSET,
                name,
                Value.UNSET,
                Value.UNSET,
                Value.UNSET);
    return draft.out().add("IfcMaterialLayerSet", Value.list(layer), name, Value.UNSET);
  }

  private Value material(Material material) {
    return materials.computeIfAbsent(
        material.id(),
        id -> {
          Value name = Value.label(material.name());
          return draft.ifc2x3()
              ? draft.out().add("IfcMaterial", name)
              : draft.out().add("IfcMaterial", name, Value.text(material.source()), Value.UNSET);
        });
  }

  private Value surfaceStyle(Material material) {
    Value colour =
        draft
            .out()
            .add(
                "IfcColourRgb",
                Value.UNSET,
                share(material.red()),
                share(material.green()),
                share(material.blue()));
    Value rendering = draft.out().add("IfcSurfaceStyleRendering", rendering(colour));
    Value style =
        draft
            .out()
            .add(
                "IfcSurfaceStyle",
                Value.label(material.name()),
                Value.enumeration("BOTH"),
                Value.list(rendering));
    return draft.ifc2x3()
        ? draft.out().add("IfcPresentationStyleAssignment", Value.list(style))
        : style;
  }

  /** Colour, opaque, and nothing said of how light is reflected. */
  private static Value[] rendering(Value colour) {
    Value unset = Value.UNSET;
    return List.of(
            colour,
            Value.real(0),
            unset,
            unset,
            unset,
            unset,
            unset,
            unset,
            Value.enumeration("NOTDEFINED"))
        .toArray(Value[]::new);
  }

  private static Value share(int of255) {
    return Value.real(of255 / COLOUR_STEPS);
  }
}
