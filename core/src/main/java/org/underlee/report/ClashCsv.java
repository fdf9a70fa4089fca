package org.underlee.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.underlee.clash.Clash;
import org.underlee.clash.Tracked;
import org.underlee.clash.WayOut;
import org.underlee.framing.BuildingElement;
import org.underlee.run.Coordination;

/** Writes issues as one CSV table (RFC 4180, CR LF, UTF-8): a row for each pair in the way. */
public final class ClashCsv {
  private static final List<String> HEAD =
      List.of(
          "issue",
          "status",
          "cause",
          "part",
          "file",
          "instance",
          "global_id",
          "ifc_class",
          "name",
          "amount_mm",
          "limit_mm",
          "measured",
          "x_mm",
          "y_mm",
          "z_mm",
          "accepted",
          "ways_out");

  private ClashCsv() {}

  public static String write(Coordination coordination) {
    List<List<String>> rows = new ArrayList<>(List.of(HEAD));
    for (Tracked t : coordination.issues()) {
      t.issue().ifPresent(i -> i.clashes().forEach(c -> rows.add(row(coordination, t, c))));
    }
    return rows.stream()
        .map(r -> r.stream().map(Csv::cell).collect(Collectors.joining(",")))
        .collect(Collectors.joining("\r\n", "", "\r\n"));
  }

  private static List<String> row(Coordination coordination, Tracked t, Clash c) {
    BuildingElement e = c.thing().element();
    return List.of(
        t.id(),
        t.status().word(),
        t.cause().word(),
        c.part().id(),
        e.file().orElse(coordination.checked().survey().source().file()),
        Long.toString(e.instance()),
        e.globalId(),
        e.ifcClass(),
        e.name(),
        mm(c.amount()),
        mm(c.limit()),
        Boolean.toString(c.measured()),
        mm(c.at().x()),
        mm(c.at().y()),
        mm(c.at().z()),
        t.reason().orElse(""),
        t.ways().stream()
            .map(WayOut::words)
            .map(Object::toString)
            .collect(Collectors.joining("; ")));
  }

  private static String mm(double metres) {
    return Json.mm(metres).toPlainString();
  }
}
