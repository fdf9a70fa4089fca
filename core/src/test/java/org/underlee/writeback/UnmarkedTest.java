package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnmarkedTest {
  private static final Pattern MARK =
      Pattern.compile("/\\* Underlee (begins|ends)[^*]*\\*/\\r?\\n");
  private static final Pattern NUMBER = Pattern.compile("#(\\d+)");

  private static String drained(String original) {
    return text(Drained.of(bytes(original), List.of(SampleField.layout())).bytes());
  }

  private static String original(String schema) {
    return text(TinyModel.of(schema, TinyModel.Length.METRE).bytes());
  }

  private static String withoutMarks(String drained) {
    return MARK.matcher(drained).replaceAll("");
  }

  private static String stripped(String drained) {
    Strip.Stripped stripped = Strip.original(bytes(drained)).orElseThrow();
    assertThat(stripped.exact()).isFalse();
    return text(stripped.bytes());
  }

  @ParameterizedTest
  @ValueSource(strings = {"IFC2X3", "IFC4", "IFC4X3_ADD2"})
  void withoutMarksExactlyOurInstancesAreTakenOut(String schema) {
    String original = original(schema);
    String drained = withoutMarks(drained(original));
    assertThat(drained).doesNotContain("/* Underlee");
    assertThat(stripped(drained)).isEqualTo(original);
  }

  @ParameterizedTest
  @ValueSource(strings = {"IFC2X3", "IFC4", "IFC4X3_ADD2"})
  void otherNumbersAndAnotherOrderMakeNoDifference(String schema) {
    String original = original(schema);
    String drained = withoutMarks(drained(original));
    String told = stripped(shuffled(renumbered(drained)));
    assertThat(instances(told))
        .containsExactlyInAnyOrderElementsOf(instances(renumbered(original)));
  }

  @Test
  void linesThatEndAsOnWindowsGoWithTheirEnds() {
    String original = original("IFC4").replace("\n", "\r\n");
    assertThat(stripped(withoutMarks(drained(original)))).isEqualTo(original);
  }

  @Test
  void instancesWithNoLineBetweenThemLeaveNothingBehind() {
    String original = original("IFC4");
    String run = withoutMarks(drained(original)).replace(";\n", ";");
    assertThat(stripped(run)).isEqualTo(original.replace(";\n", ";"));
  }

  /** Layers refer to shapes, and nothing refers to them. */
  @Test
  void aLayerWithOurShapesGoesAndTheDesignersStays() {
    String original =
        original("IFC4")
            .replace("#30=", "#29=IFCPRESENTATIONLAYERASSIGNMENT('Theirs',$,(#23),$);\n#30=");
    String drained = withoutMarks(drained(original));
    Matcher body = Pattern.compile("#(\\d+)=IFCSHAPEREPRESENTATION").matcher(drained);
    assertThat(body.find()).isTrue();
    String layer = "#99999=IFCPRESENTATIONLAYERASSIGNMENT('Ours',$,(#" + body.group(1) + "),$);\n";
    int end = drained.lastIndexOf("ENDSEC;");
    String resaved = drained.substring(0, end) + layer + drained.substring(end);
    assertThat(stripped(resaved)).isEqualTo(original);
  }

  @Test
  void aModelWithoutAnAssemblyHasNothingToTakeOut() {
    assertThat(Strip.original(bytes(original("IFC4")))).isEmpty();
  }

  @Test
  void onlyVersionFiveIsLikeOurs() {
    Random random = new Random(5);
    for (int i = 0; i < 1000; i++) {
      UUID drawn = new UUID(random.nextLong(), random.nextLong());
      boolean five = drawn.version() == 5 && drawn.variant() == 2;
      assertThat(GlobalIds.isLikeOurs(GlobalIds.compressed(drawn))).isEqualTo(five);
      assertThat(GlobalIds.isLikeOurs(new GlobalIds("p").of("f", "pan", "" + i))).isTrue();
    }
  }

  private static String renumbered(String model) {
    return NUMBER.matcher(model).replaceAll(m -> "#" + (7 * Long.parseLong(m.group(1)) + 100));
  }

  private static String shuffled(String model) {
    List<String> instances = instances(model);
    String head = model.substring(0, model.indexOf("DATA;") + "DATA;\n".length());
    Collections.shuffle(instances, new Random(3));
    return head + String.join("\n", instances) + "\nENDSEC;\nEND-ISO-10303-21;\n";
  }

  private static List<String> instances(String model) {
    return Arrays.stream(model.split("\n"))
        .filter(l -> l.startsWith("#"))
        .collect(Collectors.toList());
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
