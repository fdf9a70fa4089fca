package org.underlee.report;

import java.util.List;
import org.underlee.clash.ClashFinder;
import org.underlee.clash.Tracked;
import org.underlee.clash.WayOut;
import org.underlee.run.Coordination;
import org.underlee.units.Lengths.UnitSystem;

/** Writes what is in the assembly's way for people: issues, not pairs, the gravest first. */
public final class ClashText {
  private ClashText() {}

  public static String write(Coordination coordination, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    ClashFinder.Found found = coordination.found();
    out.append(coordination.parts().size())
        .append(" parts against ")
        .append(coordination.things().size())
        .append(" things near them: ")
        .append(found.examined())
        .append(" of ")
        .append(found.pairs())
        .append(" pairs examined, ")
        .append(found.clashes().size())
        .append(" in each other's way, ")
        .append(found.solved())
        .append(" at crossings that the layout deals with\n");
    List<Tracked> issues = coordination.issues();
    out.append(issues.isEmpty() ? "No issues" : issues(coordination, units)).append('\n');
    int number = 0;
    for (Tracked t : issues) {
      if (t.isPending()) {
        pending(out, ++number, t, units);
      }
    }
    for (Tracked t : issues) {
      if (t.status() == Tracked.Status.GONE) {
        out.append("gone: ").append(t.title()).append('\n');
      }
    }
    return out.toString();
  }

  private static String issues(Coordination coordination, UnitSystem units) {
    return "Issues: " + coordination.register().counts(coordination.issues()).in(units);
  }

  private static void pending(StringBuilder out, int number, Tracked t, UnitSystem units) {
    out.append(number)
        .append(". ")
        .append(t.status().word())
        .append(' ')
        .append(t.cause().word())
        .append(": ")
        .append(t.issue().map(i -> i.words().in(units)).orElse(t.title()))
        .append('\n');
    for (WayOut way : t.ways()) {
      out.append("   - ").append(way.words().in(units)).append('\n');
      way.typed().ifPresent(o -> out.append("     Try: design ").append(o).append('\n'));
    }
  }
}
