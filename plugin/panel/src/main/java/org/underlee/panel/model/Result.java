package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Deck;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.run.Design;
import org.underlee.run.Survey;

/**
 * What is known of a model under some decisions.
 *
 * @param edition another number for each layout
 * @param design the checked and counted design, once it is there
 * @param progress how far it has come
 */
public record Result(
    Decisions decisions,
    Survey survey,
    Layout layout,
    long edition,
    Optional<Design> design,
    Progress progress) {
  Result with(Design whole) {
    return new Result(decisions, survey, layout, edition, Optional.of(whole), Progress.WHOLE);
  }

  /** Whether the design is of this layout, and not of the one before. */
  public boolean isWhole() {
    return progress == Progress.WHOLE;
  }

  /** Whether every part is in its place by the decisions. */
  public boolean isLaidOut() {
    return progress.compareTo(Progress.LAID_OUT) >= 0;
  }

  /** Whether this is of the same model and the same layout as another. */
  boolean showsSameAs(Result other) {
    return edition == other.edition && isOfSameModelAs(other);
  }

  boolean isOfSameModelAs(Result other) {
    return survey.source().equals(other.survey.source());
  }

  Result with(Decisions others) {
    return new Result(others, survey, layout, edition, design, progress);
  }

  public List<Finding> findings() {
    return design.map(Design::findings).orElseGet(survey::findings);
  }

  public Optional<Part> part(String id) {
    return layout.parts().stream().filter(p -> p.id().equals(id)).findFirst();
  }

  public Optional<FieldBays> field(String id) {
    return survey.bays().stream().filter(b -> b.field().id().equals(id)).findFirst();
  }

  /** The deck that a field is of. */
  Optional<String> deckOf(String field) {
    return survey.framing().decks().stream()
        .filter(d -> d.fields().stream().anyMatch(f -> f.id().equals(field)))
        .map(Deck::id)
        .findFirst();
  }

  public Optional<Bay> bay(String field, String bay) {
    return field(field).flatMap(f -> f.bays().stream().filter(b -> b.id().equals(bay)).findFirst());
  }

  public Optional<FieldLayout> layoutOf(String field) {
    return layout.fields().stream().filter(f -> f.field().equals(field)).findFirst();
  }

  public Optional<BuildingElement> element(String globalId) {
    return survey.elements().stream().filter(e -> e.globalId().equals(globalId)).findFirst();
  }
}
