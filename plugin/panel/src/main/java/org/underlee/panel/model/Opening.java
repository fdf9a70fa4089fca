package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.run.DeckRun;
import org.underlee.run.FieldByField;

/**
 * A model that was read, ready to be laid out.
 *
 * @param fields which lays it out
 * @param kit that was decided on when it was read
 */
record Opening(FieldByField fields, Kit kit) {
  /** Reads a model; a kit that cannot be used is told before anything is waited for. */
  static Opening of(Path file, Decisions by) {
    Kit kit = by.chosenKit();
    return new Opening(new FieldByField(DeckRun.survey(file, by.request(file))), kit);
  }

  /** What can be shown before anything is laid out. */
  Result framed(Decisions by, long edition) {
    Layout nothing = new Layout(kit, List.of(), List.of());
    return new Result(by, fields.survey(), nothing, edition, Optional.empty(), Progress.FRAMED);
  }
}
