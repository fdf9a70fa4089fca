package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may go wrong between writing and reading back is found before the file is saved. */
class BlockCheckTest {
  private static final byte[] ORIGINAL = TinyModel.of("IFC4", TinyModel.Length.METRE).bytes();
  private static final String DRAINED =
      new String(
          Drained.of(TinyModel.of("IFC4", TinyModel.Length.METRE)).bytes(), StandardCharsets.UTF_8);

  private static void require(String drained) {
    BlockCheck.require(ORIGINAL, drained.getBytes(StandardCharsets.UTF_8));
  }

  /** Alone, in a list, and within a typed value. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "(IFCRELCONNECTSPORTS\\([^#]*)#\\d+ | $1#999999",
        "(IFCRELNESTS\\([^#]*#\\d+,\\(#\\d+,)#\\d+ | $1#999999",
        "IFCLABEL\\('NEW'\\) | IFCLABEL(#999999)"
      })
  void aReferenceToNothingIsFoundWhereverItStands(String place, String broken) {
    String changed = DRAINED.replaceFirst(place, broken);
    assertThat(changed).isNotEqualTo(DRAINED);
    assertThatThrownBy(() -> require(changed))
        .isInstanceOf(BlockCheck.FailedException.class)
        .hasMessageContaining("refers to #999999, which is not there");
  }

  @Test
  void aBlockThatIsMissingOrAChangeBesideItIsFound() {
    assertThatThrownBy(() -> require(new String(ORIGINAL, StandardCharsets.UTF_8) + " "))
        .isInstanceOf(BlockCheck.FailedException.class)
        .hasMessageContaining("the block is not there");
    assertThatThrownBy(() -> require(DRAINED.replace("'House'", "'Hause'")))
        .isInstanceOf(BlockCheck.FailedException.class)
        .hasMessageContaining("bytes outside the block have changed");
  }

  @Test
  void aGlobalIdThatStandsTwiceIsFoundInTheBlockAndInTheDesignersFile() {
    String line = lineWith(DRAINED, "=IFCELEMENTASSEMBLY(");
    String id = line.substring(line.indexOf('\'') + 1).substring(0, 22);
    String other = lineWith(DRAINED, "=IFCCOSTSCHEDULE(");
    String twice =
        other.replaceFirst("'[^']{22}'", java.util.regex.Matcher.quoteReplacement("'" + id + "'"));
    assertThatThrownBy(() -> require(DRAINED.replace(other, twice)))
        .isInstanceOf(BlockCheck.FailedException.class)
        .hasMessageContaining("uses the GlobalId " + id + " twice");
    String theirs = other.replaceFirst("'[^']{22}'", "'" + TinyModel.PROJECT + "'");
    assertThatThrownBy(() -> require(DRAINED.replace(other, theirs)))
        .isInstanceOf(BlockCheck.FailedException.class)
        .hasMessageContaining("already has the GlobalId " + TinyModel.PROJECT);
  }

  private static String lineWith(String text, String part) {
    return text.lines().filter(l -> l.contains(part)).findFirst().orElseThrow();
  }
}
