package org.underlee.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.underlee.run.BayChange;
import org.underlee.run.Resynced;
import org.underlee.units.Lengths.UnitSystem;

/** Writes what changed with a new export for people: a table as text, and as CSV. */
public final class ResyncText {
  private static final List<String> HEADINGS =
      List.of(
          "field",
          "bay",
          "change",
          "matched by",
          "parts same",
          "parts changed",
          "parts new",
          "parts gone",
          "why");

  private ResyncText() {}

  public static String write(Resynced resynced, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    for (BayChange.Kind kind : BayChange.Kind.values()) {
      out.append(out.isEmpty() ? "" : ", ")
          .append(resynced.count(kind))
          .append(' ')
          .append(kind.word());
    }
    out.append(" of the bays of ").append(resynced.old().file()).append('\n');
    for (Resynced.Decision d : resynced.decisions()) {
      out.append(d.kept() ? "kept: " : "changed: ")
          .append(d.name())
          .append(' ')
          .append(d.value())
          .append(" of ")
          .append(d.of())
          .append(d.why().isEmpty() ? "" : "; " + d.why())
          .append('\n');
    }
    for (BayChange change : resynced.bays()) {
      if (change.kind() != BayChange.Kind.KEPT) {
        out.append(line(change, units));
      }
    }
    return out.toString();
  }

  private static String line(BayChange c, UnitSystem units) {
    return String.format(
        Locale.ROOT,
        "  %-5s %s/%s: %s; parts: %d as they were, %d to make anew, %d more, %d to take out\n",
        c.kind().word(),
        c.field(),
        c.bay(),
        why(c, units),
        c.parts().same(),
        c.parts().changed(),
        c.parts().added(),
        c.parts().gone());
  }

  private static String why(BayChange c, UnitSystem units) {
    return c.why().stream().map(w -> w.in(units)).collect(Collectors.joining("; "));
  }

  /** The table of all bays, in RFC 4180's form with a heading. */
  public static String csv(Resynced resynced, UnitSystem units) {
    StringBuilder out = new StringBuilder(String.join(",", HEADINGS)).append("\r\n");
    for (BayChange c : resynced.bays()) {
      List<String> cells =
          List.of(
              c.field(),
              c.bay(),
              c.kind().word(),
              c.matchedBy().map(BayChange.MatchedBy::word).orElse(""),
              Integer.toString(c.parts().same()),
              Integer.toString(c.parts().changed()),
              Integer.toString(c.parts().added()),
              Integer.toString(c.parts().gone()),
              why(c, units));
      out.append(cells.stream().map(ResyncText::quoted).collect(Collectors.joining(",")))
          .append("\r\n");
    }
    return out.toString();
  }

  private static String quoted(String cell) {
    return cell.matches("[^\",\r\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }
}
