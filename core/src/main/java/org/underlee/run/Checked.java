package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.underlee.check.Answer;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.DrainageFindings;
import org.underlee.finding.Finding;
import org.underlee.finding.Findings;
import org.underlee.finding.Place;

/**
 * An assembly as it stands in a model, and what it was checked for.
 *
 * @param survey of the framing around it
 * @param parts as they are in the model
 * @param proof where the rain goes with these parts
 * @param checks what the checks of a design say of them; none where only the rain was followed
 * @param open why deck is open that the design leaves open
 */
public record Checked(
    Survey survey, List<WrittenPart> parts, DrainProof proof, Answer checks, List<Finding> open) {
  public Checked {
    parts = List.copyOf(parts);
    open = List.copyOf(open);
  }

  /** Before anything but the rain was looked at. */
  Checked(Survey survey, List<WrittenPart> parts, DrainProof proof) {
    this(survey, parts, proof, new Answer(List.of(), List.of()), List.of());
  }

  Checked with(Answer answer, List<Finding> reasons) {
    return new Checked(survey, parts, proof, answer, reasons);
  }

  /** What is odd about the model, then what each check found. */
  public List<Finding> findings() {
    List<Finding> all = new ArrayList<>(survey.findings());
    all.addAll(OpenDeck.measured(open, proof));
    all.addAll(checks.findings());
    Map<String, Place> places =
        parts.stream()
            .collect(Collectors.toMap(WrittenPart::id, p -> p.element().place(), (a, b) -> a));
    all.addAll(
        DrainageFindings.of(
            proof, id -> places.getOrDefault(id, Place.NOWHERE), OpenDeck.told(open)));
    return Findings.grouped(all);
  }
}
