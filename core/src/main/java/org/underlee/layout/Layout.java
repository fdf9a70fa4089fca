package org.underlee.layout;

import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;

/** Everything that was laid out with one kit. */
public record Layout(Kit kit, List<FieldLayout> fields, List<Finding> findings) {
  public Layout {
    fields = List.copyOf(fields);
    findings = List.copyOf(findings);
  }

  public List<Part> parts() {
    return fields.stream().flatMap(f -> f.parts().stream()).toList();
  }
}
