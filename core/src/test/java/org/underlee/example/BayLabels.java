package org.underlee.example;

import java.util.Comparator;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.run.Design;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** The worked example of a writer: one line for each pan, for a label printer. */
public final class BayLabels {
  private BayLabels() {}

  /**
   * Lines of {@code label;length}, in the order of the labels, lengths as the reader likes them.
   */
  public static String write(Design design, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    for (FieldLayout field : design.layout().fields()) {
      field.parts().stream()
          .filter(p -> p.kind() == PartKind.PAN)
          .sorted(Comparator.comparing(Part::label))
          .forEach(p -> out.append(line(p, units)));
    }
    return out.toString();
  }

  private static String line(Part pan, UnitSystem units) {
    return pan.label() + ";" + Lengths.format(pan.cutLength(), units) + "\n";
  }
}
