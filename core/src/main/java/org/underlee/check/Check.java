package org.underlee.check;

import java.util.List;
import org.underlee.finding.Rule;

/**
 * One thing that a careful practitioner looks at in a laid-out assembly. Further checks can be put
 * beside the program's own: a jar with a {@code META-INF/services/org.underlee.check.Check}.
 */
public interface Check {
  /** The rules that its findings may be instances of. */
  List<Rule> rules();

  Answer of(CheckInput input);
}
