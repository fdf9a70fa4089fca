package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Vents, taps, meters and panels keep the room that they need. Told by class and by name. */
public final class Clearances implements Check {
  static final Rule TOO_NEAR =
      new Rule(
          "part-near-vent-or-meter",
          Level.ERROR,
          "IRC M1502.3 (dryers), G2427.8 (gas vents), NEC 110.26 (panels); common practice (taps,"
              + " meters)",
          "A part is nearer to a vent, a tap, a meter or a panel than it may be.");

  private static final String PANEL = "panel";

  private record Kind(String name, double distance, List<String> words) {
    boolean is(BuildingElement e) {
      String all = (e.name() + " " + e.typeName()).toLowerCase(Locale.ROOT);
      boolean byClass = name.equals(PANEL) && e.ifcClass().equals("IfcElectricDistributionBoard");
      return byClass || words.stream().anyMatch(all::contains);
    }
  }

  private static final List<Kind> KINDS =
      List.of(
          new Kind("dryer vent", 3 * Lengths.FOOT, List.of("dryer vent", "dryer exhaust")),
          new Kind(
              "gas vent", 4 * Lengths.FOOT, List.of("gas vent", "flue terminal", "direct vent")),
          new Kind(
              PANEL, 3 * Lengths.FOOT, List.of("electric panel", "panelboard", "breaker panel")),
          new Kind(
              "meter", 3 * Lengths.FOOT, List.of("gas meter", "electric meter", "water meter")),
          new Kind("hose tap", 6 * Lengths.INCH, List.of("hose bib", "hose tap")));

  @Override
  public List<Rule> rules() {
    return List.of(TOO_NEAR);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (BuildingElement e : input.elements()) {
      for (Kind kind : KINDS) {
        if (kind.is(e)) {
          input.fields().forEach(f -> judge(f, e, kind).ifPresent(found::add));
        }
      }
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Does a dryer, bath, gas or radon vent, a meter, a panel or a tap stand below or at"
                    + " the deck?",
                "Models seldom show them; each needs room of its own, and some may not end under a"
                    + " closed deck.",
                "IRC M1502.3, G2427.8; NEC 110.26; appliance instructions")));
  }

  private static Optional<Finding> judge(Assembled f, BuildingElement e, Kind kind) {
    Box own = f.boxOf(e);
    return f.parts().stream()
        .min(Comparator.comparingDouble(p -> apart(own, p.box())))
        .filter(p -> apart(own, p.box()) < kind.distance)
        .map(
            p ->
                Finding.measured(
                        TOO_NEAR,
                        e.place(),
                        Words.of(
                            "less than %s from the %s #%s.",
                            Quantity.length(kind.distance), kind.name, e.instance()),
                        Measure.lengths(apart(own, p.box()), kind.distance),
                        "Leave the bays around it open, or have it moved by someone licensed to.")
                    .about(
                        f.subject(
                            p.part().label(),
                            e,
                            Optional.of(Quantity.length(apart(own, p.box()))))));
  }

  private static double apart(Box a, Box b) {
    return new Vec3(
            gap(a.min().x(), a.max().x(), b.min().x(), b.max().x()),
            gap(a.min().y(), a.max().y(), b.min().y(), b.max().y()),
            gap(a.min().z(), a.max().z(), b.min().z(), b.max().z()))
        .length();
  }

  private static double gap(double aLow, double aHigh, double bLow, double bHigh) {
    return Math.max(0, Math.max(aLow - bHigh, bLow - aHigh));
  }
}
