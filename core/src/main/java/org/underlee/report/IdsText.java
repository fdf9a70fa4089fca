package org.underlee.report;

import java.util.Locale;
import org.underlee.ids.IdsReport;
import org.underlee.run.IdsChecked;

/** Writes what a check by an IDS file found for people: a line for each specification. */
public final class IdsText {
  private IdsText() {}

  public static String write(IdsChecked checked) {
    StringBuilder out = new StringBuilder();
    for (IdsReport.Outcome o : checked.report().outcomes()) {
      out.append(String.format(Locale.ROOT, "%-7s %s: ", word(o.status()), o.name()))
          .append(o.applicable())
          .append(o.applicable() == 1 ? " element" : " elements")
          .append(o.failed() == 0 ? "" : ", " + o.failed() + " lack something")
          .append('\n');
    }
    return out.toString();
  }

  static String word(IdsReport.Status status) {
    return status.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
