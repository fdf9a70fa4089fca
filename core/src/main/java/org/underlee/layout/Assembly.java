package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;

/** What the family of a kit asks of a field, and what it hangs there above the gutter. */
interface Assembly {
  static Assembly of(FieldBays bays, Kit kit) {
    return switch (kit.family()) {
      case PANS -> new PanAssembly(bays, kit);
      case DRAPE -> new DrapeAssembly(bays, kit);
      case SHEET -> new SheetAssembly(bays, kit);
    };
  }

  /** Why a bay cannot be used, whatever the seat. */
  Optional<Finding> unfit(BayRun run);

  /** Whether what is hung can end there. */
  boolean canEndAt(LowEnd end);

  /** All parts above the gutter, in building order. */
  List<Part> parts(FieldPlan plan, PartNames names);

  /** Height of the lowest place that water drips from; the gutter's rim is below it. */
  double lowest(FieldPlan plan);

  /** What whoever builds it must know. */
  List<Finding> notes(FieldPlan plan);
}
