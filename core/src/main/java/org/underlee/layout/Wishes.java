package org.underlee.layout;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.framing.Field;

/**
 * What the user has fixed or stated about the decks in scope; the rest is the program's to choose.
 *
 * @param boardsOff whether the boards are off, or not yet laid, so that joist tops can be reached
 * @param leaveOpen bays to leave open on purpose: {@code B3} in every field, or {@code
 *     deck-1/field-1/B3}
 * @param seat height at the high end, metres from the joist bottom there
 * @param lowEnd the line that the low end follows: {@link LowEnd#id()}
 * @param dryZone what must stay dry; everything below the decks when empty
 * @param outlets where outlets and downspouts are
 */
public record Wishes(
    boolean boardsOff,
    Set<String> leaveOpen,
    OptionalDouble seat,
    Optional<String> lowEnd,
    Optional<DryZone> dryZone,
    OutletWishes outlets) {
  public static final Wishes NONE =
      new Wishes(
          false,
          Set.of(),
          OptionalDouble.empty(),
          Optional.empty(),
          Optional.empty(),
          OutletWishes.NONE);

  public Wishes {
    leaveOpen = Set.copyOf(leaveOpen);
  }

  public Wishes withBoardsOff() {
    return new Wishes(true, leaveOpen, seat, lowEnd, dryZone, outlets);
  }

  public Wishes leavingOpen(Set<String> bays) {
    return new Wishes(boardsOff, bays, seat, lowEnd, dryZone, outlets);
  }

  public Wishes withSeat(double metres) {
    return new Wishes(boardsOff, leaveOpen, OptionalDouble.of(metres), lowEnd, dryZone, outlets);
  }

  public Wishes endingAt(String line) {
    return new Wishes(boardsOff, leaveOpen, seat, Optional.of(line), dryZone, outlets);
  }

  public Wishes keepingDry(DryZone zone) {
    return new Wishes(boardsOff, leaveOpen, seat, lowEnd, Optional.of(zone), outlets);
  }

  public Wishes withOutlets(OutletWishes places) {
    return new Wishes(boardsOff, leaveOpen, seat, lowEnd, dryZone, places);
  }

  /** Whether a bay of a field is over what must stay dry. */
  boolean keepsDry(Bay bay, Field field) {
    return dryZone.map(z -> z.isBelow(bay, field.frame())).orElse(true);
  }

  /**
   * @param field {@code deck-1/field-1}
   * @param bay {@code B3}
   */
  boolean leavesOpen(String field, String bay) {
    return leaveOpen.contains(bay) || leaveOpen.contains(field + "/" + bay);
  }
}
