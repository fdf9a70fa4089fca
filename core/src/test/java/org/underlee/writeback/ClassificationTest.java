package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.ids.IdsCheck;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Codes for parts, where the designer's project is classified. */
class ClassificationTest {
  /** A model whose building has a code of a system; {@code used} or only listed. */
  private static byte[] classified(String schema, String system, boolean used) {
    String model =
        new String(TinyModel.of(schema, TinyModel.Length.METRE).bytes(), StandardCharsets.UTF_8);
    String edition = schema.equals("IFC2X3") ? "'2020'" : "$";
    String more = schema.equals("IFC2X3") ? "" : ",$,$,$";
    String tail = schema.equals("IFC2X3") ? "" : ",$,$";
    String lines =
        "#90=IFCCLASSIFICATION('its publisher',"
            + edition
            + ",$,'"
            + system
            + "'"
            + more
            + ");\n"
            + (used
                ? "#91=IFCCLASSIFICATIONREFERENCE($,'01','House',#90"
                    + tail
                    + ");\n"
                    + "#92=IFCRELASSOCIATESCLASSIFICATION('0class0000000000000000',#6,$,$,(#30),#91);\n"
                : "");
    int end = model.lastIndexOf("ENDSEC;");
    return (model.substring(0, end) + lines + model.substring(end))
        .getBytes(StandardCharsets.UTF_8);
  }

  private static String drained(byte[] model) {
    byte[] bytes = Drained.of(model, List.of(SampleField.layout())).bytes();
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private static String block(String drained) {
    return drained.substring(drained.indexOf("/* Underlee begins"));
  }

  @ParameterizedTest
  @CsvSource({
    "IFC2X3, MasterFormat, 07 71 23",
    "IFC4, MasterFormat 2020, 07 71 23",
    "IFC4X3_ADD2, MASTERFORMAT (CSI), 07 71 23",
    "IFC4, Uniformat II, D2040"
  })
  void partsOfTheDrainRunGetACodeBelowTheDesignersSystem(
      String schema, String system, String code) {
    byte[] original = classified(schema, system, true);
    String drained = drained(original);
    assertThat(block(drained))
        .containsPattern(
            "IFCCLASSIFICATIONREFERENCE\\(\\$,'" + Pattern.quote(code) + "','[^']+',#90");
    StepFile file = StepFile.of(drained.getBytes(StandardCharsets.UTF_8), "deck.ifc");
    long theirs = StepFile.of(original, "deck.ifc").highestId();
    assertThat(SchemaTest.findings(StandardSchemas.of(schema), file, theirs)).isEmpty();
    assertThat(codeOf("IFCPIPEFITTING", system, code, schema, file)).isTrue();
    assertThat(codeOf("IFCPIPEFITTING", system, "another", schema, file)).isFalse();
  }

  /** By a reader of another standard: every such element has the code. */
  private static boolean codeOf(
      String entity, String system, String code, String schema, StepFile file) {
    String name = schema.equals("IFC2X3") ? "IFCFLOWFITTING" : entity;
    String ids =
        "<ids xmlns='http://standards.buildingsmart.org/IDS'><info><title>t</title></info>"
            + "<specifications><specification name='s' ifcVersion='IFC2X3 IFC4 IFC4X3_ADD2'>"
            + "<applicability minOccurs='1' maxOccurs='unbounded'><entity><name><simpleValue>"
            + name
            + "</simpleValue></name></entity></applicability><requirements><classification>"
            + "<value><simpleValue>"
            + code
            + "</simpleValue></value><system><simpleValue>"
            + system
            + "</simpleValue></system></classification></requirements></specification>"
            + "</specifications></ids>";
    return IdsCheck.of(
            ids.getBytes(StandardCharsets.UTF_8), "code.ids", StandardSchemas.of(schema), file)
        .passed();
  }

  @ParameterizedTest
  @ValueSource(strings = {"Our own numbers", "UniFormat"})
  void aSystemWhoseCodesAreNotKnownIsLeftAlone(String system) {
    assertThat(block(drained(classified("IFC4", system, true)))).doesNotContain("CLASSIFICATION");
  }

  /** Gutter, end cap, outlet, downspout, elbow and hanger; no sheet, tape or screw. */
  @Test
  void onlyPartsOfTheDrainRunGetTheCode() {
    StepFile file =
        StepFile.of(
            drained(classified("IFC4", "MasterFormat", true)).getBytes(StandardCharsets.UTF_8),
            "deck.ifc");
    assertThat(
            WriteBackTest.all(file, "IFCRELASSOCIATESCLASSIFICATION").stream()
                .skip(1)
                .flatMap(r -> r.followAll(4).stream())
                .map(StepInstance::keyword))
        .hasSize(6)
        .containsOnly("IFCPIPESEGMENT", "IFCPIPEFITTING", "IFCDISCRETEACCESSORY");
  }

  /** Related to the system itself, without a reference below it. */
  @Test
  void aSystemThatAnElementIsRelatedToIsInUse() {
    String direct =
        new String(classified("IFC4", "MasterFormat", true), StandardCharsets.UTF_8)
            .replaceFirst("#91=[^\n]*\n", "")
            .replace("(#30),#91)", "(#30),#90)");
    assertThat(block(drained(direct.getBytes(StandardCharsets.UTF_8))))
        .contains("IFCCLASSIFICATIONREFERENCE");
  }

  /** Else stripping by references would take it for ours. */
  @Test
  void aSystemThatNothingRefersToIsNotInUse() {
    assertThat(block(drained(classified("IFC4", "MasterFormat", false))))
        .doesNotContain("CLASSIFICATION");
  }

  @ParameterizedTest
  @ValueSource(strings = {"IFC2X3", "IFC4", "IFC4X3_ADD2"})
  void theDesignersSystemStaysWhenOurPartsAreTakenOutWithoutMarks(String schema) {
    byte[] original = classified(schema, "MasterFormat", true);
    String drained = drained(original);
    assertThat(Strip.original(drained.getBytes(StandardCharsets.UTF_8)).orElseThrow().bytes())
        .isEqualTo(original);
    String unmarked = drained.replaceAll("/\\* Underlee (begins|ends)[^*]*\\*/\\r?\\n", "");
    assertThat(Strip.original(unmarked.getBytes(StandardCharsets.UTF_8)).orElseThrow().bytes())
        .isEqualTo(original);
  }
}
