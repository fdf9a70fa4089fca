package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.Finding;
import org.underlee.schema.Schema;
import org.underlee.schema.SchemaCheck;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** What is written, checked by the EXPRESS schemas of the corpus. */
class SchemaTest {
  static Stream<TinyModel> models() {
    return EveryModelTest.models();
  }

  @ParameterizedTest
  @MethodSource("models")
  void everyInstanceFitsTheSchema(TinyModel model) {
    long theirs = StepFile.of(model.bytes(), "deck.ifc").highestId();
    StepFile file = WriteBackTest.drained(model);
    assertThat(findings(StandardSchemas.of(model.schema()), file, theirs)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("models")
  void everyResourceInstanceIsUsedByAnother(TinyModel model) {
    long theirs = StepFile.of(model.bytes(), "deck.ifc").highestId();
    StepFile file = WriteBackTest.drained(model);
    Set<Long> used = new HashSet<>();
    Set<Long> resources = new HashSet<>();
    for (int i = 0; i < file.count(); i++) {
      StepInstance instance = file.decode(i);
      instance.values().forEach(v -> collect(v, used));
      boolean root =
          instance.value(0) instanceof StepValue.Text t && t.value().matches("[0-3]\\S{21}");
      // A style points at its item, not the item at its style.
      if (!root && !instance.keyword().equals("IFCSTYLEDITEM") && instance.id() > theirs) {
        resources.add(instance.id());
      }
    }
    assertThat(used).containsAll(resources);
  }

  private static void collect(StepValue value, Set<Long> into) {
    if (value instanceof StepValue.Reference r) {
      into.add(r.id());
    } else if (value instanceof StepValue.ListOf list) {
      list.values().forEach(v -> collect(v, into));
    }
  }

  /** What is wrong with the instances with higher numbers than {@code above}. */
  static List<Finding> findings(Schema schema, StepFile file, long above) {
    return SchemaCheck.of(schema, file, i -> file.id(i) > above).findings();
  }
}
