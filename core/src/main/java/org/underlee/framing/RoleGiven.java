package org.underlee.framing;

import java.util.HashSet;
import java.util.Set;

/**
 * The role a member was given.
 *
 * @param decks ids of the decks that it serves
 * @param confidence 0…1
 * @param why the evidence, in plain words
 */
public record RoleGiven(
    Member member, Role role, Set<String> decks, double confidence, String why) {
  public RoleGiven {
    decks = Set.copyOf(decks);
  }

  RoleGiven with(double newConfidence, String newWhy) {
    return new RoleGiven(member, role, decks, newConfidence, newWhy);
  }

  RoleGiven alsoOf(String deck) {
    Set<String> all = new HashSet<>(decks);
    all.add(deck);
    return new RoleGiven(member, role, all, confidence, why);
  }
}
