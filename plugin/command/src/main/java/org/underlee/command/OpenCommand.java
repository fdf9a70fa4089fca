package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.concurrent.Callable;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.run.ModelWindow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

@Command(
    name = "open",
    description = "Opens the panel, a window to look at a model and to work on it.",
    mixinStandardHelpOptions = true)
final class OpenCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "FILE",
      description = "The model; it can be dropped into the window, too.")
  Optional<Path> file = Optional.empty();

  @Override
  public Integer call() {
    ServiceLoader.load(ModelWindow.class, OpenCommand.class.getClassLoader())
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Place.NOWHERE,
                    "the panel is not here",
                    "Put underlee-panel.jar beside underlee.jar; every other verb works without"
                        + " it."))
        .open(file);
    return ExitCode.CLEAN;
  }
}
