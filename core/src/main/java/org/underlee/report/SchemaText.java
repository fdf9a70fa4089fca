package org.underlee.report;

import org.underlee.run.SchemaChecked;

/** Writes what a check by the standard's schema found for people. */
public final class SchemaText {
  private SchemaText() {}

  public static String write(SchemaChecked checked) {
    int points = checked.report().findings().size();
    String schema = checked.report().schema();
    String outcome =
        points == 0
            ? "Nothing breaks the schema " + schema + "."
            : points + (points == 1 ? " finding" : " findings") + " by the schema " + schema + ".";
    return outcome
        + "\n"
        + checked.report().instances()
        + (checked.onlyOurs() ? " instances of ours" : " instances")
        + " checked; rules of the schema executed "
        + checked.report().executed()
        + " times.\n";
  }
}
