package org.underlee.server;

import org.underlee.command.Verb;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Brings the verb {@code server} to the program. */
public final class ServerVerb implements Verb {
  /** Holds the verbs below it together. */
  @Command(
      name = "server",
      description = {
        "Works with models on a shared model server.",
        "The password comes from UNDERLEE_SERVER_PASSWORD, from the program that UNDERLEE_SERVER_ASK"
            + " names, or a token from UNDERLEE_SERVER_TOKEN; without any you are asked."
      },
      mixinStandardHelpOptions = true)
  static final class Group {}

  @Override
  public Object command(Program underlee) {
    return new CommandLine(new Group())
        .addSubcommand(new ListCommand())
        .addSubcommand(new GetCommand())
        .addSubcommand(new WorkCommand.Survey(underlee))
        .addSubcommand(new WorkCommand.Design(underlee))
        .addSubcommand(new OpenCommand(underlee))
        .addSubcommand(new PutCommand(underlee));
  }
}
