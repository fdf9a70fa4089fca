package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.geom.Box;
import org.underlee.step.Mutation;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** A glance against a full decoding: the same box to the last bit, or no answer. */
class QuickPlacesTest {
  private static final Path SAMPLES =
      Path.of(System.getProperty("underlee.root", "..")).resolve("samples");
  private static final Path CORPUS = Path.of(System.getProperty("underlee.corpus", ""));
  private static final long LARGEST = 200 << 10;
  private static final int MUTANTS = 40;

  private int told;
  private int unsure;
  private int refused;

  @Test
  void aGlanceSaysOfEveryElementWhatDecodingSays() throws IOException {
    for (Path file : models(SAMPLES.resolve("hard-cases"), Long.MAX_VALUE)) {
      compare(Files.readAllBytes(file));
    }
    assertThat(told).isGreaterThan(9 * unsure);
  }

  @Test
  void ofDamagedModelsTooBySeed() throws IOException {
    for (Path file : models(SAMPLES.resolve("hard-cases"), LARGEST)) {
      byte[] model = Files.readAllBytes(file);
      for (long seed = 0; seed < MUTANTS; seed++) {
        compare(Mutation.mutant(model, seed));
      }
    }
    assertThat(told).isPositive();
  }

  @Test
  void andOfEveryPublicModel() throws IOException {
    assumeTrue(
        !CORPUS.toString().isEmpty() && Files.isDirectory(CORPUS), "skipped: no public models");
    for (Path file : models(CORPUS, Long.MAX_VALUE)) {
      compare(Files.readAllBytes(file));
    }
    System.out.println("at a glance: " + told + ", unsure: " + unsure + ", refused: " + refused);
    assertThat(told).isPositive();
  }

  private static Iterable<Path> models(Path folder, long largest) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(f -> f.toString().endsWith(".ifc") && f.toFile().length() < largest)
          .sorted()
          .toList();
    }
  }

  private void compare(byte[] model) {
    try {
      StepFile step = StepFile.of(model, "model.ifc");
      IfcModel opened = IfcModel.of(step);
      IfcUnits units = opened.units();
      double metres = units.metresPerLengthUnit();
      Relations relations = new Relations(step);
      Placements placements = new Placements(step, metres);
      Bodies bodies = new Bodies(step, units, relations, placements);
      SpatialTree tree = new SpatialTree(step, relations, placements, metres);
      Elements elements =
          new Elements(step, opened.schema(), relations, tree, () -> bodies, new HashMap<>());
      for (int index : elements.indices(c -> true)) {
        compare(step, index, bodies);
      }
    } catch (InputException | IllegalArgumentException | ArithmeticException e) {
      refused++;
    }
  }

  private void compare(StepFile step, int index, Bodies bodies) {
    QuickPlaces.Seen seen = bodies.glance(index);
    if (!seen.tells()) {
      unsure++;
      return;
    }
    told++;
    StepInstance product = decoded(step, index);
    assertThat(seen.body().isEmpty()).as("%s", product).isEqualTo(product.isOmitted(6));
    if (seen.body().isPresent()) {
      Optional<Box> slow = bodies.reach(product);
      assertThat(seen.body()).as("%s", product).isEqualTo(slow);
    }
  }

  private static StepInstance decoded(StepFile step, int index) {
    try {
      return step.decode(index);
    } catch (InputException e) {
      throw new AssertionError("a glance takes what decoding refuses", e);
    }
  }
}
