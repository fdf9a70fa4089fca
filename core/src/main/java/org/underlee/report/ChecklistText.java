package org.underlee.report;

import java.util.List;
import org.underlee.check.SiteQuestion;

/** Writes the questions that only someone on site can answer, to print and tick off. */
public final class ChecklistText {
  private ChecklistText() {}

  public static String write(List<SiteQuestion> questions) {
    StringBuilder out =
        new StringBuilder("\nTo look at on site: the model cannot tell, and work depends on it.\n");
    for (SiteQuestion q : questions) {
      out.append("\n[ ] ").append(q.text()).append('\n');
      out.append("    ").append(q.why()).append(" (").append(q.source()).append(")\n");
    }
    return out.toString();
  }
}
