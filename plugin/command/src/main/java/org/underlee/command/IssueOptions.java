package org.underlee.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.underlee.clash.IssueRegister;
import org.underlee.finding.FileFault;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.kit.Kit;
import org.underlee.report.ClashCsv;
import org.underlee.report.ClashJson;
import org.underlee.report.ClashSarif;
import org.underlee.report.bcf.BcfVersion;
import org.underlee.report.bcf.BcfWriter;
import org.underlee.run.Checked;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What is in the assembly's way: looked at when one of these or {@code --services} is given. */
final class IssueOptions {
  @Option(
      names = "--issues",
      paramLabel = "FILE",
      description = {
        "Follow issues in this JSON file: it is read if there is one, and written again. An issue"
            + " is accepted by writing the reason into it."
      })
  Optional<Path> issues = Optional.empty();

  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = "Also write what is in the way as a table.")
  Optional<Path> csv = Optional.empty();

  @Option(
      names = "--bcf",
      paramLabel = "FILE",
      description = {
        "Also write the issues as BCF. In a file that is there, what others put in stays."
      })
  Optional<Path> bcf = Optional.empty();

  @Option(
      names = "--bcf-version",
      paramLabel = "EDITION",
      converter = VersionConverter.class,
      description = "2.1, or 3.0; 2.1 when not given, and a file that is there keeps its own.")
  BcfVersion version = BcfVersion.V2_1;

  @Option(
      names = "--sarif",
      paramLabel = "FILE",
      description = "Also write the issues as SARIF 2.1.0, with the bytes of each thing.")
  Optional<Path> sarif = Optional.empty();

  /** Reads {@code 2.1} and {@code 3.0}. */
  static final class VersionConverter implements ITypeConverter<BcfVersion> {
    @Override
    public BcfVersion convert(String text) {
      return Arrays.stream(BcfVersion.values())
          .filter(v -> v.id().equals(text))
          .findFirst()
          .orElseThrow(
              () -> new TypeConversionException("\"" + text + "\" is neither 2.1 nor 3.0"));
    }
  }

  private boolean areWanted(ModelOptions model) {
    return !model.services.isEmpty()
        || issues.isPresent()
        || csv.isPresent()
        || bcf.isPresent()
        || sarif.isPresent()
        || model.failOn.filter(f -> f == FailOn.NEW).isPresent();
  }

  Optional<Coordination> of(ModelOptions model, Checked checked, Kit kit) {
    return areWanted(model)
        ? Optional.of(DeckRun.coordinate(model.file, checked, kit, before()))
        : Optional.empty();
  }

  Optional<Coordination> of(ModelOptions model, Design design) {
    return areWanted(model) ? DeckRun.coordinate(design, before()) : Optional.empty();
  }

  IssueRegister before() {
    return issues.filter(Files::exists).map(IssueOptions::read).orElse(IssueRegister.EMPTY);
  }

  private static IssueRegister read(Path file) {
    String name = file.getFileName().toString();
    try {
      return IssueRegister.read(Files.readString(file), name);
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(name),
          "the file of issues cannot be read: " + FileFault.words(e),
          "Check the path, the rights to the file, and that it is text in UTF-8.");
    }
  }

  /** The files that were asked for; that of the issues last, when all else is written. */
  void write(ModelOptions model, Coordination found) {
    RunFiles files = model.files();
    csv.ifPresent(f -> files.text(f, ClashCsv.write(found)));
    sarif.ifPresent(f -> files.text(f, ClashSarif.write(found)));
    bcf.ifPresent(f -> files.renew(f, bcf(f, found)));
    issues.ifPresent(
        f -> files.renew(f, ClashJson.write(found.register()).getBytes(StandardCharsets.UTF_8)));
  }

  private byte[] bcf(Path file, Coordination found) {
    if (!Files.exists(file)) {
      return BcfWriter.write(found, version);
    }
    try {
      return BcfWriter.renew(found, Files.readAllBytes(file), file.getFileName().toString());
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(file.toString()),
          "the BCF file cannot be read: " + FileFault.words(e),
          "Check the rights to the file, or name another.");
    }
  }

  /** Whether an issue is new, where that was asked about. */
  boolean fails(ModelOptions model, Coordination found) {
    return model.failOn.filter(f -> f == FailOn.NEW).isPresent() && found.hasNew();
  }
}
