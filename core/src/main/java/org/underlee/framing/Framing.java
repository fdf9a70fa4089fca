package org.underlee.framing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.finding.Finding;
import org.underlee.finding.NotMeasured;

/** All that was recognised in a model. */
public record Framing(
    List<Deck> decks,
    List<RoleGiven> roles,
    List<NotMeasured> notMeasured,
    List<Finding> findings) {
  public Stream<Field> fields() {
    return decks.stream().flatMap(d -> d.fields().stream());
  }

  /** What was recognised of one deck: its fields, its members' roles, its findings. */
  public Framing only(Deck deck) {
    List<RoleGiven> own = roles.stream().filter(r -> r.decks().contains(deck.id())).toList();
    return new Framing(List.of(deck), own, notMeasured, FramingFindings.of(List.of(deck), own));
  }

  Framing telling(List<Finding> more) {
    return new Framing(
        decks, roles, notMeasured, Stream.concat(findings.stream(), more.stream()).toList());
  }

  /** With these in place of what could not be measured so far. */
  public Framing withNotMeasured(List<NotMeasured> all) {
    return new Framing(decks, roles, all, findings);
  }

  /** With other fields of the same members in the decks; what is told of fields is told anew. */
  public Framing with(List<Deck> parted) {
    List<Finding> told = new ArrayList<>(FramingFindings.of(parted, roles));
    List<Finding> others = new ArrayList<>(findings);
    others.removeAll(FramingFindings.of(decks, roles));
    told.addAll(others);
    return new Framing(parted, roles, notMeasured, told);
  }

  public Optional<Role> roleOf(String globalId) {
    return roles.stream()
        .filter(r -> r.member().id().equals(globalId))
        .map(RoleGiven::role)
        .findFirst();
  }
}
