package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.units.Lengths.UnitSystem;

class NetFallTest {
  private static final Pattern ADVISED = Pattern.compile("a fall of 1:(\\d+(?:\\.\\d)?)");

  private static List<Finding> at(double run) {
    return List.copyOf(new NetFall().of(CheckCases.falling(run)).findings());
  }

  /** The number is rounded to a tenth of a run; to the wrong side it would be asked for again. */
  @Test
  void whoGivesThePansTheFallThatIsAdvisedIsNotAskedAgain() {
    assertThat(at(96)).hasSize(1);
    for (Finding finding : at(96)) {
      String advice = finding.fix().orElseThrow().words().in(UnitSystem.IMPERIAL);
      Matcher run = ADVISED.matcher(advice);
      assertThat(run.find()).as(advice).isTrue();
      double advised = Double.parseDouble(run.group(1));
      assertThat(at(advised)).as(advice).isEmpty();
      assertThat(at(advised + 0.1)).as("no steeper than need be").hasSize(1);
    }
  }
}
