package org.underlee.report;

import java.util.LinkedHashMap;
import java.util.Map;

/** How each quantity of a takeoff is measured, in words that go with the figures. */
final class TakeoffRules {
  /** By the name of the quantity. */
  static final Map<String, String> ALL = all();

  private TakeoffRules() {}

  private static Map<String, String> all() {
    Map<String, String> rules = new LinkedHashMap<>();
    rules.put("net", "run covered: the length fitted, less what lies over the next piece");
    rules.put("folds", "bent up or down at the ends, and cut with the piece");
    rules.put("laps", "the kit's lap, once for each piece that lies over another");
    rules.put("gross", "net, folds and laps: what is cut; the quantity of a line in metres");
    rules.put("bought", "stock lengths of the cutting plan, without spares");
    rules.put("kept", "offcuts at least as long as the kit keeps");
    rules.put(
        "beside",
        "ripped from the width beside a longer piece: it takes no length of the stock of its own");
    rules.put(
        "waste", "taken and beside, less gross and kept: saw cuts, trimmed ends and short offcuts");
    rules.put("piece", "whole parts; fasteners by their number");
    rules.put("spare", "the kit's share of the pieces, rounded up; lengths as long as the longest");
    return java.util.Collections.unmodifiableMap(rules);
  }
}
