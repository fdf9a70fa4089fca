package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.run.batch.ModelBatch;
import org.underlee.run.batch.ModelJob;
import org.underlee.run.batch.ModelResult;

class ManyModelsTest {
  private static final int MODELS = 6;

  @TempDir Path folder;

  @Test
  void eachModelIsAnotherAndASurveyFindsAsManyBaysInItAsWereDrawn() throws IOException {
    ManyModels.write(folder, MODELS);
    ModelBatch batch = new ModelBatch(new ModelJob.SurveyEach(), 2, (result, done, all, old) -> {});
    List<ModelResult> results = batch.run(List.of(folder), List.of(), Optional.empty());
    assertThat(results).hasSize(MODELS).allMatch(ModelResult::isDone);
    assertThat(results.stream().map(ModelResult::sha256)).doesNotHaveDuplicates();
    for (int i = 0; i < MODELS; i++) {
      assertThat(results.get(i).file()).endsWith("deck-" + i + ".ifc");
      assertThat(results.get(i).counts().bays())
          .isEqualTo(SampleDecks.random(i).decks().get(0).get(0).lines().size() - 1);
    }
  }
}
