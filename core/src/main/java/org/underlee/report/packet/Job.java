package org.underlee.report.packet;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Field;
import org.underlee.geom.Vec3;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.run.Design;

/** A design as the sheets ask for it, with the reader's way of writing. */
record Job(Design design, Writing writing) {

  /** One joist field that something is hung in. */
  record Place(FieldLayout layout, FieldBays bays) {
    Field field() {
      return bays.field();
    }

    /** As at the head of every label in the field: {@code F1}. */
    String mark() {
      String label = layout.parts().get(0).label();
      return label.substring(0, label.indexOf('-'));
    }

    String label(Bay bay) {
      return mark() + "-" + bay.id();
    }

    List<Part> parts(PartKind kind) {
      return layout.parts().stream().filter(p -> p.kind() == kind).toList();
    }

    List<Part> partsIn(Bay bay) {
      return layout.parts().stream().filter(p -> p.bay().equals(Optional.of(bay.id()))).toList();
    }

    /** Bays that something is hung in. */
    List<Bay> served() {
      return bays.bays().stream()
          .filter(b -> partsIn(b).stream().anyMatch(p -> !p.bodies().isEmpty()))
          .toList();
    }

    Vec3 local(Vec3 world) {
      return field().frame().toLocal(world);
    }
  }

  List<Place> places() {
    return design.layout().fields().stream().map(f -> new Place(f, baysOf(f))).toList();
  }

  private FieldBays baysOf(FieldLayout layout) {
    return design.survey().bays().stream()
        .filter(b -> b.field().id().equals(layout.field()))
        .findFirst()
        .orElseThrow();
  }

  Kit kit() {
    return design.layout().kit();
  }

  String say(String key, Object... parts) {
    return writing.say(key, parts);
  }

  String length(double metres) {
    return writing.length(metres);
  }

  /** The trade's word for a kind of part. */
  String word(PartKind kind) {
    return writing.say("part." + kind.word());
  }

  /** A bearing height as it is marked: so far above or below the joist's bottom. */
  String height(double aboveJoistBottom) {
    String size = writing.length(Math.abs(aboveJoistBottom));
    boolean none = size.equals(writing.length(0));
    return none ? say("mark.flush") : say(aboveJoistBottom < 0 ? "mark.below" : "mark.above", size);
  }
}
