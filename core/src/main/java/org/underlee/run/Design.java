package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.check.Answer;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.DrainageFindings;
import org.underlee.finding.Finding;
import org.underlee.finding.Findings;
import org.underlee.finding.Place;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.takeoff.Takeoff;
import org.underlee.writeback.Provenance;
import org.underlee.writeback.WriteBack;

/**
 * /** A deck with its assembly: what was recognised, every part, what the checks found and ask,
 * what to buy and cut, where the rain goes, and the model with it all written in.
 */
public record Design(
    Survey survey,
    Layout layout,
    Answer checks,
    Takeoff takeoff,
    DrainProof proof,
    Provenance provenance,
    WriteBack.Written written) {
  Design with(WriteBack.Written other) {
    return new Design(survey, layout, checks, takeoff, proof, provenance, other);
  }

  public List<Finding> findings() {
    List<Finding> all = new ArrayList<>(survey.findings());
    all.addAll(OpenDeck.measured(layout.findings(), proof));
    all.addAll(checks.findings());
    all.addAll(
        DrainageFindings.of(proof, part -> Place.NOWHERE, OpenDeck.fields(layout.findings())));
    return Findings.grouped(all);
  }

  /** The GlobalIds that parts have in the model, by the part's id. */
  public Map<String, String> globalIds() {
    return written.globalIds();
  }

  /** The GlobalId that a part has in the model. */
  public Optional<String> globalIdOf(Part part) {
    return Optional.ofNullable(written.globalIds().get(part.id()));
  }
}
