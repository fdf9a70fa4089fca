package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import org.underlee.finding.Rule;
import org.underlee.finding.StopSign;

/** All checks, the program's own and those that stand beside it. */
public final class Checks {
  private Checks() {}

  /** In the order in which they are registered. */
  public static List<Check> all() {
    List<Check> checks = new ArrayList<>();
    ServiceLoader.load(Check.class, Checks.class.getClassLoader()).forEach(checks::add);
    return List.copyOf(checks);
  }

  public static List<Rule> rules() {
    return all().stream().flatMap(c -> c.rules().stream()).toList();
  }

  /** What all checks together find and ask, in the order in which they are registered. */
  public static Answer of(CheckInput input) {
    StopSign stop = StopSign.here();
    return all().parallelStream()
        .map(
            check -> {
              stop.obey();
              return check.of(input);
            })
        .reduce(new Answer(List.of(), List.of()), Answer::and);
  }
}
