package org.underlee.writeback;

import java.util.List;
import java.util.Optional;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.step.StepFile;

/** Runs the write-back on small models. */
final class Drained {
  private Drained() {}

  static WriteBack.Written of(TinyModel model) {
    return of(model, model.bytes(), List.of(SampleField.layout()));
  }

  static WriteBack.Written of(TinyModel model, byte[] bytes, List<FieldLayout> fields) {
    StepFile file = StepFile.of(bytes, "deck.ifc");
    double metre = model.length().metres;
    boolean foot = model.length() == TinyModel.Length.FOOT;
    ModelUnits units = new ModelUnits(metre, 1, 1, 1, foot ? Math.PI / 180 : 1);
    double c = Math.sqrt(0.75);
    Transform storey =
        new Transform(new Vec3(10, 5, 3), new Vec3(c, 0.5, 0), new Vec3(-0.5, c, 0), Vec3.Z);
    Host host =
        new HostReader(file, units, id -> Optional.of(id == 41 ? storey : Transform.IDENTITY))
            .read();
    return WriteBack.drained(
        file, host, fields, SampleField.stock(), SampleField.bill(), SampleField.provenance());
  }
}
