package org.underlee.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.underlee.check.DrainSet;
import org.underlee.drainage.DrainCases;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.WaterProver;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.StopSign;
import org.underlee.framing.Field;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Ground;
import org.underlee.layout.Layout;
import org.underlee.layout.Layouter;
import org.underlee.layout.Scope;
import org.underlee.takeoff.Buying;
import org.underlee.takeoff.Takeoff;
import org.underlee.takeoff.TakeoffBuilder;

/**
 * The ways in which the decks in scope can be kept dry, side by side: every kit, low-end line and
 * fall that is asked for, and where fields stand free falling one way and both ways, each at the
 * seat that serves most. What serves no bay is left out, and so is what comes to the same parts as
 * another.
 *
 * @param arrangements those that nothing dominates first, the most dry and then the most preferred
 *     first
 */
public record Comparison(Survey survey, List<Arrangement> arrangements) {
  /** Shares of the deck nearer than this count as equal when arrangements are put in order. */
  private static final double AS_DRY = 0.01;

  public Comparison {
    arrangements = List.copyOf(arrangements);
  }

  /**
   * Compares.
   *
   * @param runsPerFall falls to try besides each kit's own: 48 is 1:48
   * @param order of preference; what is not named counts after it
   * @param buying what things cost, where that is known
   * @param storm the rain that gutters and outlets must carry, as in {@link DeckRun#layOut}
   */
  public static Comparison of(
      Survey survey,
      Scope scope,
      List<Kit> kits,
      List<Double> runsPerFall,
      List<Preference> order,
      Buying buying,
      Storm storm) {
    StopSign stop = StopSign.here();
    List<Arrangement> found = new ArrayList<>();
    for (Survey ways : ways(survey)) {
      for (Kit kit : kits) {
        for (Kit steep : atFalls(kit, runsPerFall)) {
          for (String line : lines(ways, scope)) {
            stop.obey();
            arrangement(ways, scope, steep, line, buying, storm)
                .filter(a -> found.stream().noneMatch(a::isSameAs))
                .ifPresent(found::add);
          }
        }
      }
    }
    found.sort(by(order));
    List<Arrangement> told = new ArrayList<>();
    List<Arrangement> best = found.stream().filter(a -> dominating(a, found).isEmpty()).toList();
    told.addAll(best);
    found.stream()
        .filter(a -> !best.contains(a))
        .map(a -> a.dominatedBy(dominating(a, best).map(d -> best.indexOf(d) + 1)))
        .forEach(told::add);
    return new Comparison(survey, told);
  }

  /** As surveyed, and with what stands free falling both ways. */
  private static List<Survey> ways(Survey survey) {
    return Stream.of(survey, HighLines.whereFree(survey)).distinct().toList();
  }

  /** Of the decks in scope, the fields that fall both ways, as after {@code --both-ways}. */
  private static List<String> bothWays(Survey survey, Scope scope) {
    return scope.of(survey.framing().decks()).stream()
        .flatMap(d -> d.fields().stream())
        .flatMap(f -> HighLineAsked.of(f).stream())
        .map(HighLineAsked::text)
        .toList();
  }

  private static Optional<Arrangement> dominating(Arrangement a, List<Arrangement> others) {
    return others.stream().filter(o -> o.dominates(a)).findFirst();
  }

  private static Comparator<Arrangement> by(List<Preference> order) {
    Comparator<Arrangement> by =
        Comparator.comparingLong(a -> -Math.round(a.dryFraction() / AS_DRY));
    for (Preference preference : order) {
      by = by.thenComparing(preference.order());
    }
    for (Preference preference : Preference.values()) {
      by = by.thenComparing(preference.order());
    }
    return by;
  }

  private static List<Kit> atFalls(Kit kit, List<Double> runsPerFall) {
    List<Kit> kits = new ArrayList<>(List.of(kit));
    for (double run : runsPerFall) {
      if (run != kit.get(DrainValue.RUN_PER_FALL)) {
        kits.add(kit.with(DrainValue.RUN_PER_FALL, run, "set by you with --fall"));
      }
    }
    return kits;
  }

  /** The line that the user fixed, else each that some field has. */
  private static List<String> lines(Survey survey, Scope scope) {
    return scope.wishes().lowEnd().map(List::of).orElseGet(() -> Layouter.lowEnds(survey.bays()));
  }

  private static Optional<Arrangement> arrangement(
      Survey survey, Scope scope, Kit kit, String line, Buying buying, Storm storm) {
    boolean boardsOff = kit.family() == Family.DRAPE;
    var wishes = scope.wishes().endingAt(line);
    Scope own = scope.with(boardsOff ? wishes.withBoardsOff() : wishes);
    Layout layout = DeckRun.layOut(survey, own, kit, storm);
    if (layout.fields().isEmpty()) {
      return Optional.empty();
    }
    Takeoff takeoff = TakeoffBuilder.of(layout, buying);
    DrainProof proof = WaterProver.prove(DrainCases.of(survey.bays(), layout, own.wishes().onto()));
    return Optional.of(
        new Arrangement(
            kit,
            line,
            bothWays(survey, own),
            layout.fields(),
            boardsOff,
            dryFraction(survey, own, layout, proof),
            headroom(survey, layout),
            (int) layout.parts().stream().filter(p -> !p.cuts().isEmpty()).count(),
            bought(takeoff),
            takeoff.order().cost(),
            DrainSet.of(survey.checkInput(layout, own.wishes(), storm, proof)),
            Optional.empty()));
  }

  /** Of the rain on all decks in scope, fields without any part among them. */
  private static double dryFraction(Survey survey, Scope scope, Layout layout, DrainProof proof) {
    List<String> laidOut = layout.fields().stream().map(FieldLayout::field).toList();
    double bare =
        scope.of(survey.framing().decks()).stream()
            .flatMap(d -> d.fields().stream())
            .filter(f -> !laidOut.contains(f.id()))
            .map(f -> DrainCases.of(survey.baysOf(f), List.of()))
            .mapToDouble(c -> WaterProver.prove(c).area())
            .sum();
    // Areas of slivers add up in another order, to a last digit more than the whole.
    return Math.min(1, proof.drained() / (proof.rain() + bare));
  }

  private static OptionalDouble headroom(Survey survey, Layout layout) {
    return layout.fields().stream()
        .flatMapToDouble(f -> Ground.headroom(f, field(survey, f)).stream())
        .min();
  }

  private static Field field(Survey survey, FieldLayout layout) {
    return survey
        .framing()
        .fields()
        .filter(f -> f.id().equals(layout.field()))
        .findFirst()
        .orElseThrow();
  }

  private static int bought(Takeoff takeoff) {
    int lengths = takeoff.stock().stream().mapToInt(Takeoff.Stock::pieces).sum();
    double pieces =
        takeoff.lines().stream()
            .filter(l -> l.unit().equals("piece"))
            .mapToDouble(Takeoff.Line::quantity)
            .sum();
    return lengths + (int) Math.round(pieces);
  }
}
