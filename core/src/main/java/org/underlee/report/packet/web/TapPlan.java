package org.underlee.report.packet.web;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.picture.PlanSheet;
import org.underlee.report.packet.Block;
import org.underlee.report.packet.DrawingFiles;
import org.underlee.report.packet.Packet;

/** The framing plans with a link on each bay, to be tapped by the one who stands below it. */
record TapPlan(Packet packet) {
  private static final String END = "</svg>";

  void write(StringBuilder out) {
    packet.bays().stream()
        .map(Packet.BayCard::plan)
        .distinct()
        .flatMap(id -> drawing(id).stream())
        .forEach(drawing -> write(drawing, out));
  }

  private void write(Block.Drawing drawing, StringBuilder out) {
    String svg = WebPage.inline(DrawingFiles.svg(drawing.plan(), packet.writing()));
    String what = WebPage.escaped(packet.writing().say("web.bays.plan"));
    out.append("<figure class=\"u-tap\">")
        .append(svg.replaceFirst("role=\"img\"", "role=\"group\" aria-label=\"" + what + "\""))
        .insert(out.lastIndexOf(END), links(drawing))
        .append("</figure>\n");
  }

  private Optional<Block.Drawing> drawing(String id) {
    return packet.sheets().stream()
        .flatMap(s -> s.blocks().stream())
        .flatMap(
            b -> b instanceof Block.Drawing d && d.id().equals(id) ? Stream.of(d) : Stream.of())
        .findFirst();
  }

  private String links(Block.Drawing drawing) {
    PlanSheet paper = DrawingFiles.paper(drawing.plan(), packet.writing());
    return packet.bays().stream()
        .filter(c -> c.plan().equals(drawing.id()))
        .map(c -> link(c, paper))
        .collect(Collectors.joining());
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
