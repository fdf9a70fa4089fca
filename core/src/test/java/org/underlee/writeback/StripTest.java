package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.InputException;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.step.ByteRange;
import org.underlee.step.Sha256;
import org.underlee.step.StepFile;
import org.underlee.units.Words;

class StripTest {
  private static final TinyModel MODEL = TinyModel.of("IFC4", TinyModel.Length.METRE);

  /** Designer's files in many spellings. */
  static Stream<byte[]> originals() {
    String text = new String(MODEL.bytes(), StandardCharsets.UTF_8);
    Charset latin = StandardCharsets.ISO_8859_1;
    byte[] marked = ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
    return Stream.of(
        MODEL.bytes(),
        MODEL.withLineEnd("\r\n").bytes(),
        MODEL.withLineEnd("\r").bytes(),
        MODEL.withLineEnd(" ").bytes(),
        MODEL.bytes(latin),
        marked,
        // ENDSEC on the line of the last instance, with and without a space; indented; no trailer
        text.replace(";\nENDSEC;\nEND", ";ENDSEC;\nEND").getBytes(latin),
        text.replace(";\nENDSEC;\nEND", "; ENDSEC;\r\nEND").getBytes(latin),
        text.replace(";\nENDSEC;\nEND", ";\n\t ENDSEC; END").getBytes(latin),
        text.replace("\nENDSEC;\nEND-ISO-10303-21;\n", "\nENDSEC;").getBytes(latin),
        text.replace("'Deck'", "'/* Underlee begins: */ ''/* Underlee ends */'").getBytes(latin),
        text.replace("DATA;\n", "DATA;\n/* it's 'Underlee begins' */\n").getBytes(latin));
  }

  private static byte[] drain(byte[] original) {
    return Drained.of(original, List.of(SampleField.layout())).bytes();
  }

  @ParameterizedTest
  @MethodSource("originals")
  void stripGivesTheDesignersFileBackByteForByte(byte[] original) {
    byte[] drained = drain(original);
    BlockCheck.require(original, drained);
    Strip.Stripped stripped = Strip.original(drained).orElseThrow();
    assertThat(Sha256.hex(stripped.bytes())).isEqualTo(Sha256.hex(original));
    assertThat(stripped.exact()).isTrue();
  }

  @ParameterizedTest
  @MethodSource("originals")
  void theMarkersStandOnLinesOfTheirOwnInTheFilesLineEnds(byte[] original) {
    String drained = new String(drain(original), StandardCharsets.ISO_8859_1);
    int begin = drained.lastIndexOf("/* Underlee begins: drained-deck");
    int end = drained.lastIndexOf("/* Underlee ends */");
    String around = drained.substring(begin - 1, begin) + drained.substring(end);
    assertThat(around).matches("(?s)[\r\n]/\\* Underlee ends \\*/(\r\n|\n|\r)\\s*ENDSEC;.*");
    boolean windows = new String(original, StandardCharsets.ISO_8859_1).contains(";\r\nHEADER");
    assertThat(drained.substring(begin, end).contains("\r\n")).isEqualTo(windows);
  }

  @ParameterizedTest
  @MethodSource("originals")
  void aModelWithoutOurBlockIsLeftAlone(byte[] original) {
    assertThat(Strip.original(original)).isEmpty();
  }

  @Test
  void theBlockLiesFromItsFirstMarkerToTheEndOfItsLastLine() {
    byte[] drained = drain(MODEL.bytes());
    ByteRange range = Strip.block(drained).orElseThrow();
    String block = new String(drained, range.from(), range.length(), StandardCharsets.ISO_8859_1);
    assertThat(block).startsWith("/* Underlee begins").endsWith("/* Underlee ends */\n");
    assertThat(Strip.block(MODEL.bytes())).isEmpty();
  }

  @Test
  void aSecondDesignReplacesTheFirst() {
    byte[] original = MODEL.bytes();
    FieldLayout whole = SampleField.layout();
    List<Part> pans = whole.parts().stream().filter(p -> !p.id().contains("ply-strip")).toList();
    FieldLayout other =
        new FieldLayout(
            whole.deck(),
            whole.field(),
            whole.storey(),
            0.01,
            SampleField.FALL,
            3,
            "",
            Words.of(""),
            pans,
            List.of());
    WriteBack.Written first = Drained.of(original, List.of(other));
    byte[] again = Strip.original(first.bytes()).orElseThrow().bytes();
    WriteBack.Written second = Drained.of(again, List.of(whole));
    assertThat(second.bytes()).isEqualTo(drain(original));
    assertThat(second.globalIds()).containsAllEntriesOf(first.globalIds());
  }

  @Test
  void anEditOutsideTheBlockIsKeptAndSaid() {
    String drained = new String(drain(MODEL.bytes()), StandardCharsets.UTF_8);
    byte[] edited = drained.replace("'House'", "'Home'").getBytes(StandardCharsets.UTF_8);
    Strip.Stripped stripped = Strip.original(edited).orElseThrow();
    assertThat(stripped.exact()).isFalse();
    assertThat(stripped.bytes())
        .isEqualTo(
            new String(MODEL.bytes(), StandardCharsets.UTF_8)
                .replace("'House'", "'Home'")
                .getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void anEditInsideTheBlockGoesWithTheBlock() {
    String drained = new String(drain(MODEL.bytes()), StandardCharsets.UTF_8);
    byte[] edited =
        drained.replace("'PAN-1'", "'/* Underlee ends */'").getBytes(StandardCharsets.UTF_8);
    assertThat(edited).isNotEqualTo(drained.getBytes(StandardCharsets.UTF_8));
    assertThat(Strip.original(edited).orElseThrow().exact()).isTrue();
  }

  @Test
  void aBlockThatIsNotWholeIsRefused() {
    String drained = new String(drain(MODEL.bytes()), StandardCharsets.UTF_8);
    List<String> broken = new ArrayList<>();
    broken.add(drained.replace("/* Underlee ends */", ""));
    broken.add(drained.replace("format 1", "format 2"));
    broken.add(drained.replaceFirst("/\\* Underlee begins[^*]*\\*/", ""));
    broken.add(drained.replace("/* Underlee ends */", "/* Underlee ends *//* Underlee ends */"));
    for (String text : broken) {
      assertThatThrownBy(() -> Strip.original(text.getBytes(StandardCharsets.UTF_8)))
          .isInstanceOf(InputException.class)
          .hasMessageContaining("the block of an earlier design");
    }
  }

  @Test
  void newNumbersAreAboveEveryNumberInTheText() {
    byte[] original =
        new String(MODEL.bytes(), StandardCharsets.UTF_8)
            .replace("#32=IFCRELAGGREGATES", "#700=IFCRELAGGREGATES")
            .getBytes(StandardCharsets.UTF_8);
    StepFile file = StepFile.of(drain(original), "drained.ifc");
    assertThat(file.id(StepFile.of(original, "o").count())).isEqualTo(701);
  }
}
