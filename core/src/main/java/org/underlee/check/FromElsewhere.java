package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
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

  /** An end higher than this above the deck goes on in a part that is not in the model, metres. */
  private static final double HIGHEST_END = 1.5;

  /** What was told this near to a downspout, in plan, is told of it, metres. */
  private static final double SAME = 0.5;

  @Override
  public List<Rule> rules() {
    return List.of(COUNTED, UNKNOWN);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      input.onto().stream()
          .filter(o -> o.isOn(f.field()))
          .forEach(o -> found.add(counted(f, o, input)));
      input.elements().stream()
          .filter(FromElsewhere::isDownspout)
          .filter(e -> endsOn(f, f.boxOf(e)) && input.onto().stream().noneMatch(o -> isOf(o, e)))
          .forEach(e -> found.add(unknown(f, e)));
    }
    return new Answer(found, List.of());
  }

  private static boolean isDownspout(BuildingElement e) {
    String name = (e.name() + " " + e.typeName()).toLowerCase(Locale.ROOT);
    return PIPES.contains(e.ifcClass()) && WORDS.stream().anyMatch(name::contains);
  }

  private static boolean endsOn(Assembled f, Box own) {
    double above = own.min().z() - (f.field().top() - f.frame().origin().z());
    Vec3 middle = own.centre();
    return above > 0
        && above < HIGHEST_END
        && f.field().across().contains(middle.x())
        && f.field().along().contains(middle.y());
  }

  private static boolean isOf(Onto told, BuildingElement e) {
    Vec3 away = e.shape().bounds().centre().minus(told.place());
    return Math.hypot(away.x(), away.y()) < SAME;
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
