package org.underlee.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.Upright;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.Onto;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Roofs in the model whose rain falls off an eave onto a deck, where nobody said so. Each strip of
 * a face that looks up runs down its steepest line; where that leaves all roofs over a field and no
 * gutter hangs, it comes down. What runs into a valley or onto another roof is not followed, and
 * roofing that is drawn as a covering upon a roof is not counted again.
 */
public final class Eaves implements Check {
  static final Rule OVER =
      new Rule(
          "eave-over-deck",
          Level.WARNING,
          Rule.COMMON_PRACTICE,
          "A roof in the model sheds onto the deck from its eave, and nobody said so.");

  private static final Set<String> CLASSES = Set.of("IfcRoof");
  private static final String ROOF = "ROOF";
  private static final String GUTTER = "gutter";

  /** Beyond an eave there is no roof at this distance; at a valley there is. */
  private static final double BEYOND = 0.02;

  /** Of a square metre, and of a metre, in what is offered to be typed. */
  private static final double AREA_STEPS = 100;

  private static final double PLACE_STEPS = 1000;

  @Override
  public List<Rule> rules() {
    return List.of(OVER);
  }

  @Override
  public Answer of(CheckInput input) {
    List<BuildingElement> roofs = input.elements().stream().filter(Eaves::isRoof).toList();
    List<BuildingElement> gutters = input.elements().stream().filter(Eaves::isGutter).toList();
    List<Finding> found = new ArrayList<>();
    for (BuildingElement roof : roofs) {
      Above above = new Above(roof, roofs, gutters, input);
      input.fields().forEach(f -> above.found(f).ifPresent(found::add));
    }
    return new Answer(found, List.of());
  }

  private static boolean isRoof(BuildingElement e) {
    return !e.shape().isEmpty()
        && (CLASSES.contains(e.ifcClass()) || e.predefinedType().equals(ROOF));
  }

  private static boolean isGutter(BuildingElement e) {
    String name = (e.name() + " " + e.typeName() + " " + e.predefinedType());
    return name.toLowerCase(Locale.ROOT).contains(GUTTER);
  }

  /** One roof, with what may take its rain. */
  private record Above(
      BuildingElement roof,
      List<BuildingElement> roofs,
      List<BuildingElement> gutters,
      CheckInput input) {
    private double metres(ProofData.Key key) {
      return input.data().metres(key);
    }

    Optional<Finding> found(Assembled field) {
      List<RoofFace.Strip> strips = over(field);
      double area = strips.stream().mapToDouble(RoofFace.Strip::area).sum();
      boolean told =
          input.onto().stream()
              .anyMatch(
                  o ->
                      strips.stream()
                          .anyMatch(
                              s ->
                                  s.eave().minus(o.at()).length()
                                      < metres(ProofData.Key.ROOF_PLACE_MM)));
      return area < input.data().get(ProofData.Key.EAVE_WORTH_M2) || told
          ? Optional.empty()
          : Optional.of(finding(field, strips, area));
    }

    /** The strips whose rain comes down on a field. */
    private List<RoofFace.Strip> over(Assembled field) {
      Box local = field.boxOf(roof);
      boolean near =
          local.max().z() > top(field)
              && local.max().x() > field.field().across().from()
              && local.min().x() < field.field().across().to()
              && local.max().y() > field.field().along().from()
              && local.min().y() < field.field().along().to();
      if (!near) {
        return List.of();
      }
      return RoofFace.of(roof.shape(), input.data().get(ProofData.Key.ROOF_FALL_LEAST)).stream()
          .flatMap(
              face ->
                  face.strips().stream()
                      .filter(s -> new Onto(s.area(), s.eave()).isOn(field.field()))
                      .filter(s -> drips(s, face.fall(), field)))
          .toList();
    }

    private static double top(Assembled field) {
      return field.field().top() - field.frame().origin().z();
    }

    /** Whether nothing but the deck is below the end of a strip. */
    private boolean drips(RoofFace.Strip strip, Vec2 fall, Assembled field) {
      Vec2 inside = strip.eave().minus(fall.times(BEYOND));
      Interval own = Upright.heightsAt(roof.shape(), inside.x(), inside.y());
      Vec2 beyond = strip.eave().plus(fall.times(BEYOND));
      return !own.isEmpty()
          && own.from() > field.field().top()
          && roofs.stream().noneMatch(r -> isUnder(r, beyond, own.to(), field.field().top()))
          && gutters.stream().noneMatch(g -> hangsAt(g, strip.eave(), own.from()));
    }

    private static boolean isUnder(BuildingElement other, Vec2 at, double height, double deck) {
      Interval heights = Upright.heightsAt(other.shape(), at.x(), at.y());
      return !heights.isEmpty() && heights.from() < height && heights.to() > deck;
    }

    private boolean hangsAt(BuildingElement gutter, Vec2 eave, double height) {
      double reach = metres(ProofData.Key.EAVE_GUTTER_MM);
      Box near = gutter.shape().bounds().grown(reach);
      Vec3 at = new Vec3(eave.x(), eave.y(), height);
      return near.meets(new Box(at, at));
    }

    private Finding finding(Assembled field, List<RoofFace.Strip> strips, double area) {
      Quantity told = Quantity.area(area);
      Words words =
          Words.of(
              "%s \"%s\" #%s sheds onto the deck: rain of %s of it falls off %s of its eave, and is"
                  + " counted nowhere. Taken: no gutter hangs there, and what runs into valleys or"
                  + " onto another roof stays there.",
              roof.ifcClass(),
              roof.name(),
              roof.instance(),
              told,
              Quantity.length(strips.stream().mapToDouble(RoofFace.Strip::width).sum()));
      Fix.Option option = new Fix.Option("--also-drains", typed(field, strips));
      return Finding.of(
              OVER,
              roof.place(),
              words,
              Fix.with(
                  Words.of("Count it in, or hang a gutter at that eave and lead it past the deck."),
                  new Fix.Action(
                      List.of(option), Words.of("rain of %s of roof is counted in", told))))
          .about(field.subject("above", roof, Optional.empty()));
    }

    /** What falls on each bay, at its middle. */
    private static String typed(Assembled field, List<RoofFace.Strip> strips) {
      Map<String, List<RoofFace.Strip>> byBay =
          strips.stream()
              .collect(
                  Collectors.groupingBy(
                      s -> bay(field, s.eave()), LinkedHashMap::new, Collectors.toList()));
      return byBay.values().stream()
          .map(Above::together)
          .filter(o -> o.area() > 0)
          .map(Onto::text)
          .collect(Collectors.joining(" "));
    }

    private static String bay(Assembled field, Vec2 eave) {
      Vec3 at = field.frame().toLocal(new Vec3(eave.x(), eave.y(), 0));
      return field.bays().bays().stream()
          .filter(b -> isIn(b, at))
          .findFirst()
          .map(Bay::id)
          .orElse("");
    }

    private static boolean isIn(Bay bay, Vec3 at) {
      return bay.left().centre(at.y()) <= at.x() && at.x() < bay.right().centre(at.y());
    }

    private static Onto together(List<RoofFace.Strip> strips) {
      double area = strips.stream().mapToDouble(RoofFace.Strip::area).sum();
      Vec2 moment =
          strips.stream().map(s -> s.eave().times(s.area())).reduce(new Vec2(0, 0), Vec2::plus);
      Vec2 middle = moment.times(1 / area);
      return new Onto(
          Math.rint(area * AREA_STEPS) / AREA_STEPS,
          new Vec2(
              Math.rint(middle.x() * PLACE_STEPS) / PLACE_STEPS,
              Math.rint(middle.y() * PLACE_STEPS) / PLACE_STEPS));
    }
  }
}
