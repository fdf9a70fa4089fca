package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is wrong stands in the first line, and what was probably meant with it. */
class MisuseTest extends AtTheShell {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "design DECK --units cubits | expected one of metric, imperial but was 'cubits' | design",
        "design DECK --rain Macon | did you mean \"Macon, GA\"? | design",
        "design DECK --deck deck-2 | --deck deck-2: the model has deck-1 | design",
        "takeoff DECK --out bill.txt | --out bill.txt: name a .csv, .xlsx or .json file | takeoff",
        "desing DECK | There is no verb \"desing\"; did you mean design? | ",
        "xyzzy | the verbs are survey, design, | ",
        "deck.ifc | A verb comes before the file, as in: underlee survey deck.ifc | ",
      })
  void aMistakeIsOneLineAndTheWayToTheHelp(String line, String said, String verb) {
    Ran ran = run((Object[]) line.replace("DECK", deck.toString()).split(" "));
    assertThat(ran.code()).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err().lines().findFirst().orElseThrow()).contains(said);
    String help = verb == null ? "underlee --help" : "underlee " + verb + " --help";
    assertThat(ran.err().lines()).hasSize(2).last().isEqualTo("See `" + help + "`.");
  }

  @Test
  void aNameThatIsNearlyThatOfAFileOrAKitIsAskedAbout() {
    Path slip = folder.resolve("dek.ifc");
    assertThat(run("survey", slip).err()).contains("there is no such file", "Did you mean " + deck);
    assertThat(run("survey", folder.resolve("zzzzz.ifc")).err()).doesNotContain("Did you mean");
    Ran kit = run("takeoff", deck, "--kit", "formed-aluminum");
    assertThat(kit.code()).isEqualTo(ExitCode.INPUT);
    assertThat(kit.err()).contains("no such kit", "Did you mean formed-aluminium?");
  }
}
