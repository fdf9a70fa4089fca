package org.underlee.run;

import java.util.List;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.ifc.IfcModel;

/**
 * What was recognised in a model.
 *
 * @param model the designer's model: an assembly of ours in the file was left aside
 * @param bays of every field, in the order of the decks
 */
public record Survey(
    Source source, IfcModel model, Framing framing, List<FieldBays> bays, List<Finding> findings) {
  public Survey {
    bays = List.copyOf(bays);
    findings = List.copyOf(findings);
  }

  public FieldBays baysOf(Field field) {
    return bays.stream().filter(b -> b.field().equals(field)).findFirst().orElseThrow();
  }
}
