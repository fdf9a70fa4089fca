package org.underlee.ids;

import java.util.List;
import org.underlee.finding.Finding;

/** What a check by an IDS file found. */
public record IdsReport(List<Outcome> outcomes, List<Finding> findings) {
  public IdsReport {
    outcomes = List.copyOf(outcomes);
    findings = List.copyOf(findings);
  }

  /**
   * Of one specification.
   *
   * @param applicable elements that it is about
   * @param failed elements that lack something
   */
  public record Outcome(String name, Status status, int applicable, int failed) {}

  /** Whether a specification is fulfilled. */
  public enum Status {
    PASSED,
    FAILED,
    /** It is for other versions of IFC. */
    NOT_CHECKED
  }

  /** Whether no specification failed. */
  public boolean passed() {
    return outcomes.stream().noneMatch(o -> o.status() == Status.FAILED);
  }
}
