package org.underlee.samples;

import java.util.List;
import java.util.Map;

/**
 * A field as it was described: {@code frame} has u, v and up as its axes and its origin on the face
 * of the ledger at height zero of the sample.
 *
 * @param run clear, from the face at the high end to the face at the low end
 * @param supports keys of the members by role: ledgers, rims, beams, posts
 */
record FieldPlan(
    String key,
    Frame frame,
    double run,
    double joistTop,
    List<JoistLine> lines,
    Map<Role, List<String>> supports,
    List<Block> blocks,
    List<Service> services) {

  /**
   * A block between two joists.
   *
   * @param bay index of the bay, from 0
   */
  record Block(String key, int bay, double at, double thickness, double bottomAboveJoistBottom) {}

  /** A pipe in one bay; {@code across} is from the face of the bay's first line. */
  record Service(String key, int bay, String way, double size, double at, double across) {}
}
