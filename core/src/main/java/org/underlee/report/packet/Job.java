package org.underlee.report.packet;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.Field;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Vec3;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.run.Design;
import org.underlee.units.Words;

/** A design as the sheets ask for it, with the reader's way of writing. */
record Job(Design design, Writing writing) {

  /** One joist field that something is hung in. */
  record Place(FieldLayout layout, FieldBays bays, Family family) {
    Field field() {
      return bays.field();
    }

    /** As at the head of every label in the field: {@code F1}. */
    String mark() {
      return layout.mark();
    }

    String label(Bay bay) {
      return mark() + "-" + bay.id();
    }

    List<Part> parts(PartKind kind) {
      return layout.parts().stream().filter(p -> p.kind() == kind).toList();
    }

    /** A part's reach in the field's frame. */
    Box box(Part part) {
      Box box = Box.EMPTY;
      for (Extrusion body : part.bodies()) {
        for (Vec3 corner : body.corners()) {
          box = box.with(local(corner));
        }
      }
      return box;
    }

    List<Part> partsIn(Bay bay) {
      return layout.parts().stream().filter(p -> p.bay().equals(Optional.of(bay.id()))).toList();
    }

    /** Pieces that lie across a bay and serve others too. */
    List<Part> partsBelow(Bay bay) {
      double v = bay.stretch().middle();
      Interval across = new Interval(bay.leftFace().at(v), bay.rightFace().at(v));
      return Stream.of(PartKind.SHEET, PartKind.BATTEN, PartKind.BATTEN_HANGER)
          .flatMap(k -> parts(k).stream())
          .filter(
              p -> {
                Box box = box(p);
                return !new Interval(box.min().x(), box.max().x()).meet(across).isEmpty();
              })
          .toList();
    }

    /** Bays whose water is caught. */
    List<Bay> served() {
      return bays.bays().stream().filter(b -> layout.bays().contains(b.id())).toList();
    }

    Vec3 local(Vec3 world) {
      return field().frame().toLocal(world);
    }
  }

  /** Where fields fall both ways, that the house is the high line there. */
  Optional<String> bothWays() {
    String marks =
        places().stream()
            .filter(p -> p.field().highLine().isPresent())
            .map(Place::mark)
            .collect(Collectors.joining(", "));
    return marks.isEmpty() ? Optional.empty() : Optional.of(say("plan.bothWays", marks));
  }

  List<Place> places() {
    return design.layout().fields().stream()
        .map(f -> new Place(f, baysOf(f), kit().family()))
        .toList();
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

  /** What a shop knows it by. */
  String name(StockItem item) {
    return writing.translated(item.description(writing.units()));
  }

  String say(String key, Object... parts) {
    return writing.say(key, parts);
  }

  /**
   * A sentence for the crew: in their language as far as it is known there, with the names that
   * stand on labels in place of those of files.
   */
  String told(String text) {
    String told = writing.measures(text);
    for (Part part : text.contains("/") ? byLongestId() : List.<Part>of()) {
      told = told.replace(part.id(), part.label());
    }
    for (Place place : places()) {
      told = told.replaceAll("\\b" + place.layout().field() + "(?![\\w/-])", place.mark());
    }
    return told;
  }

  /** An id may begin with another one. */
  private List<Part> byLongestId() {
    return design.layout().parts().stream()
        .filter(p -> p.id().contains("/"))
        .sorted(Comparator.comparingInt((Part p) -> p.id().length()).reversed())
        .toList();
  }

  String told(Finding finding) {
    return told(finding.translated(writing::translated).message(writing.units()));
  }

  String told(Words words) {
    return told(words.translated(writing::translated).in(writing.units()));
  }

  String length(double metres) {
    return writing.length(metres);
  }

  /** A length to cut: rounded down, so that the piece fits. */
  String cut(double metres) {
    return writing.cut(metres);
  }

  /** The trade's word for a kind of part. */
  String word(PartKind kind) {
    return writing.say("part." + kind.word());
  }

  /** A bearing height as it is marked: so far above or below the joist's bottom. */
  String height(double aboveJoistBottom) {
    String size = writing.length(Math.abs(aboveJoistBottom));
    boolean none = size.equals(writing.length(0));
    String said =
        none ? say("mark.flush") : say(aboveJoistBottom < 0 ? "mark.below" : "mark.above", size);
    return said.replace(' ', '\u00a0');
  }

  /** A height above or below a datum that was named before. */
  String level(double above) {
    String size = writing.length(Math.abs(above));
    boolean none = size.equals(writing.length(0));
    String key = none ? "mark.level" : above < 0 ? "mark.below" : "mark.above";
    return say(key, size).replace(' ', '\u00a0');
  }
}
