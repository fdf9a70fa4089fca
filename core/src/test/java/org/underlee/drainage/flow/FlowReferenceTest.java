package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class FlowReferenceTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /** When this fails, run {@link FlowReference#main} with the project's root and see the diff. */
  @Test
  void thePublishedPagesAreWhatTheDataSay() {
    assertThat(ROOT.resolve(FlowReference.FILE)).hasContent(FlowReference.page());
    assertThat(ROOT.resolve(FlowReference.SCHEMA_FILE)).hasContent(FlowReference.schema());
  }
}
