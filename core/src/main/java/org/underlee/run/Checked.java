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
 */
public record Checked(Survey survey, List<WrittenPart> parts, DrainProof proof, Answer checks) {
  public Checked {
    parts = List.copyOf(parts);
  }

  /** What is odd about the model, then what each check found. */
  public List<Finding> findings() {
    List<Finding> all = new ArrayList<>(survey.findings());
    all.addAll(checks.findings());
    Map<String, Place> places =
        parts.stream()
            .collect(Collectors.toMap(WrittenPart::id, p -> p.element().place(), (a, b) -> a));
    all.addAll(DrainageFindings.of(proof, id -> places.getOrDefault(id, Place.NOWHERE)));
    return Findings.grouped(all);
  }
}
