package org.underlee.framing;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** What recognising the framing of decks has to say. */
final class FramingFindings {
  private FramingFindings() {}

  static List<Finding> of(List<Deck> decks, List<RoleGiven> roles) {
    List<Finding> findings = new ArrayList<>();
    if (decks.isEmpty()) {
      findings.add(
          Finding.of(
              FramingRules.NO_JOISTS,
              Place.NOWHERE,
              Words.of(
                  "No joists were found: no three level bars of one depth lie side by side less"
                      + " than %s apart.",
                  Quantity.length(Field.WIDEST_BAY)),
              "Check that the model holds the framing as beams or members with bodies. Where it has"
                  + " the deck as a slab only, say which joists to assume with --assume."));
    }
    for (Deck deck : decks) {
      findings.addAll(WideGaps.in(deck));
      for (Field field : deck.fields()) {
        findings.addAll(SpacedPairs.in(field));
        if (field.fallAssumed()) {
          findings.add(fallAssumed(field));
        }
      }
    }
    findings.addAll(Trust.findings(roles));
    return findings;
  }

  private static Finding fallAssumed(Field field) {
    return Finding.of(
        FramingRules.FALL_ASSUMED,
        field.lines().get(0).plies().get(0).element().place(),
        field.id()
            + ": nothing in the model tells which end is the house side; the fall is assumed.",
        "Put the house wall in the model, or call the member on the house side a ledger.");
  }
}
