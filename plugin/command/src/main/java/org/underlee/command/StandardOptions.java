package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import org.underlee.report.SchemaJson;
import org.underlee.report.SchemaText;
import org.underlee.run.SchemaChecked;
import org.underlee.units.Lengths.UnitSystem;
import picocli.CommandLine.Option;

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

  boolean asked() {
    return schema.isPresent();
  }

  /** What was asked for, as text or JSON to where {@code --out} says; the exit code. */
  int check(ModelOptions model, Optional<Path> out) {
    SchemaChecked checked = SchemaChecked.of(model.file, schema.orElseThrow(), onlyOurs);
    String text = model.json ? SchemaJson.write(checked) : SchemaText.write(checked);
    out.ifPresentOrElse(f -> Output.text(model.file, f, text), () -> model.print(text));
    return model.report(checked.report().findings(), model.units.orElse(UnitSystem.METRIC));
  }
}
