package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Place;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.layout.Onto;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Rain of roofs that comes onto a deck: what was told is counted, what was not is asked for. */
public final class FromElsewhere implements Check {
  static final Rule COUNTED =
      new Rule(
          "roof-drains-onto-deck",
          Level.NOTE,
          Rule.COMMON_PRACTICE,
          "Rain of another area comes onto the deck: gutters, outlets and the proof count it in.");

  static final Rule ASTRAY =
      new Rule(
          "roof-drains-past-deck",
          Level.WARNING,
          Rule.COMMON_PRACTICE,
          "A roof's rain is said to come down where no assembly is: it is counted nowhere.");

  static final Rule UNKNOWN =
      new Rule(
          "downspout-ends-on-deck",
          Level.WARNING,
          Rule.COMMON_PRACTICE,
          "A roof's downspout in the model ends over the deck, and nobody said what it drains.");

  private static final Set<String> PIPES =
      Set.of(
          "IfcPipeSegment",
          "IfcPipeFitting",
          "IfcFlowSegment",
          "IfcFlowFitting",
          "IfcBuildingElementProxy");

  private static final List<String> WORDS =
      List.of("downspout", "downpipe", "leader", "rainwater", "rain water", "bajante");

  @Override
  public List<Rule> rules() {
    return List.of(COUNTED, ASTRAY, UNKNOWN);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    input.onto().stream()
        .filter(o -> input.fields().stream().noneMatch(f -> o.isOn(f.field())))
        .forEach(o -> found.add(astray(o, input)));
    List<BuildingElement> spouts =
        input.elements().stream().filter(FromElsewhere::isDownspout).toList();
    for (Assembled f : input.fields()) {
      input.onto().stream()
          .filter(o -> o.isOn(f.field()))
          .forEach(o -> found.add(counted(f, o, input)));
      spouts.stream()
          .filter(e -> endsOn(f, f.boxOf(e), input.data()) && !isTold(e, input))
          .forEach(e -> found.add(unknown(f, e)));
    }
    return new Answer(found, List.of());
  }

  private static boolean isDownspout(BuildingElement e) {
    String name = (e.name() + " " + e.typeName()).toLowerCase(Locale.ROOT);
    return PIPES.contains(e.ifcClass()) && WORDS.stream().anyMatch(name::contains);
  }

  private static boolean endsOn(Assembled f, Box own, ProofData data) {
    double above = own.min().z() - (f.field().top() - f.frame().origin().z());
    Vec3 middle = own.centre();
    return above > 0
        && above < data.metres(ProofData.Key.SPOUT_END_HIGHEST_MM)
        && f.field().across().contains(middle.x())
        && f.field().along().contains(middle.y());
  }

  private static boolean isTold(BuildingElement e, CheckInput input) {
    Vec3 foot = e.shape().bounds().centre();
    return input.onto().stream()
        .map(o -> foot.minus(o.place()))
        .anyMatch(
            away ->
                Math.hypot(away.x(), away.y()) < input.data().metres(ProofData.Key.ROOF_PLACE_MM));
  }

  private static Finding astray(Onto o, CheckInput input) {
    Words where =
        input.fields().stream()
            .min(Comparator.comparingDouble(f -> o.distance(f.field())))
            .map(
                f ->
                    Words.of(
                        "the nearest one, %s, is %s away",
                        f.field().id(), Quantity.length(o.distance(f.field()))))
            .orElse(Words.plain("nothing is laid out at all"));
    return Finding.of(
        ASTRAY,
        Place.NOWHERE,
        Words.of(
            "rain of %s was said to come down at %s, %s, where no assembly is: %s. It is counted"
                + " nowhere.",
            Quantity.area(o.area()),
            Quantity.length(o.at().x()),
            Quantity.length(o.at().y()),
            where),
        Fix.of(
            "If the deck or the roof has moved, say the new place by --also-drains AREA@X,Y; if the"
                + " roof drains elsewhere now, leave that option out."));
  }

  private static Finding counted(Assembled f, Onto o, CheckInput input) {
    Quantity rain = Quantity.of(Kind.RAIN, input.storm().intensity());
    Quantity flow = Quantity.of(Kind.DRIP, input.storm().flow(o.area()));
    return f.found(
        COUNTED,
        Words.of(
            "rain of %s from elsewhere comes onto the deck at %s, %s: %s in rain of %s. It is"
                + " counted in.",
            Quantity.area(o.area()),
            Quantity.length(o.at().x()),
            Quantity.length(o.at().y()),
            flow,
            rain),
        new Measure(flow, Quantity.of(Kind.DRIP, 0)),
        Fix.of(
            "Lead it to the ground by a pipe of its own where you can: it brings leaves and ice"
                + " onto the boards."));
  }

  private static Finding unknown(Assembled f, BuildingElement e) {
    return Finding.of(
            UNKNOWN,
            e.place(),
            Words.of(
                "%s \"%s\" #%s ends over the deck; what it drains is counted nowhere.",
                e.ifcClass(), e.name(), e.instance()),
            "Say what it drains by --also-drains AREA@X,Y, or lead it past the deck.")
        .about(f.subject("above", e, Optional.empty()));
  }
}
