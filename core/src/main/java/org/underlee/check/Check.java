package org.underlee.check;

import java.util.List;
import org.underlee.finding.Rule;

/**
 * One thing that a careful practitioner looks at in a laid-out assembly. Further checks can be put
 * beside the program's own: a jar with a {@code META-INF/services/org.underlee.check.Check}. They
 * are asked at the same time, so a check keeps nothing from one input to the next.
 */
public interface Check {
  /** The rules that its findings may be instances of. */
  List<Rule> rules();

  Answer of(CheckInput input);
}
