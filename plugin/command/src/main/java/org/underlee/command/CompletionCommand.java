package org.underlee.command;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
    name = "completion",
    description = "Prints a script that lets bash and zsh complete verbs and options.",
    mixinStandardHelpOptions = true)
final class CompletionCommand implements Callable<Integer> {
  @Spec CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    out.print(AutoComplete.bash("underlee", spec.root().commandLine()));
    out.flush();
    return ExitCode.CLEAN;
  }
}
