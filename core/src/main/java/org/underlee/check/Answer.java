package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.Finding;

/** What a check found in the model, and what it cannot tell from the model. */
public record Answer(List<Finding> findings, List<SiteQuestion> questions) {
  public Answer {
    findings = List.copyOf(findings);
    questions = List.copyOf(questions);
  }

  static Answer found(List<Finding> findings) {
    return new Answer(findings, List.of());
  }

  static Answer asked(SiteQuestion... questions) {
    return new Answer(List.of(), List.of(questions));
  }

  Answer and(Answer other) {
    List<Finding> all = new ArrayList<>(findings);
    all.addAll(other.findings);
    List<SiteQuestion> asked = new ArrayList<>(questions);
    asked.addAll(other.questions);
    return new Answer(all, asked);
  }
}
