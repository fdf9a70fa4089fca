package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.finding.Place;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.PartKind;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The assembly of one field beside the framing that it is fixed to.
 *
 * @param parts those that are drawn
 * @param byKind the same, by what they are
 * @param pans what catches the water of each bay, high end first
 */
public record Assembled(
    FieldLayout layout,
    FieldBays bays,
    Kit kit,
    List<Placed> parts,
    Map<PartKind, List<Placed>> byKind,
    Map<String, List<Placed>> pans) {
  private static final Comparator<Placed> DOWN_THE_FALL =
      Comparator.comparingDouble(p -> p.box().min().y());

  static Assembled of(FieldLayout layout, FieldBays bays, Kit kit) {
    return of(layout, bays, kit, Placed.all(layout.parts(), bays.field().frame()));
  }

  /** The same with its parts where they stand in a model. */
  static Assembled of(FieldLayout layout, FieldBays bays, Kit kit, List<Placed> parts) {
    List<Placed> catching = parts.stream().filter(p -> p.part().kind().catchesWater()).toList();
    Map<Optional<String>, List<Placed>> byBay =
        catching.stream().collect(Collectors.groupingBy(p -> p.part().bay()));
    Set<String> served = Set.copyOf(layout.bays());
    Map<String, List<Placed>> pans = new HashMap<>();
    for (Bay bay : bays.bays()) {
      if (served.contains(bay.id())) {
        pans.put(bay.id(), under(bay, byBay));
      }
    }
    Map<PartKind, List<Placed>> byKind =
        parts.stream().collect(Collectors.groupingBy(p -> p.part().kind()));
    return new Assembled(layout, bays, kit, parts, byKind, pans);
  }

  /** What is of the bay, or below all bays and reaches under the middle of this one. */
  private static List<Placed> under(Bay bay, Map<Optional<String>, List<Placed>> byBay) {
    double v = bay.stretch().middle();
    double middle = (bay.left().centre(v) + bay.right().centre(v)) / 2;
    List<Placed> own = new ArrayList<>(byBay.getOrDefault(Optional.of(bay.id()), List.of()));
    byBay.getOrDefault(Optional.<String>empty(), List.of()).stream()
        .filter(p -> p.box().min().x() <= middle && p.box().max().x() >= middle)
        .forEach(own::add);
    own.sort(DOWN_THE_FALL);
    return List.copyOf(own);
  }

  public Field field() {
    return bays.field();
  }

  public Transform frame() {
    return field().frame();
  }

  /** Height of the seat at a station of the field's frame. */
  public double seat(double v) {
    return layout.seatHigh() - layout.fall() * v;
  }

  /** What catches the water, in the trade's word. */
  String piece() {
    return kit.family().piece();
  }

  public Stream<Placed> all(PartKind kind) {
    return byKind.getOrDefault(kind, List.of()).stream();
  }

  /** Pans and collar pieces, which catch the water of a bay, high end first. */
  public List<Placed> pansOf(Bay bay) {
    return pans.getOrDefault(bay.id(), List.of());
  }

  /** The bays that have pans. */
  public List<Bay> served() {
    return bays.bays().stream().filter(b -> !pansOf(b).isEmpty()).toList();
  }

  public Box boxOf(BuildingElement element) {
    return field().boxOf(element);
  }

  Place place() {
    return field().lines().get(0).plies().get(0).element().place();
  }

  /** About the field as a whole. */
  Subject subject() {
    return new Subject(field().id(), "", place(), Optional.empty());
  }

  Subject subject(Bay bay, Optional<Quantity> measured) {
    return new Subject(
        field().id(), bay.id(), bay.left().plies().get(0).element().place(), measured);
  }

  Subject subject(String name, BuildingElement element, Optional<Quantity> measured) {
    return new Subject(field().id(), name, element.place(), measured);
  }

  Finding found(Rule rule, Words words, Measure measure, Fix fix) {
    return Finding.measured(rule, place(), words, measure, fix).about(subject());
  }
}
