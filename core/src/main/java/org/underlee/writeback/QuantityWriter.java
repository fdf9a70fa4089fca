package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.layout.Part;

/**
 * Base quantities of each part under the standard's names, from the part's exact bodies. Gross is
 * the body with its holes filled, net without; a quantity that is not known is left out.
 *
 * <p>The area of bent sheet is that of the flat blank: volume by thickness. In pipe sets the
 * standard calls the weight without water gross.
 */
final class QuantityWriter {
  private final Draft draft;
  private final Kit kit;
  private final Definitions definitions;
  private final Quantities quantities;

  QuantityWriter(Draft draft, Kit kit, Definitions definitions) {
    this.draft = draft;
    this.kit = kit;
    this.definitions = definitions;
    this.quantities = new Quantities(draft);
  }

  void write(PlacedPart placed) {
    Part part = placed.part();
    IfcFamily family = placed.ifcClass().family();
    Measured m = new Measured(part, kit.item(part.item()));
    List<Value> measured =
        switch (family) {
          case PLATE -> plate(m);
          case MEMBER -> member(m);
          case COVERING -> covering(m);
          case SEGMENT, FITTING -> pipe(m);
          case ACCESSORY, FASTENER -> counted(m);
        };
    definitions.attachQuantities(placed.element(), part.field(), part.id(), name(family), measured);
  }

  private String name(IfcFamily family) {
    boolean own = family == IfcFamily.ACCESSORY || family == IfcFamily.FASTENER;
    if (own) {
      return "Underlee_Quantities";
    }
    return draft.ifc2x3()
        ? "BaseQuantities"
        : "Qto_" + family.occurrence(false).substring("Ifc".length()) + "BaseQuantities";
  }

  /** What can be measured of a part, in SI. */
  private final class Measured {
    final Part part;
    final double thickness;
    final double gross;
    final double net;
    final double density;

    Measured(Part part, StockItem item) {
      this.part = part;
      this.thickness = item.thickness();
      this.density = kit.materialOf(item).density();
      this.net = part.volume();
      this.gross =
          part.bodies().stream()
              .mapToDouble(b -> Outline.signedArea(b.section().outer()) * depth(b))
              .sum();
    }

    private static double depth(Extrusion body) {
      return Math.abs(body.sweep().z());
    }
  }

  private List<Value> plate(Measured m) {
    List<Value> q = new ArrayList<>();
    length(q, "Width", m.thickness);
    if (m.thickness > 0) {
      area(q, "GrossArea", m.gross / m.thickness);
      area(q, "NetArea", m.net / m.thickness);
    }
    volumes(q, m);
    return q;
  }

  private List<Value> member(Measured m) {
    List<Value> q = new ArrayList<>();
    length(q, "Length", m.part.length());
    m.part.section().ifPresent(s -> area(q, "CrossSectionArea", s.area()));
    volumes(q, m);
    return q;
  }

  private void volumes(List<Value> q, Measured m) {
    volume(q, "GrossVolume", m.gross);
    volume(q, "NetVolume", m.net);
    weight(q, "GrossWeight", m.gross * m.density);
    weight(q, "NetWeight", m.net * m.density);
  }

  private List<Value> covering(Measured m) {
    List<Value> q = new ArrayList<>();
    length(q, "Width", m.thickness);
    area(q, "GrossArea", m.part.length() * m.part.width());
    area(q, "NetArea", m.part.length() * m.part.width());
    return q;
  }

  private List<Value> pipe(Measured m) {
    List<Value> q = new ArrayList<>();
    length(q, "Length", m.part.length());
    m.part.section().ifPresent(s -> area(q, "NetCrossSectionArea", s.area()));
    weight(q, "GrossWeight", m.net * m.density);
    return q;
  }

  private List<Value> counted(Measured m) {
    List<Value> q = new ArrayList<>();
    q.add(quantities.count("Count", m.part.count()));
    weight(q, "NetWeight", m.net * m.density);
    return q;
  }

  private void length(List<Value> q, String name, double metres) {
    if (metres > 0) {
      q.add(quantities.length(name, metres));
    }
  }

  private void area(List<Value> q, String name, double squareMetres) {
    if (squareMetres > 0) {
      q.add(quantities.area(name, squareMetres));
    }
  }

  private void volume(List<Value> q, String name, double cubicMetres) {
    if (cubicMetres > 0) {
      q.add(quantities.volume(name, cubicMetres));
    }
  }

  private void weight(List<Value> q, String name, double kilograms) {
    if (kilograms > 0) {
      q.add(quantities.weight(name, kilograms));
    }
  }
}
