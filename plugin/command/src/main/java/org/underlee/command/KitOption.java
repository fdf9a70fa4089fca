package org.underlee.command;

import java.util.Optional;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import picocli.CommandLine.Option;

/** The kit to lay out with. */
final class KitOption {
  @Option(names = "--kit", paramLabel = "KIT", description = "A kit's name or file.")
  Optional<String> name = Optional.empty();

  Kit kit() {
    return name.map(KitReader::named).orElseGet(KitReader::builtIn);
  }
}
