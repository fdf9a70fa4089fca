package org.underlee.run;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.DrainageFindings;
import org.underlee.drainage.Leak;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Subject;
import org.underlee.layout.LayoutRules;
import org.underlee.units.Words;

/**
 * Open deck is told once: the layout knows why it is open, beyond the gutter or where the user
 * asked for it, and the proof how much rain comes through.
 */
final class OpenDeck {
  private OpenDeck() {}

  /**
   * The leaks that findings of the layout tell: rain beyond the gutter where they say why, and on
   * bays that the user asked to leave open.
   */
  static Predicate<Leak> told(List<Finding> layout) {
    Set<String> beyond = subjects(layout, OpenDeck::isBeyond, Subject::group);
    Set<String> open = subjects(layout, OpenDeck::isAskedFor, s -> s.group() + "/" + s.name());
    return leak ->
        switch (leak.cause()) {
          case BEYOND_GUTTER -> beyond.contains(leak.field());
          case OPEN_BAY -> open.contains(leak.field() + "/" + leak.bay());
          default -> false;
        };
  }

  private static Set<String> subjects(
      List<Finding> layout, Predicate<Finding> which, Function<Subject, String> name) {
    return layout.stream()
        .filter(which)
        .flatMap(f -> f.subjects().stream())
        .map(name)
        .collect(Collectors.toSet());
  }

  private static boolean isAskedFor(Finding f) {
    return f.rule().equals(LayoutRules.LEFT_OPEN) || f.rule().equals(LayoutRules.OUTSIDE_ZONE);
  }

  /** Of what the layout found, why deck is open. */
  static List<Finding> reasons(List<Finding> layout) {
    return layout.stream().filter(f -> isBeyond(f) || isAskedFor(f)).toList();
  }

  /** What the layout found, with the amount that the proof shows. */
  static List<Finding> measured(List<Finding> layout, DrainProof proof) {
    return layout.stream().map(f -> isBeyond(f) ? with(f, proof) : f).toList();
  }

  private static boolean isBeyond(Finding f) {
    return f.rule().equals(LayoutRules.BEYOND_BEAM);
  }

  private static Finding with(Finding f, DrainProof proof) {
    Optional<Words> amount =
        f.subjects().stream()
            .findFirst()
            .flatMap(s -> DrainageFindings.beyondGutter(proof, s.group()));
    return amount
        .map(
            a ->
                new Finding(
                    f.rule(),
                    f.subjects(),
                    Words.of("%s That is %s.", f.words(), a),
                    f.place(),
                    f.measure(),
                    f.fix()))
        .orElse(f);
  }
}
