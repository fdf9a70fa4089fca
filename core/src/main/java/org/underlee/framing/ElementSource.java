package org.underlee.framing;

import java.util.List;
import org.underlee.finding.NotMeasured;

/** Where building elements come from. The {@code ifc} package is one such source. */
public interface ElementSource {
  /** Every element that has a readable body, in the order of the file. */
  List<BuildingElement> elements();

  /** Elements with a body that could not be read. */
  List<NotMeasured> notMeasured();
}
