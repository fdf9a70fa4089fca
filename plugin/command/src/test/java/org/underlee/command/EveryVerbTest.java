package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** Keeping text and reading fewer verbs are for speed alone: what is told stays the same. */
class EveryVerbTest {
  private static final CommandLine WHOLE = new CommandLine(new EveryVerb());

  private static final Path KEPT =
      Path.of(System.getProperty("underlee.root", "."), "plugin/command/src/main/resources")
          .resolve(HelpText.RESOURCE);

  private static Stream<String> verbs() {
    return EveryVerb.own().map(EveryVerb::name);
  }

  @Test
  void theHelpThatIsKeptIsWhatTheVerbsSayOfThemselves() throws IOException {
    String told = WHOLE.getUsageMessage(Ansi.ON).replace("\r\n", "\n");
    if (Boolean.getBoolean("underlee.rewrite")) {
      Files.createDirectories(KEPT.getParent());
      Files.writeString(KEPT, told);
    }
    assertThat(Files.readString(KEPT)).isEqualTo(told);
    assertThat(HelpText.plain(told)).isEqualTo(WHOLE.getUsageMessage(Ansi.OFF).replace("\r", ""));
  }

  @ParameterizedTest
  @MethodSource("verbs")
  void aVerbReadAloneHasTheSameHelp(String verb) {
    CommandLine alone = EveryVerb.neededFor(verb, "deck.ifc").getSubcommands().get(verb);
    assertThat(alone.getUsageMessage(Ansi.OFF))
        .isEqualTo(WHOLE.getSubcommands().get(verb).getUsageMessage(Ansi.OFF));
  }

  @Test
  void anUnknownWordIsAnsweredWithAllVerbs() {
    assertThat(EveryVerb.neededFor("paint").getSubcommands())
        .containsKeys(verbs().toArray(String[]::new));
  }

  @Test
  void completionKnowsTheOptionsOfAllVerbs() {
    assertThat(Ran.run("completion").out()).contains("'--takeoff'", "'--journal'");
  }
}
