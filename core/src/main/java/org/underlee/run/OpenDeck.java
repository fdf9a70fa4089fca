package org.underlee.run;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.DrainageFindings;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Subject;
import org.underlee.layout.LayoutRules;
import org.underlee.units.Words;

/**
 * Deck that goes on beyond the gutter is told once: the layout knows why it is open, and the proof
 * how much rain comes through.
 */
final class OpenDeck {
  private OpenDeck() {}

  /** The fields of which the layout tells it: {@code deck-1/field-1}. */
  static Set<String> fields(List<Finding> layout) {
    return layout.stream()
        .filter(OpenDeck::isBeyond)
        .flatMap(f -> f.subjects().stream())
        .map(Subject::group)
        .collect(Collectors.toSet());
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
