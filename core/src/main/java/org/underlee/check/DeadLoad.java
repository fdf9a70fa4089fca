package org.underlee.check;

import static org.underlee.kit.DrainValue.GUTTER_DEPTH;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.WetLoad;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Kit;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * The assembly with water in it weighs less than what the deck has to spare: its parts, a film of
 * water on the pans, and the gutter full to its rim, over the area of the served bays.
 */
public final class DeadLoad implements Check {
  static final Rule HEAVY =
      new Rule(
          "assembly-heavy",
          Level.WARNING,
          "span tables carry 10 psf dead (DCA 6), framing and boards take about 5 psf",
          "The assembly with water in it weighs more than an ordinary deck has to spare.");

  /** In pascals, 5 psf: 10 psf in span tables less joists and 5/4 boards. */
  private static final double SPARE = 5 * WetLoad.PSF;

  private static final double WATER = 1000;

  @Override
  public List<Rule> rules() {
    return List.of(HEAVY);
  }

  @Override
  public Answer of(CheckInput input) {
    double film = input.data().get(ProofData.Key.FILM_MM) * Lengths.MM;
    return Answer.found(input.fields().stream().flatMap(f -> judge(f, film).stream()).toList());
  }

  private static Optional<Finding> judge(Assembled f, double film) {
    double area = f.served().stream().mapToDouble(DeadLoad::area).sum();
    if (!(area > 0)) {
      return Optional.empty();
    }
    WetLoad load = new WetLoad(parts(f), film * area * WATER, gutter(f), area);
    return load.left(SPARE) < 0 ? Optional.of(finding(f, load)) : Optional.empty();
  }

  private static double area(Bay bay) {
    double v = bay.stretch().middle();
    return (bay.right().centre(v) - bay.left().centre(v)) * bay.length();
  }

  private static double parts(Assembled f) {
    Kit kit = f.kit();
    Map<String, Double> volumes = new LinkedHashMap<>();
    f.parts().forEach(p -> volumes.merge(p.part().item(), p.part().volume(), Double::sum));
    return volumes.entrySet().stream()
        .mapToDouble(e -> e.getValue() * kit.materialOf(kit.item(e.getKey())).density())
        .sum();
  }

  private static double gutter(Assembled f) {
    return f.all(PartKind.GUTTER).map(Placed::part).mapToDouble(Part::length).sum()
        * f.kit().get(GUTTER_WIDTH)
        * f.kit().get(GUTTER_DEPTH)
        * WATER;
  }

  private static Finding finding(Assembled f, WetLoad load) {
    Quantity weighs = Quantity.of(Kind.LOAD, WetLoad.mass(load.blocked()));
    Quantity spare = Quantity.of(Kind.LOAD, WetLoad.mass(SPARE));
    return f.found(
        HEAVY,
        Words.of(
            "the assembly weighs %s with its gutter full; an ordinary deck has %s to spare.",
            weighs, spare),
        new Measure(weighs, spare),
        Fix.of("Use a lighter kit, or have the deck's reserve looked at by an engineer."));
  }
}
