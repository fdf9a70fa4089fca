package org.underlee.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    Map<String, List<DrainCases.Placed>> hung = new LinkedHashMap<>();
    StopSign stop = StopSign.here();
    for (FieldBays field : bays) {
      stop.obey();
      List<DrainCases.Placed> own =
          parts.stream()
              .filter(p -> p.field().equals(field.field().id()))
              .map(p -> new DrainCases.Placed(p.id(), p.kind(), p.element().shape()))
              .toList();
      if (!own.isEmpty()) {
        hung.put(field.field().id(), own);
      }
    }
    return DrainCases.ofParts(bays, hung).stream().map(c -> c.with(onto)).toList();
  }
}
