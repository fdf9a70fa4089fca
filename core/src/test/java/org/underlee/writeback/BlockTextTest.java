package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every line that is written for one of each kind of part, read once by a person and kept. After a
 * change that is meant, run with {@code -Dunderlee.rewrite=true} and read the difference.
 */
class BlockTextTest {
  private static final Path KEPT =
      Path.of(System.getProperty("underlee.root", "."))
          .resolve("core/src/test/resources/org/underlee/writeback");

  @ParameterizedTest
  @CsvSource({
    "IFC2X3, FOOT, false, true, older-feet",
    "IFC4, METRE, true, false, metres-without-storey",
    "IFC4X3_ADD2, MILLIMETRE, true, true, newer-millimetres"
  })
  void eachLineOfTheBlockIsAsItWasRead(
      String schema, TinyModel.Length length, boolean history, boolean storey, String name)
      throws IOException {
    TinyModel model = new TinyModel(schema, length, "\n", history, storey);
    String drained = new String(Drained.of(model).bytes(), StandardCharsets.UTF_8);
    int common = 0;
    String original = new String(model.bytes(), StandardCharsets.UTF_8);
    while (original.charAt(common) == drained.charAt(common)) {
      common++;
    }
    int added = drained.length() - original.length();
    String block = drained.substring(common, common + added);
    Path kept = KEPT.resolve(name + ".txt");
    if (Boolean.getBoolean("underlee.rewrite")) {
      Files.writeString(kept, block);
    }
    assertThat(block.lines()).containsExactlyElementsOf(Files.readAllLines(kept));
  }
}
