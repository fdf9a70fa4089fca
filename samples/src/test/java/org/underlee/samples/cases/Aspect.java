package org.underlee.samples.cases;

import java.util.Locale;

/** What of a survey is scored. */
enum Aspect {
  DECKS,
  FIELDS,
  SUPPORTS,
  LINES,
  PLIES,
  ROLES,
  BAYS,
  BLOCKING,
  CROSSINGS;

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
