package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.command.Typed;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** What of our block is the same after the server has had it. */
@ExtendWith(WithServer.class)
class IdentityTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({"pine-deck, ifc4", "harbour-balcony, ifc2x3tc1"})
  void everythingSurvivesButNumbersAndMarks(String sample, String schema, TestServer server)
      throws Exception {
    new People(server.address()).project("Round " + sample, schema);
    ModelServer client = ModelServer.at(server.address(), People.ADMIN, Limits.USUAL);
    Path drained = folder.resolve("drained.ifc");
    assertThat(design(People.sample(sample), drained).code()).isZero();
    Path back = roundTrip(client, "Round " + sample, drained);
    assertThat(Files.readString(back)).doesNotContain("/* Underlee");
    assertThat(difference(back, drained)).isEmpty();

    Path again = folder.resolve("again.ifc");
    assertThat(design(back, again).code()).isZero();
    assertThat(difference(again, drained)).as("replaced, not added").isEmpty();
    Path stripped = folder.resolve("stripped.ifc");
    assertThat(Typed.run("strip", back.toString(), "--out", stripped.toString()).code()).isZero();
    assertThat(difference(stripped, People.sample(sample))).isEmpty();
  }

  private Path roundTrip(ModelServer client, String name, Path drained) throws Exception {
    Project project = client.project(name);
    Revision revision =
        client.checkIn(project, Optional.empty(), drained, "drained", Progress.NONE);
    byte[] back = client.download(client.project(name), revision, Progress.NONE);
    return Files.write(folder.resolve("back.ifc"), back);
  }

  private static Typed design(Path model, Path out) {
    return Typed.run("design", model.toString(), "--out", out.toString());
  }

  /** What is in one model more often than in the other, either way round. */
  private static List<String> difference(Path one, Path other) {
    TreeMap<String, Integer> left = contents(one);
    contents(other).forEach((told, count) -> left.merge(told, -count, Integer::sum));
    left.values().removeIf(count -> count == 0);
    return left.entrySet().stream().map(e -> e.getValue() + " " + e.getKey()).limit(6).toList();
  }

  /** How often each instance is there, told by its values with references followed two deep. */
  private static TreeMap<String, Integer> contents(Path model) {
    StepFile file = StepFile.read(model);
    TreeMap<String, Integer> all = new TreeMap<>();
    for (int i = 0; i < file.count(); i++) {
      all.merge(told(file.decode(i), 2), 1, Integer::sum);
    }
    return all;
  }

  private static String told(StepInstance instance, int depth) {
    List<String> values = new ArrayList<>();
    instance.values().forEach(v -> values.add(told(instance, v, depth)));
    instance.parts().forEach(p -> values.add(told(p, depth)));
    return instance.keyword() + values;
  }

  private static String told(StepInstance owner, StepValue value, int depth) {
    if (value instanceof StepValue.Reference r) {
      return depth == 0 ? "#" : told(owner.resolve(r.id()), depth - 1);
    } else if (value instanceof StepValue.ListOf list) {
      return list.values().stream().map(v -> told(owner, v, depth)).toList().toString();
    } else if (value instanceof StepValue.Typed typed) {
      return typed.keyword() + told(owner, typed.value(), depth);
    } else if (value instanceof StepValue.Numeral number) {
      return Double.toString(number.value());
    }
    // A reason may name an element of the designer's by its number, which is another there.
    return value.toString().replaceAll("#\\d+", "#");
  }
}
