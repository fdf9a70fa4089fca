package org.underlee.check;

import org.underlee.layout.OwnTables;

/** The user's own table of round downspouts, as a file would hold it. */
final class OwnTablesText {
  private OwnTablesText() {}

  /** One entry: inches and gallons a minute. */
  static OwnTables leader(double inches, double gpm) {
    return new OwnTables(
        "mine.json",
        """
        {"schema": "underlee/own-capacities/1", "shownOnly": [], "tables": [
          {"id": "mine", "use": "round downspout", "code": "Our county", "edition": "2024",
           "table": "Table 7", "unit": "gpm", "source": "the printed code",
           "rows": [{"sizeInches": %s, "fallInchesPerFoot": 0, "capacity": %s}]}]}
        """
            .formatted(inches, gpm));
  }
}
