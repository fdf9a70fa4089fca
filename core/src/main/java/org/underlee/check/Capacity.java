package org.underlee.check;

import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.DrainValue.GUTTER_DEPTH;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.drainage.flow.CapacityData;
import org.underlee.drainage.flow.GutterRun;
import org.underlee.drainage.flow.Inflow;
import org.underlee.drainage.flow.Opening;
import org.underlee.drainage.flow.Outlet;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.Rater;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Storm;
import org.underlee.drainage.flow.Trough;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Items;
import org.underlee.layout.Link;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * What gutter, outlet and downspout carry, against a heavy burst of rain, by every method that the
 * program knows; the least of the accepted ones decides. Each piece of gutter takes its share of
 * the served bays' area by its length, and is taken as level: its small fall is kept in hand for
 * dirt.
 */
public final class Capacity implements Check {
  static final Rule GUTTER =
      new Rule(
          "gutter-too-small",
          Level.WARNING,
          "The least of the accepted methods in docs/reference/rain-and-capacities.md",
          "The gutter runs over in rain that must be reckoned with.");

  static final Rule DOWNSPOUT =
      new Rule(
          "downspout-too-small",
          Level.WARNING,
          "The least of the accepted methods in docs/reference/rain-and-capacities.md",
          "An outlet or its downspout carries less than the rain that must be reckoned with.");

  private static final double LEVEL = 0;

  @Override
  public List<Rule> rules() {
    return List.of(GUTTER, DOWNSPOUT);
  }

  @Override
  public Answer of(CheckInput input) {
    Storm storm = input.storm();
    Rater rater =
        new Rater(
            CapacityData.builtIn(), input.data().get(ProofData.Key.FREEBOARD_MM) * Lengths.MM);
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      List<Rating> ratings = ratings(f, input, rater);
      worst(ratings, p -> p == Rating.Part.GUTTER)
          .ifPresent(r -> found.add(finding(f, GUTTER, "the gutter", r, storm)));
      worst(ratings, p -> p != Rating.Part.GUTTER)
          .ifPresent(r -> found.add(finding(f, DOWNSPOUT, "an outlet or its downspout", r, storm)));
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "What rain must drains be made for here?",
                "Gutters and downspouts were looked at for rain of "
                    + Quantity.of(Kind.RAIN, storm.intensity()).in(UnitSystem.IMPERIAL)
                    + " ("
                    + storm.name()
                    + "), and for no wall or roof that sheds onto the deck.",
                "your local code; NOAA Atlas 14")));
  }

  private static Optional<Rating> worst(List<Rating> ratings, Predicate<Rating.Part> part) {
    return ratings.stream()
        .filter(r -> r.capacity().accepted() && part.test(r.part()) && !r.passes())
        .max(Comparator.comparingDouble(Rating::use));
  }

  private static List<Rating> ratings(Assembled f, CheckInput input, Rater rater) {
    double area = f.served().stream().mapToDouble(b -> area(f, b)).sum();
    double whole = f.all(PartKind.GUTTER).mapToDouble(p -> p.part().length()).sum();
    if (!(area > 0 && whole > 0)) {
      return List.of();
    }
    Opening spout =
        new Opening.Round(
            f.kit().get(DOWNSPOUT_DIAMETER) - 2 * f.kit().item(Items.DOWNSPOUT).thickness());
    double perMetre = input.storm().flow(area) / whole;
    double roughness = input.data().get(ProofData.Key.ROUGHNESS_SMOOTH);
    return f.all(PartKind.OUTLET)
        .map(o -> into(f, o.part().id()))
        .filter(arms -> !arms.isEmpty())
        .flatMap(
            arms ->
                rater.rate(gutter(f, arms, spout, perMetre, roughness), spout).ratings().stream())
        .toList();
  }

  /**
   * The gutter that runs into one outlet.
   *
   * @param arms lengths of its pieces, from both sides
   * @param perMetre what drips into each metre, m³/s
   * @param roughness Manning's n
   */
  private static GutterRun gutter(
      Assembled f, List<Double> arms, Opening spout, double perMetre, double roughness) {
    double thick = f.kit().item(Items.GUTTER).thickness();
    double length = arms.stream().mapToDouble(Double::doubleValue).sum();
    return new GutterRun(
        length,
        Trough.box(f.kit().get(GUTTER_WIDTH) - 2 * thick, f.kit().get(GUTTER_DEPTH) - thick),
        LEVEL,
        roughness,
        List.of(new Inflow(0, length, perMetre * length)),
        List.of(Outlet.hole(arms.size() > 1 ? arms.get(0) : 0, spout)));
  }

  private static double area(Assembled f, Bay bay) {
    double v = bay.stretch().middle();
    List<Placed> pans = f.pansOf(bay);
    double run = pans.get(pans.size() - 1).box().max().y() - bay.stretch().from();
    return (bay.right().centre(v) - bay.left().centre(v)) * run;
  }

  /** Lengths of the pieces of gutter that run into an outlet. */
  private static List<Double> into(Assembled f, String outlet) {
    Set<String> from =
        f.layout().links().stream()
            .filter(l -> l.to().equals(outlet))
            .map(Link::from)
            .collect(Collectors.toSet());
    return f.all(PartKind.GUTTER)
        .filter(g -> from.contains(g.part().id()))
        .map(g -> g.part().length())
        .toList();
  }

  private static Finding finding(Assembled f, Rule rule, String what, Rating r, Storm storm) {
    Quantity carried = Quantity.of(Kind.RAIN, storm.intensity() / r.use());
    Quantity asked = Quantity.of(Kind.RAIN, storm.intensity());
    return f.found(
        rule,
        Words.of("%s carries rain of %s and no more, by %s.", what, carried, r.capacity().name()),
        new Measure(carried, asked),
        Fix.of("Use a kit with a larger gutter and downspout, or more outlets."));
  }
}
