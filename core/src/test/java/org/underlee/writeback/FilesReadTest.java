package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilesReadTest {
  @TempDir Path folder;

  @Test
  void aFileThatIsReadIsRefusedByWhateverPathAndToldByItsPart() throws IOException {
    Path model = Files.writeString(folder.resolve("deck.ifc"), "model");
    Path link = Files.createSymbolicLink(folder.resolve("link.ifc"), model);
    Path table = folder.resolve("not-there-yet.json");
    FilesRead read = FilesRead.NONE.with(model, "the open model").with(table, "the table");

    assertThat(read.partOf(link)).contains("the open model");
    assertThat(read.partOf(folder.resolve("x/../deck.ifc"))).contains("the open model");
    assertThat(read.partOf(folder.resolve("x/../not-there-yet.json"))).contains("the table");
    assertThatThrownBy(() -> read.requireApart(link))
        .isInstanceOf(NotWrittenException.class)
        .hasMessageContaining("it is an input (the open model)");
  }

  @Test
  void whatIsNotReadOrNoLongerCountedMayBeWritten() throws IOException {
    Path model = Files.writeString(folder.resolve("deck.ifc"), "model");
    Path other = Files.writeString(folder.resolve("other.ifc"), "model");
    FilesRead read = FilesRead.NONE.with(model, "the open model");
    read.requireApart(other);
    read.without("the open model").requireApart(model);
    assertThat(read.partOf(model)).as("the first one is as it was").isPresent();
  }
}
