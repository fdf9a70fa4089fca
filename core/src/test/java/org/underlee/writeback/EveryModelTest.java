package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** What holds for models of every schema and unit, with and without a storey and an owner. */
class EveryModelTest {
  static Stream<TinyModel> models() {
    return Stream.of("IFC2X3", "IFC4", "IFC4X3_ADD2")
        .flatMap(s -> Stream.of(TinyModel.Length.values()).map(u -> TinyModel.of(s, u)))
        .flatMap(m -> Stream.of(m, m.withoutOwnerHistory(), m.withoutStorey()));
  }

  @ParameterizedTest
  @MethodSource("models")
  void aDrainedModelPassesTheCheckBeforeSaving(TinyModel model) {
    byte[] original = model.bytes();
    byte[] drained = Drained.of(model).bytes();
    BlockCheck.require(original, drained);
    assertThat(drained.length).isGreaterThan(original.length);
  }

  @ParameterizedTest
  @MethodSource("models")
  void twoRunsGiveTheSameBytes(TinyModel model) {
    assertThat(Drained.of(model).bytes()).isEqualTo(Drained.of(model).bytes());
  }

  @Test
  void aPartKeepsItsGlobalIdAcrossSchemasAndUnits() {
    assertThat(models().map(m -> Drained.of(m).globalIds()).distinct()).hasSize(1);
  }

  @ParameterizedTest
  @MethodSource("models")
  void noObjectHasTwoDefinitionsOfOneNameNorTwoTypes(TinyModel model) {
    StepFile file = WriteBackTest.drained(model);
    List<String> names = new ArrayList<>();
    for (StepInstance rel : WriteBackTest.all(file, "IFCRELDEFINESBYPROPERTIES")) {
      for (long object : rel.refs(4)) {
        names.add(object + " " + rel.follow(5).text(2));
      }
    }
    List<Long> typed = new ArrayList<>();
    for (StepInstance rel : WriteBackTest.all(file, "IFCRELDEFINESBYTYPE")) {
      LongStream.of(rel.refs(4)).forEach(typed::add);
    }
    assertThat(names).isNotEmpty().doesNotHaveDuplicates();
    assertThat(typed).hasSize(SampleField.layout().parts().size()).doesNotHaveDuplicates();
  }
}
