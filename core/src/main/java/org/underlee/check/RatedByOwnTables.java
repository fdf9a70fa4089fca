package org.underlee.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.underlee.drainage.flow.CapacityData;
import org.underlee.drainage.flow.Rating;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.units.Words;

/** Where the user's own tables take part, what governs the hardest used stretch of a gutter. */
public final class RatedByOwnTables implements Check {
  static final Rule OWN =
      new Rule(
          "rated-by-own-tables",
          Level.NOTE,
          "The user's own tables",
          "Gutters and downspouts are rated by tables of the user's own, too: what governs is told.");

  @Override
  public List<Rule> rules() {
    return List.of(OWN);
  }

  @Override
  public Answer of(CheckInput input) {
    GutterInRain rain = input.gutters();
    return Answer.found(
        rain.own().isEmpty()
            ? List.of()
            : input.fields().stream().flatMap(f -> told(f, input, rain).stream()).toList());
  }

  private static Optional<Finding> told(Assembled f, CheckInput input, GutterInRain rain) {
    List<Rating> accepted =
        Stretch.of(f, input, rain).stream().flatMap(s -> s.accepted(rain).stream()).toList();
    Optional<Rating> gutter = hardest(accepted, p -> p == Rating.Part.GUTTER);
    Optional<Rating> spout = hardest(accepted, p -> p != Rating.Part.GUTTER);
    return gutter.flatMap(g -> spout.map(s -> finding(f, rain, g, s)));
  }

  private static Finding finding(Assembled f, GutterInRain rain, Rating gutter, Rating spout) {
    String tables =
        rain.own().stream().map(CapacityData.Table::name).collect(Collectors.joining("; "));
    Words words =
        Words.of(
            "rated by your own tables, too (%s): what governs the gutter is %s, of which the rain"
                + " takes %s percent; what governs outlet and downspout is %s, of which it takes %s percent.",
            tables,
            gutter.capacity().words(),
            percent(gutter),
            spout.capacity().words(),
            percent(spout));
    Fix fix =
        Fix.of(
            "Compare them with the edition that your building department has adopted; what may not"
                + " decide can be named in the file's shownOnly.");
    return Finding.of(OWN, f.place(), words, fix).about(f.subject());
  }

  private static long percent(Rating rating) {
    return (long) Math.ceil(100 * rating.use());
  }

  private static Optional<Rating> hardest(List<Rating> all, Predicate<Rating.Part> part) {
    return all.stream()
        .filter(r -> part.test(r.part()))
        .max(Comparator.comparingDouble(Rating::use));
  }
}
