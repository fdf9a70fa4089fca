package org.underlee.bay;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.FieldHalves;
import org.underlee.framing.Member;
import org.underlee.framing.Role;
import org.underlee.framing.Support;

/**
 * Parts a field and its bays at a high line, from which they fall to both ends. Blocking that
 * stands in line on it may stay: the pans of both sides then begin at its faces.
 *
 * <p>Only what stands free may drain both ways: at a house half of the water would go to it.
 */
public final class BothWays {
  private final FieldBays whole;
  private final HighLinePlaces places;

  private BothWays(FieldBays whole) {
    this.whole = whole;
    this.places = new HighLinePlaces(whole);
  }

  /**
   * Both halves, first the one that falls as the whole field did; from the line nearest to the
   * middle.
   *
   * @param otherId name of the second half
   * @return empty when something stands wherever the line could be
   */
  public static Optional<List<FieldBays>> of(FieldBays whole, String otherId) {
    BothWays ways = new BothWays(whole);
    return ways.halves(ways.places.nearestToMiddle(), false, otherId);
  }

  /**
   * As {@link #of}, from a line where the user wants it.
   *
   * @param station metres from the field's high end
   * @return empty when something stands there; {@link HighLinePlaces#wrong} says what
   */
  public static Optional<List<FieldBays>> at(FieldBays whole, double station, String otherId) {
    BothWays ways = new BothWays(whole);
    return ways.halves(ways.places.at(station), true, otherId);
  }

  /**
   * Whether a field's high end is at no house: no ledger bounds it, and no field that falls from
   * the house ends there.
   *
   * @param others fields of the same deck
   */
  public static boolean standsFree(Field field, List<Field> others) {
    List<Member> high = field.high().stream().map(Support::member).toList();
    return field.highLine().isEmpty()
        && field.supports(Role.LEDGER).isEmpty()
        && others.stream()
            .filter(o -> !o.equals(field))
            .flatMap(o -> Stream.concat(o.low().stream(), o.dropBeams().stream()))
            .map(Support::member)
            .noneMatch(high::contains);
  }

  private Optional<List<FieldBays>> halves(OptionalDouble line, boolean asked, String otherId) {
    return line.isPresent()
        ? Optional.of(halves(line.getAsDouble(), asked, otherId))
        : Optional.empty();
  }

  private List<FieldBays> halves(double line, boolean asked, String otherId) {
    List<Member> atLine = places.closing(line).map(Block::member).toList();
    List<Field> fields = FieldHalves.of(whole.field(), line, asked, atLine, otherId);
    List<FieldBays> halves = new ArrayList<>();
    for (int i = 0; i < fields.size(); i++) {
      halves.add(new HalfBays(whole.field(), fields.get(i), i == 0).of(bays(i == 0), line));
    }
    return halves;
  }

  private List<Bay> bays(boolean onward) {
    List<Bay> bays = new ArrayList<>(whole.bays());
    if (!onward) {
      Collections.reverse(bays);
    }
    return bays;
  }
}
