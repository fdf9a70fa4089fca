package org.underlee.report.packet.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import org.underlee.picture.Png;
import org.underlee.report.packet.Block;
import org.underlee.report.packet.DrawingFiles;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.Sheet;
import org.underlee.report.packet.Writing;

/**
 * Sets a packet as one HTML file that needs no network: it turns the deck under a finger, shows
 * each bay's marks and cuts, and keeps ticks on the device. Without scripts everything but the
 * turning and the keeping of ticks is still there.
 */
public final class WebPage {
  /** Sheets that only paper is good for: full size, and stickers. */
  private static final Set<String> PAPER_ONLY = Set.of("templates", "labels");

  private final Packet packet;
  private final StringBuilder out = new StringBuilder();

  private WebPage(Packet packet) {
    this.packet = packet;
  }

  public static String write(Packet packet) {
    WebPage page = new WebPage(packet);
    page.body();
    return resource("page.html")
        .replace("@LANGUAGE@", packet.writing().language())
        .replace("@TITLE@", escaped(packet.title()))
        .replace("@STYLE@", resource("page.css"))
        .replace("@BODY@", page.out)
        .replace("@KEY@", packet.key())
        .replace("@SCENE@", SceneData.json(packet.scene(), packet.camera()))
        .replace("@SCRIPT@", resource("page.js"));
  }

  private static String resource(String name) {
    try (InputStream in = Packet.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("reading a resource of the program", e);
    }
  }

  private Writing writing() {
    return packet.writing();
  }

  private List<Sheet> sheets() {
    return packet.sheets().stream().filter(s -> !PAPER_ONLY.contains(s.id())).toList();
  }

  private void body() {
    out.append("<header><h1>").append(escaped(packet.title())).append("</h1><p>");
    out.append(escaped(packet.source())).append("</p></header>\n<nav aria-label=\"");
    out.append(escaped(writing().say("web.sheets"))).append("\"><ul>");
    link("turn", writing().say("web.turn"));
    link("bays", writing().say("web.bays"));
    sheets().forEach(s -> link(s.id(), s.title()));
    out.append("</ul></nav>\n<main>\n");
    turn();
    bays();
    sheets().forEach(this::sheet);
    out.append("</main>\n");
  }

  private void link(String id, String text) {
    out.append("<li><a href=\"#")
        .append(id)
        .append("\">")
        .append(escaped(text))
        .append("</a></li>");
  }

  private void turn() {
    String how = escaped(writing().say("web.turn.how"));
    out.append("<section id=\"turn\"><h2>").append(escaped(writing().say("web.turn")));
    out.append("</h2><p>")
        .append(how)
        .append("</p><canvas id=\"deck\" tabindex=\"0\" role=\"img\"");
    out.append(" aria-label=\"")
        .append(escaped(writing().say("web.turn.what")))
        .append("\"></canvas>");
    out.append("<p id=\"no-turn\" hidden>").append(escaped(writing().say("web.turn.not")));
    out.append("</p></section>\n");
  }

  private void bays() {
    out.append("<section id=\"bays\"><h2>").append(escaped(writing().say("web.bays")));
    out.append("</h2><p>").append(escaped(writing().say("web.bays.how"))).append("</p>");
    new TapPlan(packet).write(out);
    out.append("<ul class=\"u-bays\">");
    for (Packet.BayCard card : packet.bays()) {
      String label = escaped(card.label());
      out.append("<li><a href=\"#bay-" + label + "\" data-bay=\"" + label + "\">");
      out.append(label).append("</a></li>");
    }
    out.append("</ul>\n");
    for (Packet.BayCard card : packet.bays()) {
      out.append("<details id=\"bay-").append(escaped(card.label())).append("\"><summary>");
      out.append(escaped(card.label())).append("</summary>");
      card.blocks().forEach(this::block);
      out.append("</details>\n");
    }
    out.append("</section>\n");
  }

  private void sheet(Sheet sheet) {
    out.append("<section id=\"").append(sheet.id()).append("\"><h2>");
    out.append(escaped(sheet.title())).append("</h2>\n");
    sheet.blocks().forEach(this::block);
    out.append("</section>\n");
  }

  private void block(Block block) {
    if (block instanceof Block.Heading heading) {
      out.append("<h3>").append(escaped(heading.text())).append("</h3>\n");
    } else if (block instanceof Block.Text text) {
      String tone = text.tone().name().toLowerCase(java.util.Locale.ROOT);
      out.append("<p class=\"u-").append(tone).append("\">");
      out.append(escaped(text.text())).append("</p>\n");
    } else if (block instanceof Block.Facts facts) {
      out.append("<dl>");
      for (Block.Fact fact : facts.facts()) {
        out.append("<div><dt>").append(escaped(fact.name())).append("</dt><dd>");
        out.append(escaped(fact.value())).append("</dd></div>");
      }
      out.append("</dl>\n");
    } else if (block instanceof Block.Table table) {
      table(table);
    } else if (block instanceof Block.Drawing drawing) {
      figure(inline(DrawingFiles.svg(drawing.plan(), writing())), drawing.caption());
    } else if (block instanceof Block.Picture picture) {
      String data = Base64.getEncoder().encodeToString(Png.encode(picture.image()));
      String alt = escaped(picture.caption());
      figure("<img alt=\"" + alt + "\" src=\"data:image/png;base64," + data + "\">", "");
    } else if (block instanceof Block.Ticks ticks) {
      ticks(ticks);
    }
  }

  /** Tables may be wider than a phone: they scroll by themselves, with keys too. */
  private void table(Block.Table table) {
    String names = String.join(", ", table.columns().stream().map(Block.Column::name).toList());
    out.append("<div class=\"u-wide\" role=\"group\" tabindex=\"0\" aria-label=\"");
    out.append(escaped(names)).append("\"><table><thead><tr>");
    for (Block.Column column : table.columns()) {
      out.append("<th scope=\"col\"").append(number(column)).append('>');
      out.append(escaped(column.name())).append("</th>");
    }
    out.append("</tr></thead><tbody>\n");
    for (List<String> row : table.rows()) {
      out.append("<tr>");
      for (int c = 0; c < row.size(); c++) {
        out.append("<td").append(number(table.columns().get(c))).append('>');
        out.append(escaped(row.get(c))).append("</td>");
      }
      out.append("</tr>\n");
    }
    out.append("</tbody></table></div>\n");
  }

  private static String number(Block.Column column) {
    return column.numbers() ? " class=\"u-number\"" : "";
  }

  private void figure(String content, String caption) {
    out.append("<figure>").append(content);
    if (!caption.isEmpty()) {
      out.append("<figcaption>").append(escaped(caption)).append("</figcaption>");
    }
    out.append("</figure>\n");
  }

  /** As part of a page: without the XML head, and as wide as the page lets it be. */
  static String inline(String svg) {
    String bare = svg.substring(svg.indexOf("<svg"));
    return bare.replaceFirst(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"([0-9.]+)mm\" height=\"[0-9.]+mm\"",
        "<svg role=\"img\" style=\"width:$1mm\"");
  }

  private void ticks(Block.Ticks ticks) {
    out.append("<ul class=\"u-ticks\">");
    for (Block.Tick tick : ticks.ticks()) {
      out.append("<li><label><input type=\"checkbox\" data-tick=\"").append(escaped(tick.id()));
      out.append("\"><span>").append(escaped(tick.text()));
      if (!tick.note().isEmpty()) {
        out.append("<small>").append(escaped(tick.note())).append("</small>");
      }
      out.append("</span></label></li>\n");
    }
    out.append("</ul>\n");
  }

  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
