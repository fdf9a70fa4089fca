package org.underlee.samples.cases;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.report.SurveyJson;
import org.underlee.run.DeckRun;
import org.underlee.samples.CaseWriter;
import org.underlee.samples.Mix;

/**
 * Each way of framing, made at random by seed and written in any schema, unit and representation,
 * anywhere within 10,000 km of the origin, without a name or a type: the survey finds what was
 * made. {@code -Dunderlee.cases.seeds=2000} runs so many in all, {@code
 * -Dunderlee.cases.only=SingleJoists} the cases that the pattern names; the table is saved as
 * {@code target/framing-cases.md}.
 */
class FramingCasesTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Seeds of every case in the bounded run of each build. */
  private static final int BOUNDED = 12;

  private static final ScoreTable TABLE = new ScoreTable();

  static List<FramingCase> cases() {
    String only = System.getProperty("underlee.cases.only", "");
    return Stream.of(LineCases.all(), FieldCases.all())
        .flatMap(List::stream)
        .filter(c -> c.getClass().getSimpleName().matches(only.isEmpty() ? ".*" : only))
        .toList();
  }

  static Stream<Arguments> casesAndSeeds() {
    int all = Integer.getInteger("underlee.cases.seeds", BOUNDED * cases().size());
    int each = (all + cases().size() - 1) / cases().size();
    return cases().stream().map(c -> Arguments.of(c, each));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("casesAndSeeds")
  void theSurveyFindsWhatWasFramed(FramingCase framing, int seeds) throws Exception {
    List<String> faults = new ArrayList<>();
    for (int seed = 1; seed <= seeds; seed++) {
      Map<Aspect, String> wrong = wrong(framing, seed);
      TABLE.add(framing.name(), wrong.keySet());
      if (!wrong.isEmpty()) {
        faults.add("seed " + seed + " as " + CaseMix.of(seed) + "\n  " + wrong);
      }
    }
    assertThat(faults).as(framing.name()).isEmpty();
  }

  /** A score that cannot fail would prove nothing: each piece that is left out is noticed. */
  @Test
  void aPieceThatIsNotInTheFileIsScoredAsAFault() throws Exception {
    FramingCase framing = new BlockedBays();
    FramingCase.Model model = framing.make(new Random(5));
    for (int i = 0; i < model.pieces().size(); i++) {
      if (!model.pieces().get(i).role().equals("none")) {
        List<Piece> fewer = new ArrayList<>(model.pieces());
        fewer.remove(i);
        FramingCase.Model less = new FramingCase.Model(model.levels(), fewer, model.truth());
        assertThat(wrong(framing, model, less, Mix.PLAIN))
            .as("without %s", model.pieces().get(i).key())
            .isNotEmpty();
      }
    }
  }

  private static Map<Aspect, String> wrong(FramingCase framing, int seed) throws Exception {
    FramingCase.Model model = framing.make(new Random(seed));
    return wrong(framing, model, model, CaseMix.of(seed));
  }

  private static Map<Aspect, String> wrong(
      FramingCase framing, FramingCase.Model truth, FramingCase.Model written, Mix mix)
      throws Exception {
    byte[] file = CaseWriter.write(framing.name(), written, mix);
    String survey = SurveyJson.write(DeckRun.survey(file, "case.ifc"));
    return Score.of(truth, mix, framing.name(), JSON.readTree(survey));
  }

  @AfterAll
  static void saveTheTable() throws Exception {
    Files.writeString(Path.of("target", "framing-cases.md"), TABLE.toString());
  }
}
