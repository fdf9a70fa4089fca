package org.underlee.samples;

import java.util.List;

/**
 * What is in a sample, in the shape of {@code survey --json}; known from the description, never
 * measured. Members and elements are GlobalIds, lengths millimetres.
 */
public record GroundTruth(List<Deck> decks, List<MemberRole> roles) {

  /**
   * One walking level.
   *
   * @param topMm height of the joist tops in the world
   */
  public record Deck(String id, String storey, double topMm, List<Field> fields) {}

  /**
   * Parallel joists between the same supports; its bays are in order along u.
   *
   * @param fallDirection in the world, horizontal, from the ledger to the rim
   */
  public record Field(
      String id,
      List<Double> fallDirection,
      List<JoistLine> joistLines,
      List<String> ledgers,
      List<String> rims,
      List<String> beams,
      List<String> posts,
      List<String> headers,
      List<String> trimmers,
      List<Bay> bays) {}

  /**
   * One joist, or plies side by side.
   *
   * @param members the plies in order along u
   * @param widthMm over all plies, square to the joist
   */
  public record JoistLine(
      String id, List<String> members, int plies, double widthMm, double depthMm) {}

  /** Clear widths are along u, from joist face to joist face. */
  public record Bay(
      String id,
      List<String> between,
      double clearWidthHighMm,
      double clearWidthLowMm,
      double lengthMm,
      List<Blocking> blocking,
      List<Crossing> crossings) {}

  /**
   * A block between the two lines of a bay.
   *
   * @param atMm its centre, from the high end
   */
  public record Blocking(
      String member, double atMm, double thicknessMm, double bottomAboveJoistBottomMm) {}

  /**
   * A service in a bay.
   *
   * @param way {@code through}, {@code along} or {@code across}
   * @param atMm centre of the part inside the bay, from the high end
   * @param acrossMm centre of the part inside the bay, from the face of the bay's first line at
   *     that station
   */
  public record Crossing(
      String element, String ifcClass, String way, double sizeMm, double atMm, double acrossMm) {}

  public record MemberRole(String member, String role) {}
}
