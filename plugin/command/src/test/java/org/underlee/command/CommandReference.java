package org.underlee.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Makes the reference page of the command from its own help. */
final class CommandReference {
  static final String FILE = "docs/reference/command.md";

  /** Colours, which help has on some terminals. */
  private static final String ANSI = "\u001b\\[[0-9;]*m";

  private static final String SERVER =
      """

      ## server

      `underlee-server.jar`, where it lies beside `underlee.jar`, brings this verb: `list`, `get`, `put`, `work` and `open` on a shared
      model server. [Work on a model server](../how-to/work-on-a-model-server.md) has its options.
      """;

  private CommandReference() {}

  /** Writes the page below the given root of the project. */
  public static void main(String[] args) throws IOException {
    Files.writeString(Path.of(args.length > 0 ? args[0] : ".", FILE), page());
  }

  static String page() {
    StringBuilder page =
        new StringBuilder(
            """
            # Command

            Generated from the command's own help. `underlee` stands for `java -jar plugin/command/target/underlee.jar`.
            Reports go to standard output, messages and findings to standard error. [Exit codes](../how-to/read-findings.md#exit-codes)
            are in the page on findings. `server`, a verb of the part for model servers, has [a page of its own](../how-to/work-on-a-model-server.md).

            """);
    page.append(withoutVerbsOfOtherParts(help("## underlee", "--help")));
    verbs().forEach(v -> page.append('\n').append(help("## " + v, v, "--help")));
    return page.append(SERVER).toString();
  }

  /**
   * Verbs of parts that may be there or not, such as the model server's, have pages of their own.
   */
  private static String withoutVerbsOfOtherParts(String help) {
    Set<String> own = verbs().collect(Collectors.toSet());
    int verbs = help.indexOf("Commands:\n") + "Commands:\n".length();
    String kept =
        help.substring(verbs)
            .lines()
            .filter(l -> !l.matches("  [a-z].*") || own.contains(l.strip().split(" ")[0]))
            .collect(Collectors.joining("\n", "", "\n"));
    return help.substring(0, verbs) + kept;
  }

  private static Stream<String> verbs() {
    return EveryVerb.own().map(EveryVerb::name);
  }

  private static String help(String heading, String... args) {
    StringWriter out = new StringWriter();
    int code = Underlee.run(new PrintWriter(out), new PrintWriter(new StringWriter()), args);
    if (code != ExitCode.CLEAN) {
      throw new IllegalStateException(String.join(" ", args) + " ended with " + code);
    }
    String text = out.toString().replace("\r\n", "\n").replaceAll(ANSI, "");
    return heading + "\n\n```text\n" + text + "```\n";
  }
}
