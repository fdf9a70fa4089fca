package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class OneBayTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /**
   * When this fails, write the page again and look at the diff: {@code java -cp
   * core/target/test-classes:plugin/command/target/underlee.jar org.underlee.run.OneBay .}
   */
  @Test
  void thePageThatFollowsOneBayIsWhatTheProgramDoes() {
    assertThat(ROOT.resolve(OneBay.FILE)).hasContent(OneBay.page(ROOT));
  }
}
