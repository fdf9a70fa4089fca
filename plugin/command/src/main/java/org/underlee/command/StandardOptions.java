package org.underlee.command;

import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.report.IdsJson;
import org.underlee.report.IdsText;
import org.underlee.report.SchemaJson;
import org.underlee.report.SchemaText;
import org.underlee.run.IdsChecked;
import org.underlee.run.SchemaChecked;
import org.underlee.units.Lengths.UnitSystem;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Checks by what open standards say of a model, in place of the check of the assembly. */
final class StandardOptions {
  @Option(
      names = "--schema",
      paramLabel = "FILE",
      description = {
        "Check the model by the standard's own schema, an EXPRESS file (.exp), and nothing else."
      })
  Optional<Path> schema = Optional.empty();

  @Option(
      names = "--only-ours",
      description = "With --schema: only the instances that design has written.")
  boolean onlyOurs;

  @Option(
      names = "--ids",
      paramLabel = "FILE",
      description = {
        "With --schema, which it needs: check by an Information Delivery Specification instead;"
            + " underlee.ids is what this program promises of its own parts."
      })
  Optional<Path> ids = Optional.empty();

  boolean asked() {
    return schema.isPresent() || ids.isPresent();
  }

  /** What was asked for, as text or JSON to where {@code --out} says; the exit code. */
  int check(ModelOptions model, Optional<Path> out) {
    Path express =
        schema.orElseThrow(
            () ->
                new ParameterException(
                    model.spec.commandLine(),
                    "--ids needs --schema FILE, which says what attributes the model has"));
    if (ids.isPresent()) {
      IdsChecked checked = IdsChecked.of(model.file, ids.get(), express);
      String text = model.json ? IdsJson.write(checked) : IdsText.write(checked);
      return told(model, out, text, checked.report().findings());
    }
    SchemaChecked checked = SchemaChecked.of(model.file, express, onlyOurs);
    String text = model.json ? SchemaJson.write(checked) : SchemaText.write(checked);
    return told(model, out, text, checked.report().findings());
  }

  private static int told(
      ModelOptions model, Optional<Path> out, String text, Collection<Finding> findings) {
    out.ifPresentOrElse(f -> model.files().text(f, text), () -> model.print(text));
    return model.report(findings, model.units.orElse(UnitSystem.METRIC));
  }
}
