package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.layout.Onto;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * What gutter, outlet and downspout carry, against a heavy burst of rain, by every method that the
 * program knows; the least of the accepted ones decides. Each bay's water comes in where the bay
 * is.
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

  @Override
  public List<Rule> rules() {
    return List.of(GUTTER, DOWNSPOUT);
  }

  @Override
  public Answer of(CheckInput input) {
    Storm storm = input.storm();
    GutterInRain rain = input.gutters();
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      List<Overfull> overfull = overfull(Stretch.of(f, input, rain), rain);
      worst(f, overfull, p -> p == Rating.Part.GUTTER)
          .ifPresent(w -> found.add(finding(w, GUTTER, "the gutter", storm, rain)));
      worst(f, overfull, p -> p != Rating.Part.GUTTER)
          .ifPresent(
              w -> found.add(finding(w, DOWNSPOUT, "an outlet or its downspout", storm, rain)));
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "What rain must drains be made for here?",
                "Gutters and downspouts were looked at for rain of "
                    + Quantity.of(Kind.RAIN, storm.intensity()).in(UnitSystem.IMPERIAL)
                    + " ("
                    + storm.words()
                    + "), with half the area of the walls beside the deck, and for "
                    + roofs(input),
                "your local code; NOAA Atlas 14")));
  }

  private static String roofs(CheckInput input) {
    double area = input.onto().stream().mapToDouble(Onto::area).sum();
    return area > 0
        ? Quantity.area(area).in(UnitSystem.IMPERIAL) + " of roofs that drain onto it."
        : "no roof that sheds onto it.";
  }

  /** A stretch of gutter that does not carry the rain, by every method. */
  private record Overfull(Stretch stretch, List<Rating> ratings) {}

  /** Where it is worst, and by which method. */
  private record Worst(Assembled field, Overfull where, Rating by) {}

  private static Optional<Worst> worst(
      Assembled f, List<Overfull> overfull, Predicate<Rating.Part> part) {
    return overfull.stream()
        .flatMap(o -> o.ratings.stream().map(r -> new Worst(f, o, r)))
        .filter(w -> w.by.capacity().accepted() && part.test(w.by.part()) && !w.by.passes())
        .max(Comparator.comparingDouble(w -> w.by.use()));
  }

  private static List<Overfull> overfull(List<Stretch> stretches, GutterInRain rain) {
    // to know that it carries takes one solution, to know how much about eight
    return stretches.stream()
        .filter(s -> !s.isCarried(rain))
        .map(s -> new Overfull(s, s.ratings(rain)))
        .toList();
  }

  private static Finding finding(
      Worst worst, Rule rule, String what, Storm storm, GutterInRain rain) {
    Rating r = worst.by;
    Quantity carried = Quantity.of(Kind.RAIN, storm.intensity() / r.use());
    Quantity asked = Quantity.of(Kind.RAIN, storm.intensity());
    return worst.field.found(
        rule,
        Words.of(
            "%s carries rain of %s at most, by %s; it must carry %s.",
            what, carried, r.capacity().words(), asked),
        new Measure(carried, asked),
        Fix.of(new LargerGutter(rain).advice(worst.where.stretch)));
  }
}
