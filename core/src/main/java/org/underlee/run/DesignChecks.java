package org.underlee.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.underlee.check.Answer;
import org.underlee.check.CheckInput;
import org.underlee.check.Checks;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.geom.Mesh;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.units.Words;

/**
 * The checks of a design, on an assembly as it stands in a model. What a part is for is known from
 * laying out again by what the model keeps of the design; where it is and how it falls is read.
 */
final class DesignChecks {
  private DesignChecks() {}

  /**
   * @param drained the model with the assembly in it
   * @param given the kit, where it is one of the user's own
   */
  static Answer of(IfcModel drained, Checked proved, Optional<Kit> given) {
    try {
      Decisions decided = Decisions.in(drained);
      return of(proved.survey(), proved.parts(), proved.proof(), decided, decided.kit(given));
    } catch (InputException unknown) {
      return leftOut(String.valueOf(unknown.getMessage()), unknown.advice());
    }
  }

  private static Answer of(
      Survey survey, List<WrittenPart> parts, DrainProof proof, Decisions decided, Kit kit) {
    Storm storm = decided.storm();
    Layout meant = DeckRun.layOut(survey, decided.scope(), kit, storm);
    Map<String, Mesh> shapes =
        parts.stream()
            .collect(Collectors.toMap(WrittenPart::id, p -> p.element().shape(), (a, b) -> a));
    Set<String> unknown = new TreeSet<>(shapes.keySet());
    unknown.removeAll(meant.parts().stream().map(Part::id).collect(Collectors.toSet()));
    if (!unknown.isEmpty()) {
      return leftOut(
          unknown.size() + " parts, such as " + unknown.iterator().next() + ", are not of it",
          "Run resync, which lays the assembly out for the framing as it is now.");
    }
    return Checks.of(
        CheckInput.asItStands(
            survey.bays(), survey.elements(), meant, storm, proof.outlets(), shapes));
  }

  private static Answer leftOut(String why, String fix) {
    Words words = Words.of("the design that the model keeps could not be laid out again: %s.", why);
    return new Answer(
        List.of(Finding.of(Rules.CHECKS_LEFT_OUT, Place.NOWHERE, words, fix)), List.of());
  }
}
