package org.underlee.layout;

import java.util.List;
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
 * @param onto rain of roofs that comes onto the decks
 * @param tables of the user's own by which gutters and downspouts are rated, too
 */
public record Wishes(
    boolean boardsOff,
    Set<String> leaveOpen,
    OptionalDouble seat,
    Optional<String> lowEnd,
    Optional<DryZone> dryZone,
    OutletWishes outlets,
    List<Onto> onto,
    Optional<OwnTables> tables) {
  public static final Wishes NONE =
      new Wishes(
          false,
          Set.of(),
          OptionalDouble.empty(),
          Optional.empty(),
          Optional.empty(),
          OutletWishes.NONE,
          List.of(),
          Optional.empty());

  public Wishes {
    leaveOpen = Set.copyOf(leaveOpen);
    onto = List.copyOf(onto);
  }

  public Wishes with(List<Onto> rain) {
    return new Wishes(boardsOff, leaveOpen, seat, lowEnd, dryZone, outlets, rain, tables);
  }

  public Wishes ratedBy(OwnTables own) {
    return ratedBy(Optional.of(own));
  }

  /**
   * The same with other tables to rate by.
   *
   * @param own empty for the built-in ones alone
   */
  public Wishes ratedBy(Optional<OwnTables> own) {
    return new Wishes(boardsOff, leaveOpen, seat, lowEnd, dryZone, outlets, onto, own);
  }

  public Wishes withBoardsOff() {
    return withBoardsOff(true);
  }

  public Wishes withBoardsOff(boolean off) {
    return new Wishes(off, leaveOpen, seat, lowEnd, dryZone, outlets, onto, tables);
  }

  public Wishes leavingOpen(Set<String> bays) {
    return new Wishes(boardsOff, bays, seat, lowEnd, dryZone, outlets, onto, tables);
  }

  public Wishes withSeat(double metres) {
    return withSeat(OptionalDouble.of(metres));
  }

  /**
   * The same with another seat at the high end.
   *
   * @param metres empty for the kit's own
   */
  public Wishes withSeat(OptionalDouble metres) {
    return new Wishes(boardsOff, leaveOpen, metres, lowEnd, dryZone, outlets, onto, tables);
  }

  public Wishes endingAt(String line) {
    return endingAt(Optional.of(line));
  }

  /**
   * The same with another line that low ends follow.
   *
   * @param line empty for the one that the framing gives
   */
  public Wishes endingAt(Optional<String> line) {
    return new Wishes(boardsOff, leaveOpen, seat, line, dryZone, outlets, onto, tables);
  }

  public Wishes keepingDry(DryZone zone) {
    return keepingDry(Optional.of(zone));
  }

  /**
   * The same with another place that must stay dry.
   *
   * @param zone empty for all below the decks
   */
  public Wishes keepingDry(Optional<DryZone> zone) {
    return new Wishes(boardsOff, leaveOpen, seat, lowEnd, zone, outlets, onto, tables);
  }

  public Wishes withOutlets(OutletWishes places) {
    return new Wishes(boardsOff, leaveOpen, seat, lowEnd, dryZone, places, onto, tables);
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
