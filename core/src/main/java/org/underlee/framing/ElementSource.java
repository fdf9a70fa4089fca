package org.underlee.framing;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.NotMeasured;

/** Where building elements come from. The {@code ifc} package is one such source. */
public interface ElementSource {
  /** Every element that has a readable body, in the order of the file. */
  List<BuildingElement> elements();

  /** Elements with a body that could not be read. */
  List<NotMeasured> notMeasured();

  /**
   * Spaces with a body: rooms, and what is marked off outside. {@code INTERNAL} or {@code EXTERNAL}
   * is their predefined type, where the author says so.
   */
  default List<BuildingElement> spaces() {
    return List.of();
  }

  /** What the author's property sets say under {@code IsExternal}. */
  default Optional<Boolean> isExternal(long instance) {
    return Optional.empty();
  }
}
