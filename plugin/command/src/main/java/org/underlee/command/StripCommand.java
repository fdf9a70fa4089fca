package org.underlee.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import org.underlee.run.DeckRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "strip",
    description = "Gives back the designer's file, without the assembly.",
    mixinStandardHelpOptions = true)
final class StripCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "FILE", description = "A drained model.")
  Path file = Path.of("");

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "Where the designer's file goes.")
  Path out = Path.of("");

  @Spec CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    AtomicBoolean exact = new AtomicBoolean();
    String saved = RunFiles.of(spec).wrote(out, () -> exact.set(DeckRun.strip(file, out)));
    String what =
        exact.get()
            ? ", as the designer made it."
            : ", without the assembly; it was edited since, and the edits are kept.";
    spec.commandLine().getErr().println(saved + what);
    return ExitCode.CLEAN;
  }
}
