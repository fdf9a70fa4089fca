package org.underlee.run;

import java.nio.file.Path;
import java.util.function.IntPredicate;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.schema.Schema;
import org.underlee.schema.SchemaCheck;
import org.underlee.schema.SchemaReport;
import org.underlee.step.ByteRange;
import org.underlee.step.StepFile;
import org.underlee.writeback.Strip;

/**
 * A model checked by the standard's own schema.
 *
 * @param file its name, without folders
 * @param sha256 of the bytes as given
 * @param ifcSchema as the file's header says
 * @param onlyOurs whether only the instances that we wrote were checked
 */
public record SchemaChecked(
    String file, String sha256, String ifcSchema, boolean onlyOurs, SchemaReport report) {

  /**
   * Checks every instance of a model, or only our block.
   *
   * @param schema an EXPRESS file
   * @throws InputException when a file cannot be read, or our block is asked for and not there
   */
  public static SchemaChecked of(Path model, Path schema, boolean onlyOurs) {
    return of(Surveyor.opened(model), Schema.read(schema), onlyOurs);
  }

  /** As {@link #of(Path, Path, boolean)}, of what is in memory. */
  public static SchemaChecked of(StepFile file, Schema schema, boolean onlyOurs) {
    IntPredicate judged = onlyOurs ? ours(file) : i -> true;
    SchemaReport report = SchemaCheck.of(schema, file, judged);
    return new SchemaChecked(file.name(), file.sha256(), file.schema(), onlyOurs, report);
  }

  private static IntPredicate ours(StepFile file) {
    ByteRange block =
        Strip.block(file.bytes())
            .orElseThrow(
                () ->
                    new InputException(
                        Place.NOWHERE.inFile(file.name()),
                        "there is no assembly of ours in the model",
                        "Give a model that design has written, or leave --only-ours out."));
    return i -> file.offset(i) >= block.from() && file.offset(i) < block.to();
  }

  /** Whether nothing was found that breaks the schema. */
  public boolean clean() {
    return report.findings().stream().map(Finding::level).noneMatch(SchemaReport.BROKEN::equals);
  }
}
