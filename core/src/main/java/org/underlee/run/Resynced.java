package org.underlee.run;

import java.util.List;

/**
 * A new export with the assembly of the old one.
 *
 * @param old the model that it was in
 * @param decisions what was decided then, and whether it is kept
 * @param again the same decisions, to go on from
 * @param bays what became of each, in the order of the new export; those that are gone last
 */
public record Resynced(
    Source old, Design design, List<Decision> decisions, Redecided again, List<BayChange> bays) {
  public Resynced {
    decisions = List.copyOf(decisions);
    bays = List.copyOf(bays);
  }

  /**
   * One decision.
   *
   * @param of what it is about: the whole assembly, or a field
   * @param why in words, where it is not kept
   */
  public record Decision(String of, String name, String value, boolean kept, String why) {}

  public long count(BayChange.Kind kind) {
    return bays.stream().filter(b -> b.kind() == kind).count();
  }
}
