package org.underlee.layout;

import static org.underlee.kit.DrainValue.SCREW_LENGTH;

import java.util.List;
import java.util.Optional;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Counts the screws that hold what hangs. */
record Screws(Kit kit, PartNames names) {
  /** In each hanger and strap. */
  private static final int EACH = 2;

  /** Two screws through each of the field's parts of a kind. */
  Optional<Part> through(List<Part> parts, PartKind kind, String item, int ordinal) {
    int held = (int) parts.stream().filter(p -> p.kind() == kind).count();
    String one = kind.spoken();
    Derivation count =
        new Reckoning(kit)
            .step(Op.IS, Words.of("screws in one %s", one), EACH, Kind.COUNT, Reckoning.OWN)
            .step(Op.TIMES, Words.of("%ss of the field", one), held, Kind.COUNT, Reckoning.OWN)
            .gives(Dimension.COUNT);
    return held == 0
        ? Optional.empty()
        : Optional.of(
            names.inField(
                PartKind.FASTENER,
                ordinal,
                PartNames.Shape.counted(Items.SCREW, EACH * held)
                    .derived(List.of(count, embedment(item))),
                "through each " + one + " into the wood behind it"));
  }

  /** How deep a screw reaches into the wood behind a piece of stock. */
  Derivation embedment(String item) {
    return new Reckoning(kit)
        .from(SCREW_LENGTH)
        .minus(
            "the sheet that it goes through",
            kit.item(item).thickness(),
            new KitValue(item, kit.item(item).source()))
        .gives(Dimension.EMBEDMENT);
  }
}
