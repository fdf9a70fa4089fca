package org.underlee.samples.cases;

import java.util.List;

/** Cases about what holds joists, and about fields and decks. */
final class FieldCases {
  private FieldCases() {}

  static List<FramingCase> all() {
    return List.of();
  }
}
