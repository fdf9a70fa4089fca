package org.underlee.samples.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.samples.CaseWriter;
import org.underlee.samples.Mix;
import org.underlee.samples.PartsFit;

/**
 * However a deck is framed, no part of ours stands in its framing, and each bay is served or named
 * in a finding.
 */
class CasesFitTest {
  private static final int SEEDS = Integer.getInteger("underlee.cases.designs", 3);

  static Stream<FramingCase> cases() {
    return FramingCasesTest.cases().stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void noPartStandsInTheFraming(FramingCase framing) {
    for (int seed = 1; seed <= SEEDS; seed++) {
      Design design = design(framing, seed);
      assertThat(PartsFit.meetings(design)).as("%s, seed %s", framing.name(), seed).isEmpty();
      assertThat(PartsFit.forgotten(design)).as("%s, seed %s", framing.name(), seed).isEmpty();
    }
  }

  private static Design design(FramingCase framing, int seed) {
    byte[] file = CaseWriter.write(framing.name(), framing.make(new Random(seed)), Mix.PLAIN);
    return DeckRun.design(DeckRun.survey(file, "case.ifc"), Scope.OUTSIDE, KitReader.builtIn());
  }
}
