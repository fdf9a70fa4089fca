package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.ifc.IfcSchema;

/** Writes {@code IfcRelInterferesElements}: no order is implied, and no geometry is given. */
final class InterferenceWriter {
  private final Draft draft;

  InterferenceWriter(Draft draft) {
    this.draft = draft;
  }

  void write(List<Interference> interferences, Map<String, PlacedPart> parts) {
    requireKnown(interferences);
    for (Interference one : interferences) {
      PlacedPart part = parts.get(one.part());
      if (part == null) {
        throw new IllegalArgumentException("no part is called " + one.part());
      }
      write(one, part);
    }
  }

  private void requireKnown(List<Interference> interferences) {
    if (draft.ifc2x3() && !interferences.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "IFC2X3 has no relationship for things that are in each other's way",
          "Leave the option out, or have the model exported as IFC4; BCF tells the same.");
    }
  }

  private void write(Interference one, PlacedPart part) {
    List<Value> rest =
        new ArrayList<>(
            List.of(
                Value.reference(one.instance()),
                part.element(),
                Value.UNSET,
                Value.text(one.type()),
                Value.enumeration("F")));
    if (draft.host().schema() == IfcSchema.IFC4X3) {
      rest.add(Value.UNSET); // the space that they share
    }
    String name = one.part() + ">" + one.globalId() + ">" + one.type();
    String id = draft.ids().of(part.part().field(), "interferes", name);
    draft.root("IfcRelInterferesElements", id, Value.UNSET, Value.UNSET, rest);
  }
}
