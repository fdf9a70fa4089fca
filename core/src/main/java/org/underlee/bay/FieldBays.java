package org.underlee.bay;

import java.util.List;
import java.util.Optional;
import org.underlee.framing.Field;

/** A field with its bays, in order of u. */
public record FieldBays(Field field, List<Bay> bays) {
  /** Of these, what falls away from the other side of the field's high line, where it has one. */
  public Optional<FieldBays> beyond(List<FieldBays> all) {
    return field
        .highLine()
        .flatMap(h -> all.stream().filter(b -> b.field.id().equals(h.other())).findFirst());
  }
}
