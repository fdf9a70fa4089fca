package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class CommandReferenceTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /**
   * When this fails, run {@link CommandReference#main} with the project's root, look at the diff.
   */
  @Test
  void thePublishedReferenceIsWhatTheHelpSays() {
    assertThat(ROOT.resolve(CommandReference.FILE)).hasContent(CommandReference.page());
  }
}
