package org.underlee.report;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.underlee.drainage.Leak;
import org.underlee.drainage.LeakCause;
import org.underlee.run.Checked;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/** Writes what a check of an assembly found for people. */
public final class CheckText {
  private CheckText() {}

  public static String write(Checked checked, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    out.append(checked.parts().size()).append(" parts of an assembly\n");
    out.append(DesignText.dry(checked.proof(), units));
    Map<LeakCause, Double> areas = new EnumMap<>(LeakCause.class);
    for (Leak leak : checked.proof().leaks()) {
      areas.merge(leak.cause(), leak.area(), Double::sum);
    }
    areas.forEach(
        (cause, area) ->
            out.append(
                    String.format(
                        Locale.ROOT, "  %10s  %s", Quantity.area(area).in(units), cause.why()))
                .append('\n'));
    return out.toString();
  }
}
