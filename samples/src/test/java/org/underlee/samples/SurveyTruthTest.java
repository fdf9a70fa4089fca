package org.underlee.samples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.report.SurveyJson;
import org.underlee.run.DeckRun;

/** What the program finds in a sample is what the sample's generator put there, however written. */
class SurveyTruthTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @ParameterizedTest(name = "{0} as {1}")
  @MethodSource("mixes")
  void theSurveyEqualsTheGroundTruth(SampleDeck sample, Mix mix) throws Exception {
    JsonNode truth = JSON.readTree(TruthJson.of(sample.truth(mix), sample, mix));
    String survey =
        SurveyJson.write(DeckRun.survey(IfcEmitter.emit(sample, mix), sample.name() + ".ifc"));
    SurveyAgainstTruth.compare(truth, JSON.readTree(survey));
  }

  /** Each sample as committed, in the whole grid and in random mixes; and decks made up by seed. */
  static Stream<Arguments> mixes() {
    List<Arguments> all = new ArrayList<>();
    for (SampleDeck sample : SampleDecks.all()) {
      all.add(Arguments.of(sample, sample.ownMix()));
      Mix.grid().forEach(m -> all.add(Arguments.of(sample, m)));
      for (long seed = 1; seed <= 20; seed++) {
        all.add(Arguments.of(sample, Mix.random(seed)));
      }
    }
    HardCases.all().forEach(h -> all.add(Arguments.of(h.deck(), h.deck().ownMix())));
    for (long seed = 1; seed <= 60; seed++) {
      all.add(Arguments.of(SampleDecks.random(seed), Mix.random(1000 + seed)));
    }
    for (long seed = 1; seed <= 10; seed++) {
      all.add(Arguments.of(SampleDecks.twoSpans(2400, 1800, 7), Mix.random(2000 + seed)));
    }
    return all.stream();
  }
}
