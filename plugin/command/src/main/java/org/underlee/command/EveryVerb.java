package org.underlee.command;

import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/**
 * The program with all its verbs. Reading the options of them all takes a tenth of a second, so
 * that {@link #neededFor} reads no more than the words ask for.
 */
@Command(
    subcommands = {
      SurveyCommand.class,
      DesignCommand.class,
      CheckCommand.class,
      TakeoffCommand.class,
      CompareCommand.class,
      StripCommand.class,
      PacketCommand.class,
      OpenCommand.class,
      ResyncCommand.class,
      BatchCommand.class,
      CompletionCommand.class
    })
final class EveryVerb extends Underlee {
  /** What asks for the program's own version, and so needs no verb. */
  private static final Set<String> VERSION = Set.of("-V", "--version");

  /** What tells of all the others, and so needs them. */
  private static final String COMPLETION = "completion";

  /** The command line, with as many of the verbs as these words need. */
  static CommandLine neededFor(String... words) {
    String first = words.length == 0 ? "" : words[0];
    if (VERSION.contains(first)) {
      return new CommandLine(new Underlee());
    }
    Optional<Class<?>> own = own().filter(v -> name(v).equals(first)).findFirst();
    return own.filter(v -> !first.equals(COMPLETION))
        .map(v -> new CommandLine(new Underlee()).addSubcommand(v))
        .orElseGet(EveryVerb::line);
  }

  /** All verbs: this part's own, and those that other jars bring. */
  static CommandLine line() {
    CommandLine line = new CommandLine(new EveryVerb());
    ServiceLoader.load(Verb.class).forEach(v -> line.addSubcommand(v.command(Underlee::run)));
    return line;
  }

  /** The verbs of this part, in the order of the help. */
  static Stream<Class<?>> own() {
    return Stream.of(EveryVerb.class.getAnnotation(Command.class).subcommands());
  }

  static String name(Class<?> verb) {
    return verb.getAnnotation(Command.class).name();
  }
}
