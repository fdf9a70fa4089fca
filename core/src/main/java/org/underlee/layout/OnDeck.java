package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.BothWays;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Field;

/** The fields of one deck, for what a field must know of the others. */
record OnDeck(List<FieldBays> fields) {
  /** Name of a half that is only looked at. */
  private static final String LOOKED_AT = "looked-at";

  /** Of a field that is alone. */
  static final OnDeck ALONE = new OnDeck(List.of());

  OnDeck {
    fields = List.copyOf(fields);
  }

  /** What falls away from the other side of a field's high line, where it has one. */
  Optional<FieldBays> beyond(FieldBays own) {
    return own.beyond(fields);
  }

  /** What a field would be parted in, if it may fall both ways. */
  Optional<List<FieldBays>> halves(FieldBays own) {
    List<Field> all = fields.stream().map(FieldBays::field).toList();
    return BothWays.standsFree(own.field(), all) ? BothWays.of(own, LOOKED_AT) : Optional.empty();
  }
}
