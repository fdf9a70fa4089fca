package org.underlee.command;

import java.util.Optional;
import org.underlee.step.StepLimits;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How much a model may ask for before it is taken for damaged or hostile. */
final class LimitOptions {
  @Option(
      names = "--record-limit",
      paramLabel = "N",
      description = "Instances in a model at most; 20,000,000 when not given.")
  Optional<Integer> records = Optional.empty();

  @Option(
      names = "--string-limit",
      paramLabel = "BYTES",
      description = "Length of one text in a model at most; 1,048,576 when not given.")
  Optional<Integer> stringBytes = Optional.empty();

  @Option(
      names = "--zip-ratio-limit",
      paramLabel = "N",
      description = "How many times its packed size a model in a ZIP may have; 100 when not given.")
  Optional<Integer> zipRatio = Optional.empty();

  @Spec(Spec.Target.MIXEE)
  CommandSpec spec = CommandSpec.create();

  StepLimits limits() {
    StepLimits standard = StepLimits.STANDARD;
    return standard
        .withRecords(positive("--record-limit", records, standard.records()))
        .withStringBytes(positive("--string-limit", stringBytes, standard.stringBytes()))
        .withZip(
            standard.zipEntries(), positive("--zip-ratio-limit", zipRatio, standard.zipRatio()));
  }

  private int positive(String option, Optional<Integer> given, int otherwise) {
    if (given.filter(n -> n < 1).isPresent()) {
      CommandLine line = spec.commandLine();
      throw new ParameterException(line, option + " " + given.get() + " is not a positive number");
    }
    return given.orElse(otherwise);
  }
}
