package org.underlee.check;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Water is let out away from the foundation. */
public final class Discharge implements Check {
  static final Rule AT_FOUNDATION =
      new Rule(
          "discharge-at-foundation",
          Level.WARNING,
          "IRC R801.3: 5 ft from the foundation where the soil swells or collapses; elsewhere common"
              + " practice",
          "A downspout ends close to a wall or a footing of the house.");

  /** The deck's own pad footings stand below its posts; a strip footing carries a house. */
  private static final Set<String> HOUSE = house();

  private static Set<String> house() {
    Set<String> all = new HashSet<>(FallDirection.WALLS);
    all.add("IfcCurtainWall");
    return Set.copyOf(all);
  }

  @Override
  public List<Rule> rules() {
    return List.of(AT_FOUNDATION);
  }

  @Override
  public Answer of(CheckInput input) {
    List<BuildingElement> house = input.ofClass(HOUSE);
    double least = input.data().get(ProofData.Key.DISCHARGE_DISTANCE_MM) * Lengths.MM;
    List<Finding> found =
        input.fields().stream()
            .flatMap(f -> f.all(PartKind.ELBOW).flatMap(e -> judge(f, e, house, least).stream()))
            .toList();
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Where may the water be led: how does the ground fall, what is the soil, whose land"
                    + " is next, is there a drain?",
                "Water let out at a footing, on a walk or to a neighbour does harm.",
                "IRC R801.3, R401.3; your local code"),
            new SiteQuestion(
                "Is the drain that it may join a storm drain?",
                "Rain must not be led into a sanitary sewer.",
                "plumbing code: separate systems")));
  }

  private static Optional<Finding> judge(
      Assembled f, Placed elbow, List<BuildingElement> house, double least) {
    return FallDirection.nearest(f, house, elbow.box())
        .filter(n -> n.distance() < least)
        .map(
            n ->
                Finding.measured(
                        AT_FOUNDATION,
                        f.place(),
                        Words.of(
                            "the downspout lets its water out less than %s from %s #%s.",
                            Quantity.length(least), n.element().ifcClass(), n.element().instance()),
                        Measure.lengths(n.distance(), least),
                        "Lead the water on with a pipe or a splash block, or move the outlet to the"
                            + " far end.")
                    .about(
                        f.subject(
                            elbow.part().label(),
                            n.element(),
                            Optional.of(Quantity.length(n.distance())))));
  }
}
