package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Properties and quantities under the standard's names, judged by its definitions. */
class StandardSetsTest {
  private static final Pattern MEMBER = Pattern.compile("(?s)<(PropertyDef|QtoDef)\\b.*?</\\1>");
  private static final Pattern NAME = Pattern.compile("<Name>(.*?)</Name>");
  private static final Pattern DATA_TYPE = Pattern.compile("<DataType type=\"(\\w+)\\s*\"");

  @ParameterizedTest
  @CsvSource({"IFC2X3, IFC2X3", "IFC4, IFC4_ADD2_TC1", "IFC4X3_ADD2, IFC4X3_RC4"})
  void everyPropertyUnderAStandardNameIsInTheStandardsDefinition(String schema, String folder)
      throws IOException {
    StepFile file = WriteBackTest.drained(TinyModel.of(schema, TinyModel.Length.METRE));
    Set<String> seen = new HashSet<>();
    for (StepInstance set : WriteBackTest.all(file, "IFCPROPERTYSET")) {
      if (set.text(2).startsWith("Pset_")) {
        Set<String> known = definition(folder, set.text(2));
        for (StepInstance property : set.followAll(4)) {
          assertThat(known).as("%s", set).contains(described(property));
        }
        seen.add(set.text(2));
      }
    }
    assertThat(seen).contains("Pset_PlateCommon", "Pset_MemberCommon", "Pset_CoveringCommon");
  }

  @ParameterizedTest
  @CsvSource({"IFC4, IFC4_ADD2_TC1", "IFC4X3_ADD2, IFC4X3_RC4"})
  void everyQuantityUnderAStandardNameIsInTheStandardsDefinition(String schema, String folder)
      throws IOException {
    StepFile file = WriteBackTest.drained(TinyModel.of(schema, TinyModel.Length.METRE));
    Set<String> seen = new HashSet<>();
    for (StepInstance set : WriteBackTest.all(file, "IFCELEMENTQUANTITY")) {
      if (set.text(2).startsWith("Qto_")) {
        Set<String> known = definition(folder, set.text(2));
        for (StepInstance quantity : set.followAll(5)) {
          assertThat(known).as("%s", set).contains(quantity.text(0) + " ");
        }
        assertThat(set.text(4)).isEqualTo("BaseQuantities");
        seen.add(set.text(2));
      }
    }
    assertThat(seen).hasSize(5);
  }

  /** Name and data type; for a choice, the name alone, as its definition has no data type. */
  private static String described(StepInstance property) {
    boolean single = property.value(2) instanceof StepValue.Typed;
    return property.text(0) + " " + (single ? ((StepValue.Typed) property.value(2)).keyword() : "");
  }

  private static Set<String> definition(String folder, String set) throws IOException {
    Path root =
        Path.of(System.getProperty("underlee.corpus", "")).resolve("schemas/psd").resolve(folder);
    assumeTrue(Files.isDirectory(root), "skipped: no property set definitions in the corpus");
    Path file = root.resolve(set + ".xml");
    assertThat(file).as("a definition of %s", set).exists();
    Matcher members = MEMBER.matcher(Files.readString(file, StandardCharsets.ISO_8859_1));
    Set<String> known = new HashSet<>();
    while (members.find()) {
      Matcher name = NAME.matcher(members.group());
      Matcher type = DATA_TYPE.matcher(members.group());
      assertThat(name.find()).isTrue();
      String data = type.find() ? type.group(1).toUpperCase(java.util.Locale.ROOT) : "";
      known.add(name.group(1) + " " + data);
    }
    return known;
  }
}
