package org.underlee.report.packet.web;

import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanSheet;
import org.underlee.report.packet.Block;
import org.underlee.report.packet.DrawingFiles;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.Sheet;

/** The framing plan with a link on each bay, to be tapped by the one who stands below it. */
record TapPlan(Packet packet) {
  private static final String END = "</svg>";

  void write(StringBuilder out) {
    plan()
        .ifPresent(
            plan -> {
              String svg = WebPage.inline(DrawingFiles.svg(plan, packet.writing()));
              String what = WebPage.escaped(packet.writing().say("web.bays.plan"));
              out.append("<figure class=\"u-tap\">")
                  .append(
                      svg.replaceFirst(
                          "role=\"img\"", "role=\"group\" aria-label=\"" + what + "\""))
                  .insert(out.lastIndexOf(END), links(DrawingFiles.paper(plan, packet.writing())))
                  .append("</figure>\n");
            });
  }

  private Optional<PlanDrawing> plan() {
    return packet.sheets().stream()
        .map(Sheet::blocks)
        .flatMap(b -> b.stream())
        .filter(b -> b instanceof Block.Drawing d && d.id().equals("plan"))
        .map(b -> ((Block.Drawing) b).plan())
        .findFirst();
  }

  private String links(PlanSheet paper) {
    return packet.bays().stream().map(c -> link(c, paper)).collect(Collectors.joining());
  }

  private static String link(Packet.BayCard card, PlanSheet paper) {
    String label = WebPage.escaped(card.label());
    String corners =
        card.outline().stream()
            .map(paper::onPaper)
            .map(p -> Math.round(p.x() * 10) / 10.0 + "," + Math.round(p.y() * 10) / 10.0)
            .collect(Collectors.joining(" "));
    return "<a href=\"#bay-"
        + label
        + "\" data-bay=\""
        + label
        + "\" aria-label=\""
        + label
        + "\"><polygon points=\""
        + corners
        + "\"/></a>\n";
  }
}
