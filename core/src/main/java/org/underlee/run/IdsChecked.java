package org.underlee.run;

import java.nio.file.Path;
import org.underlee.finding.InputException;
import org.underlee.ids.IdsCheck;
import org.underlee.ids.IdsReport;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;

/**
 * A model checked by an Information Delivery Specification.
 *
 * @param file its name, without folders
 * @param sha256 of the bytes as given
 * @param ifcSchema as the file's header says
 */
public record IdsChecked(String file, String sha256, String ifcSchema, IdsReport report) {
  /** The specification of what our own block promises, among the program's resources. */
  private static final String OWN = "underlee.ids";

  /**
   * Checks a model.
   *
   * @param ids the specification; the program's own when it is called {@code underlee.ids} and no
   *     such file is there
   * @param schema an EXPRESS file: it says which attributes an entity has
   * @throws InputException when a file cannot be read
   */
  public static IdsChecked of(Path model, Path ids, Path schema) {
    StepFile file = Surveyor.opened(model);
    Schema read = Schema.read(schema);
    boolean own = ids.getFileName().toString().equals(OWN) && !ids.toFile().exists();
    IdsReport report = own ? IdsCheck.byOwn(read, file) : IdsCheck.of(ids, read, file);
    return new IdsChecked(file.name(), file.sha256(), file.schema(), report);
  }
}
