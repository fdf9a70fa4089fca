package org.underlee.writeback;

import java.util.List;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.FieldLayout;
import org.underlee.step.StepFile;

/** Runs the write-back on small models. */
final class Drained {
  private Drained() {}

  static WriteBack.Written of(TinyModel model) {
    return of(model.bytes(), List.of(SampleField.layout()));
  }

  static WriteBack.Written of(byte[] bytes, List<FieldLayout> fields) {
    return WriteBack.drained(
        IfcModel.of(StepFile.of(bytes, "deck.ifc")),
        SampleField.of(fields),
        SampleField.bill(),
        SampleField.provenance());
  }
}
