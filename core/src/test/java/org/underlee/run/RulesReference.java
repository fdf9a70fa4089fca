package org.underlee.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.underlee.finding.Rule;

/** Makes the reference page of rules from the rules. */
final class RulesReference {
  static final String FILE = "docs/reference/rules.md";

  private RulesReference() {}

  /** Writes the page below the given root of the project. */
  public static void main(String[] args) throws IOException {
    Files.writeString(Path.of(args.length > 0 ? args[0] : ".", FILE), page());
  }

  static String page() {
    StringBuilder page =
        new StringBuilder(
            """
            # Rules

            Generated from the code (`org.underlee.run.Rules`). A finding names one of these rules; its own message gives
            the place, the measured values and what to do. [Read the findings](../how-to/read-findings.md) says what the
            levels ask of you. Source `Underlee` means: a limit of what this program can read or do, not of the trade.

            | rule | level | meaning | source |
            |---|---|---|---|
            """);
    for (Rule rule : Rules.all()) {
      page.append("| `").append(rule.id()).append("` | ").append(rule.level().word());
      page.append(" | ").append(rule.meaning()).append(" | ").append(rule.source()).append(" |\n");
    }
    return page.toString();
  }
}
