package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.layout.Link;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** A gutter has a second way out, no outlet serves too long a stretch, and turns are few. */
public final class Outlets implements Check {
  static final Rule SINGLE =
      new Rule(
          "single-outlet",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": two outlets, or one and an overflow",
          "A gutter has one outlet and no overflow: when it is blocked, the gutter spills.");

  static final Rule LONG =
      new Rule(
          "gutter-long-for-outlet",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": at most 40 ft of gutter to one outlet",
          "One outlet serves a long stretch of gutter.");

  static final Rule TURNS =
      new Rule(
          "many-elbows",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": at most four elbows in a downspout",
          "A downspout turns often; leaves lodge at each turn.");

  private static final int LEAST_OUTLETS = 2;
  private static final double LONGEST = 40 * Lengths.FOOT;

  @Override
  public List<Rule> rules() {
    return List.of(SINGLE, LONG, TURNS);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      long outlets = f.all(PartKind.OUTLET).count();
      if (outlets > 0 && outlets < LEAST_OUTLETS) {
        found.add(single(f));
      }
      double longest = stretch(f);
      if (longest > LONGEST) {
        found.add(tooLong(f, longest));
      }
      long most = Math.round(input.data().get(ProofData.Key.ELBOWS_MOST));
      long elbows = outlets == 0 ? 0 : f.all(PartKind.ELBOW).count() / outlets;
      if (elbows > most) {
        found.add(turns(f, elbows, most));
      }
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Do leaves fall on the deck, and can each outlet's strainer be reached?",
                "A blocked outlet spills over the whole gutter.",
                Rule.COMMON_PRACTICE)));
  }

  /** The longest sum of the gutter pieces that run into one outlet. */
  private static double stretch(Assembled f) {
    return f.all(PartKind.OUTLET)
        .mapToDouble(
            o -> {
              Set<String> into =
                  f.layout().links().stream()
                      .filter(l -> l.to().equals(o.part().id()))
                      .map(Link::from)
                      .collect(Collectors.toSet());
              return f.all(PartKind.GUTTER)
                  .filter(g -> into.contains(g.part().id()))
                  .mapToDouble(g -> g.part().length())
                  .sum();
            })
        .max()
        .orElse(0);
  }

  private static Finding single(Assembled f) {
    return f.found(
        SINGLE,
        Words.of("the gutter has one outlet and no overflow."),
        new Measure(Quantity.count(1), Quantity.count(LEAST_OUTLETS)),
        Fix.of("Add a second outlet or an overflow at the rim, where spilling does no harm."));
  }

  private static Finding tooLong(Assembled f, double length) {
    return f.found(
        LONG,
        Words.of("one outlet serves %s of gutter.", Quantity.length(length)),
        Measure.lengths(length, LONGEST),
        Fix.of(
            Words.of(
                "Use a kit that has an outlet for each %s of gutter or less (gutterLongestMm).",
                Quantity.length(LONGEST).atMost())));
  }

  private static Finding turns(Assembled f, long elbows, long most) {
    return f.found(
        TURNS,
        Words.of("a downspout has %s elbows.", Quantity.count(elbows)),
        new Measure(Quantity.count(elbows), Quantity.count(most)),
        Fix.of("Move the outlet to where the downspout runs straight down."));
  }
}
