package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Help.Ansi;

/** The lines that this part adds to the program's own help. */
class ServerHelpTest {
  private static final Path KEPT =
      Path.of(System.getProperty("underlee.root", "."), "plugin/server/src/main/resources")
          .resolve(HelpText.MORE);

  @Test
  void theLinesThatAreKeptAreWhatTheVerbSaysOfItself() throws IOException {
    String told = EveryVerb.line().getUsageMessage(Ansi.ON).replace("\r\n", "\n");
    if (Boolean.getBoolean("underlee.rewrite")) {
      Files.createDirectories(KEPT.getParent());
      Files.writeString(KEPT, told.substring(told.lastIndexOf("\n  ", told.indexOf("server")) + 1));
    }
    assertThat(told).endsWith(Files.readString(KEPT));
    assertThat(Typed.run("--help").out())
        .isEqualToNormalizingNewlines(EveryVerb.line().getUsageMessage(Ansi.OFF));
  }
}
