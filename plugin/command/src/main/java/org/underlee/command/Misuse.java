package org.underlee.command;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.finding.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * What is said of a command line that cannot be understood: one line that says what is wrong, and
 * where the help is; the help itself would push that line off the screen.
 */
final class Misuse {
  /** Words of a choice as the parser tells it. */
  private static final Pattern CHOICE =
      Pattern.compile("expected one of \\[(.*?)] \\(case-(?:in)?sensitive\\)");

  private Misuse() {}

  /** Says it; gives back what the run ends with. */
  static int told(ParameterException e) {
    CommandLine line = e.getCommandLine();
    PrintWriter err = line.getErr();
    Optional<String> verb = verb(e);
    if (verb.isPresent()) {
      err.println(noVerb(line, verb.get()));
    } else {
      err.println(choiceInWords(String.valueOf(e.getMessage())));
      UnmatchedArgumentException.printSuggestions(e, err);
    }
    err.println("See `" + line.getCommandSpec().qualifiedName() + " --help`.");
    return ExitCode.USAGE;
  }

  /** The word that stands where the verb should, when it is none. */
  private static Optional<String> verb(ParameterException e) {
    boolean first =
        e instanceof UnmatchedArgumentException && e.getCommandLine().getParent() == null;
    return first
        ? ((UnmatchedArgumentException) e)
            .getUnmatched().stream().findFirst().filter(w -> !w.startsWith("-"))
        : Optional.empty();
  }

  private static String noVerb(CommandLine line, String word) {
    if (word.contains(".")) {
      return "A verb comes before the file, as in: underlee survey " + word;
    }
    List<String> near = Nearest.meant(word, line.getSubcommands().keySet());
    String verbs = String.join(", ", line.getSubcommands().keySet());
    return "There is no verb \""
        + word
        + "\"; "
        + (near.isEmpty() ? "the verbs are " + verbs + "." : "did you mean " + near.get(0) + "?");
  }

  /** {@code expected one of metric, imperial}. */
  static String choiceInWords(String message) {
    Matcher choice = CHOICE.matcher(message);
    return choice.find()
        ? choice.replaceFirst(
            "expected one of " + Matcher.quoteReplacement(choice.group(1).toLowerCase(Locale.ROOT)))
        : message;
  }
}
