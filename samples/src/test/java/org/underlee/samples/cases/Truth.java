package org.underlee.samples.cases;

import java.util.List;
import java.util.Map;
import org.underlee.samples.Xyz;

/** What a survey of a case should say, by the keys of its pieces; lengths are millimetres. */
public record Truth(List<Deck> decks) {
  /** One walking level. Its id and the order of its fields play no part. */
  public record Deck(boolean outside, List<Field> fields) {}

  /**
   * Parallel joists between the same supports.
   *
   * @param fall in the frame of the case
   * @param lines in order of u, which points to the right of someone who looks along the fall
   * @param supports keys by the survey's list: ledgers, rims, beams, posts, headers, trimmers; a
   *     list that is not named is not scored
   */
  public record Field(
      Xyz fall, List<Line> lines, Map<String, List<String>> supports, List<Bay> bays) {}

  /**
   * @param members in order across the line, and of pieces one after the other in order of station
   * @param plies side by side where most of them are
   */
  public record Line(List<String> members, int plies, double width, double depth) {}

  /**
   * @param left index of the line on the low-u side
   * @param widths station from the bay's high end and clear width there, from end to end; where the
   *     width steps, the same station twice
   */
  public record Bay(
      int left,
      int right,
      double length,
      List<double[]> widths,
      List<Block> blocking,
      List<Bridge> bridging,
      List<Crossing> crossings) {
    public static Bay plain(int left, int right, double length, double width) {
      return new Bay(
          left,
          right,
          length,
          List.of(new double[] {0, width}, new double[] {length, width}),
          List.of(),
          List.of(),
          List.of());
    }

    public Bay with(List<Block> blocks) {
      return new Bay(left, right, length, widths, blocks, bridging, crossings);
    }

    public Bay bridged(List<Bridge> bridges) {
      return new Bay(left, right, length, widths, blocking, bridges, crossings);
    }

    public Bay crossed(List<Crossing> crossed) {
      return new Bay(left, right, length, widths, blocking, bridging, crossed);
    }
  }

  /**
   * @param at its middle, from the bay's high end
   * @param bottom above the joist bottom
   */
  public record Block(String member, double at, double thickness, double bottom) {}

  /** A strut set from one joist's top to the other's bottom. */
  public record Bridge(String member, double at) {}

  public record Crossing(String element, String way, double size, double at, double across) {}
}
