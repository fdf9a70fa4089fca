package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** What is written, judged by the EXPRESS schemas of the corpus; and the judge, by faults. */
class SchemaTest {
  static Stream<TinyModel> models() {
    return WriteBackTest.models();
  }

  static ExpressSchema schema(String name) {
    String file =
        switch (name) {
          case "IFC2X3" -> "IFC2X3_TC1.exp";
          case "IFC4" -> "IFC4_ADD2_TC1.exp";
          default -> "IFC4X3_ADD2.exp";
        };
    Path path =
        Path.of(System.getProperty("underlee.corpus", "")).resolve("schemas/express").resolve(file);
    assumeTrue(Files.isRegularFile(path), "skipped: no EXPRESS schema " + file + " in the corpus");
    return ExpressSchema.read(path);
  }

  @ParameterizedTest
  @MethodSource("models")
  void everyInstanceFitsTheSchema(TinyModel model) {
    long theirs = StepFile.of(model.bytes(), "deck.ifc").highestId();
    StepFile file = WriteBackTest.drained(model);
    assertThat(ExpressJudge.faults(schema(model.schema()), file, theirs)).isEmpty();
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

  @Test
  void theJudgeSeesWhatIsWrong() {
    String text =
        new String(
            Drained.of(TinyModel.of("IFC4", TinyModel.Length.METRE)).bytes(),
            StandardCharsets.UTF_8);
    ExpressSchema schema = schema("IFC4");
    Map<String, String> faults =
        Map.of(
            ".SHEET.", ".SHEETS.",
            ",.SITE.,.ACC", ",.ACC",
            "IFCBOOLEAN(.T.)", ".T.",
            "IFCRATIOMEASURE(0.", "IFCRATIOMEASURE('0.'),(0.",
            "'Body','SweptSolid',(#", "'Body','SweptSolid',(),(#");
    faults.forEach(
        (right, wrong) -> {
          byte[] bytes =
              text.replaceFirst(Pattern.quote(right), wrong).getBytes(StandardCharsets.UTF_8);
          assertThat(ExpressJudge.faults(schema, StepFile.of(bytes, "wrong")))
              .as(wrong)
              .isNotEmpty();
        });
  }
}
