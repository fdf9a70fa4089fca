package org.underlee.picture;

import static org.underlee.picture.BaySection.tall;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.framing.Field;
import org.underlee.geom.Interval;
import org.underlee.geom.Vec2;
import org.underlee.layout.Cut;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * What crosses a bay, and the notches in its rails: each with its name above what is drawn, like a
 * flag whose pole stands on the thing. The further left, the lower: no pole goes through a flag.
 *
 * @param all from left to right
 */
record SectionNames(List<Name> all) {
  private static final double BESIDE_POLE_MM = 1;

  /** Free between two flags of one row, and the plates' own borders, mm. */
  private static final double APART_MM = 3;

  /**
   * A name.
   *
   * @param at its place in the drawing
   */
  record Name(Vec2 at, String text) {}

  static SectionNames of(Bay bay, Field field, Optional<FieldLayout> layout, UnitSystem units) {
    List<Name> names = new ArrayList<>();
    for (Crossing c : bay.crossings()) {
      String name = c.element().name().isEmpty() ? c.element().ifcClass() : c.element().name();
      names.add(new Name(tall(new Vec2(c.stretch().middle(), c.heights().to())), name));
    }
    Map<String, Vec2> notches = new LinkedHashMap<>();
    Map<String, String> rails = new LinkedHashMap<>();
    notches(bay, field, layout)
        .forEach(
            n -> {
              String words = n.words(bay.stretch().from(), units);
              notches.put(words, tall(n.floor()));
              rails.merge(words, n.rail(), (a, b) -> a.contains(b) ? a : a + ", " + b);
            });
    notches.forEach((words, at) -> names.add(new Name(at, rails.get(words) + words)));
    names.sort(Comparator.comparingDouble(n -> n.at().x()));
    return new SectionNames(names);
  }

  /**
   * A notch in its place.
   *
   * @param rail its mark within the bay: {@code R1}
   * @param stretch stations of the field's frame
   * @param bottom height of its floor
   */
  record Notch(String rail, Interval stretch, double bottom, double depth) {
    Vec2 floor() {
      return new Vec2(stretch.middle(), bottom);
    }

    /** Down, along its floor, and up again to the leg's top. */
    List<Vec2> edges() {
      return List.of(
          new Vec2(stretch.from(), bottom + depth),
          new Vec2(stretch.from(), bottom),
          new Vec2(stretch.to(), bottom),
          new Vec2(stretch.to(), bottom + depth));
    }

    private String words(double high, UnitSystem units) {
      return " notched "
          + Lengths.format(stretch.from() - high, units)
          + " to "
          + Lengths.format(stretch.to() - high, units)
          + ", "
          + Lengths.format(depth, units)
          + " deep";
    }
  }

  /** The notches in the rails of a bay. */
  static List<Notch> notches(Bay bay, Field field, Optional<FieldLayout> layout) {
    List<Notch> all = new ArrayList<>();
    BaySection.parts(layout, PartKind.SIDE_RAIL)
        .filter(p -> p.bay().equals(Optional.of(bay.id())))
        .forEach(p -> p.cuts().forEach(c -> notch(p, c, field).ifPresent(all::add)));
    return all;
  }

  private static Optional<Notch> notch(Part rail, Cut cut, Field field) {
    if (!(cut instanceof Cut.Notch n)) {
      return Optional.empty();
    }
    LocalReach reach = LocalReach.of(rail.mesh(), field.frame());
    Interval stretch =
        new Interval(reach.along().from() + n.from(), reach.along().from() + n.from() + n.length());
    double top = reach.heights().to() - rail.fall().orElse(0) * (n.from() + n.length() / 2);
    String mark = rail.label().substring(rail.label().lastIndexOf('-') + 1);
    return Optional.of(new Notch(mark, stretch, top - n.depth(), n.depth()));
  }

  private double width(Name name) {
    return StrokeFont.BUILT_IN.width(name.text()) * PlanBuilder.SMALL_TEXT_MM + APART_MM;
  }

  /** The row of each, 0 the lowest. */
  private List<Integer> rows(double mm) {
    List<Integer> rows = new ArrayList<>();
    List<Double> free = new ArrayList<>();
    for (Name name : all) {
      int row = 0;
      double start = name.at().x() - width(name) * mm;
      while (row < free.size() && start < free.get(row)) {
        row++;
      }
      if (row == free.size()) {
        free.add(name.at().x());
      }
      free.set(row, name.at().x());
      rows.add(row);
    }
    return rows;
  }

  /** What all rows take above what is drawn, metres. */
  double height(double mm) {
    return rows(mm).stream().mapToInt(r -> r + 1).max().orElse(0) * SectionDimensions.ROW_MM * mm;
  }

  /**
   * Writes them.
   *
   * @param top of what is drawn
   */
  void write(PlanBuilder to, double mm, double top) {
    List<Integer> rows = rows(mm);
    for (int i = 0; i < rows.size(); i++) {
      Name name = all.get(i);
      Vec2 flag = new Vec2(name.at().x(), top + (rows.get(i) + 1) * SectionDimensions.ROW_MM * mm);
      to.arrow(flag, name.at(), PlanStyle.DIMENSION);
      to.label(
          flag.minus(new Vec2(BESIDE_POLE_MM * mm, 0)),
          name.text(),
          PlanBuilder.SMALL_TEXT_MM,
          PlanItem.Anchor.END,
          0,
          PlanStyle.TAG);
    }
  }
}
