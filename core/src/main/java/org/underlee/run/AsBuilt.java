package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.DrainCase;
import org.underlee.drainage.DrainCases;
import org.underlee.finding.StopSign;
import org.underlee.layout.Onto;

/** The cases to be proved for an assembly as it is in a model. */
final class AsBuilt {
  private AsBuilt() {}

  /** One case for each field that parts are written for. */
  static List<DrainCase> cases(List<FieldBays> bays, List<WrittenPart> parts, List<Onto> onto) {
    List<DrainCase> cases = new ArrayList<>();
    StopSign stop = StopSign.here();
    for (FieldBays field : bays) {
      stop.obey();
      List<DrainCases.Placed> own =
          parts.stream()
              .filter(p -> p.field().equals(field.field().id()))
              .map(p -> new DrainCases.Placed(p.id(), p.kind(), p.element().shape()))
              .toList();
      if (!own.isEmpty()) {
        cases.add(DrainCases.of(field, own).with(onto));
      }
    }
    return cases;
  }
}
