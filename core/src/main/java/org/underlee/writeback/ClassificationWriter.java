package org.underlee.writeback;

import java.util.Collection;
import java.util.List;
import org.underlee.writeback.ClassificationData.ClassificationSystem;
import org.underlee.writeback.ClassificationData.Code;

/**
 * Codes for our parts in each system of classification that the designer's project uses and we know
 * codes of: an own reference below the designer's system, and the parts related to it.
 */
final class ClassificationWriter {
  private final Draft draft;

  ClassificationWriter(Draft draft) {
    this.draft = draft;
  }

  void write(Collection<PlacedPart> parts) {
    for (Host.Classification used : draft.host().classifications()) {
      for (ClassificationSystem system : ClassificationData.systems()) {
        if (system.isMeantBy(used.name())) {
          system.codes().forEach(c -> write(used, c, parts));
        }
      }
    }
  }

  private void write(Host.Classification used, Code code, Collection<PlacedPart> parts) {
    List<Value> elements =
        parts.stream().filter(p -> code.isFor(p.part().kind())).map(PlacedPart::element).toList();
    if (!elements.isEmpty()) {
      draft.relate(
          "IfcRelAssociatesClassification",
          draft.ids().of("", "associates-classification", used.name() + " " + code.code()),
          Value.list(elements),
          reference(used, code));
    }
  }

  private Value reference(Host.Classification used, Code code) {
    Value number = Value.label(code.code());
    Value title = Value.label(code.title());
    Value unset = Value.UNSET;
    return draft.ifc2x3()
        ? draft.out().add("IfcClassificationReference", unset, number, title, used.system())
        : draft
            .out()
            .add("IfcClassificationReference", unset, number, title, used.system(), unset, unset);
  }
}
