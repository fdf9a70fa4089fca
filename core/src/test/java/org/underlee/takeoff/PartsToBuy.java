package org.underlee.takeoff;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.kit.Items;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Why;
import org.underlee.units.Words;

/** Parts with nothing but what a bill asks for, and the takeoff of a layout of them. */
final class PartsToBuy {
  static final String FIELD = "deck-1/field-1";

  private PartsToBuy() {}

  static Part cut(String id, PartKind kind, String item, double length) {
    return flat(id, kind, item, length, OptionalDouble.empty());
  }

  static Part flat(
      String id, PartKind kind, String item, double length, OptionalDouble sheetWidth) {
    Extrusion body =
        Extrusion.straight(Transform.IDENTITY, Outline.rectangle(0, 0, 0.1, 0.001), length);
    return new Part(
        FIELD + "/" + id,
        id,
        kind,
        FIELD,
        Optional.empty(),
        item,
        length,
        0.1,
        sheetWidth,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(body),
        Optional.empty(),
        1,
        List.of(),
        Why.because(""));
  }

  static Part screws(String id, int count) {
    return new Part(
        FIELD + "/" + id,
        id,
        PartKind.FASTENER,
        FIELD,
        Optional.empty(),
        Items.SCREW,
        0,
        0,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(),
        Optional.empty(),
        count,
        List.of(),
        Why.because(""));
  }

  static Takeoff takeoff(Part... parts) {
    return takeoff(Buying.PLAIN, parts);
  }

  static Takeoff takeoff(Buying buying, Part... parts) {
    return TakeoffBuilder.of(layout(parts), buying);
  }

  static Layout layout(Part... parts) {
    FieldLayout field =
        new FieldLayout(
            "deck-1",
            FIELD,
            Optional.empty(),
            0,
            0.01,
            3,
            "",
            Words.of(""),
            List.of(parts),
            List.of());
    return new Layout(KitReader.builtIn(), List.of(field), List.of());
  }
}
