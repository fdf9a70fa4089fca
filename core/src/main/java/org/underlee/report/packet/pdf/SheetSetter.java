package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanSheet;
import org.underlee.report.packet.Block;
import org.underlee.report.packet.Block.Tone;
import org.underlee.report.packet.Sheet;
import org.underlee.report.packet.pdf.PdfWriter.Pages;

/** Sets one sheet, block below block, onto as many pages as it takes. */
final class SheetSetter {
  private static final int INK = 0x1b242c;
  private static final int GREY = 0x5a646c;
  private static final int RULE = 0xb9c2c9;
  private static final int BAND = 0xeef2f4;
  private static final int ACCENT = 0x2c565c;
  private static final int ALERT = 0xa5341d;
  private static final int ALERT_BAND = 0xfbeeea;

  private static final double TITLE = 17;
  private static final double HEAD = 11.5;
  private static final double BODY = 10;
  private static final double CELL = 8.8;
  private static final double LEADING = 1.32;
  private static final double FOOT_ROOM = 13;

  private final Pages pages;
  private final Sheet sheet;
  private final double width;
  private final double height;
  private PDPageContentStream out;
  private Pen pen;
  private double y;

  SheetSetter(Pages pages, Sheet sheet) throws IOException {
    this.pages = pages;
    this.sheet = sheet;
    this.width = pages.width(sheet.wide());
    this.height = pages.height(sheet.wide());
    this.out = pages.open(sheet.wide());
    this.pen = new Pen(out, pages.fonts(), height);
    title(sheet.title());
  }

  /** Sets all blocks; answers the first page. */
  PDPage set() throws IOException {
    PDPage first = pages.last();
    for (Block block : sheet.blocks()) {
      set(block);
    }
    out.close();
    return first;
  }

  private void set(Block block) throws IOException {
    if (block instanceof Block.Heading heading) {
      heading(heading.text());
    } else if (block instanceof Block.Text text) {
      text(text.text(), text.tone());
    } else if (block instanceof Block.Facts facts) {
      facts(facts);
    } else if (block instanceof Block.Table table) {
      table(table);
    } else if (block instanceof Block.Drawing drawing) {
      drawing(drawing);
    } else if (block instanceof Block.Template template) {
      template(template);
    } else if (block instanceof Block.Picture picture) {
      picture(picture);
    } else if (block instanceof Block.Ticks ticks) {
      ticks(ticks);
    } else if (block instanceof Block.Stickers stickers) {
      stickers(stickers);
    }
  }

  private double left() {
    return Pages.MARGIN;
  }

  private double room() {
    return width - 2 * Pages.MARGIN;
  }

  private double bottom() {
    return height - FOOT_ROOM;
  }

  private Fonts fonts() {
    return pages.fonts();
  }

  private static double mm(double points) {
    return points / Pen.POINTS_PER_MM;
  }

  private void title(String text) {
    y = Pages.MARGIN + mm(TITLE);
    pen.text(left(), y - 1, text, true, TITLE, ACCENT);
    pen.line(left(), y + 1.6, left() + room(), y + 1.6, 0.5, ACCENT);
    y += 6;
  }

  private void turnPage() throws IOException {
    out.close();
    out = pages.open(sheet.wide());
    pen = new Pen(out, fonts(), height);
    y = Pages.MARGIN + mm(HEAD);
    pen.text(left(), y - 1, sheet.title(), true, HEAD, GREY);
    pen.line(left(), y + 1, left() + room(), y + 1, 0.25, RULE);
    y += 5;
  }

  private boolean isFresh() {
    return y < Pages.MARGIN + mm(TITLE) + 7;
  }

  /** Makes sure that so much fits below. */
  private void need(double mm) throws IOException {
    if (y + mm > bottom() && !isFresh()) {
      turnPage();
    }
  }

  private void heading(String text) throws IOException {
    need(22);
    y += 3 + mm(HEAD);
    pen.text(left(), y, text, true, HEAD, ACCENT);
    y += 2.5;
  }

  private void text(String text, Tone tone) throws IOException {
    boolean caution = tone == Tone.CAUTION;
    boolean heavy = tone == Tone.STRONG;
    double indent = caution ? 4 : 0;
    double step = mm(BODY) * LEADING;
    List<String> lines = Lines.of(text, fonts(), heavy, BODY, room() - 2 * indent);
    double tall = lines.size() * step + (caution ? 3 : 1.8);
    need(Math.min(tall, bottom() - Pages.MARGIN - 20));
    if (caution) {
      pen.fill(left(), y, room(), tall - 1, ALERT_BAND);
      pen.fill(left(), y, 1.4, tall - 1, ALERT);
      y += 1;
    }
    for (String line : lines) {
      need(step);
      y += step;
      pen.text(left() + indent, y - mm(BODY) * 0.25, line, heavy, BODY, INK);
    }
    y += caution ? 2.2 : 1.8;
  }

  private void facts(Block.Facts facts) throws IOException {
    double nameRoom = 0;
    for (Block.Fact fact : facts.facts()) {
      nameRoom = Math.max(nameRoom, fonts().width(fonts().writable(fact.name()), false, BODY));
    }
    double valueRoom = 0;
    for (Block.Fact fact : facts.facts()) {
      valueRoom = Math.max(valueRoom, fonts().width(fonts().writable(fact.value()), true, BODY));
    }
    double one = nameRoom + valueRoom + 10;
    int columns = (int) Math.max(1, Math.min(4, Math.floor(room() / one)));
    double across = room() / columns;
    double step = mm(BODY) * LEADING + 0.9;
    int rows = (facts.facts().size() + columns - 1) / columns;
    double valueAt = columns > 1 ? nameRoom + 3 : Math.min(nameRoom + 4, across / 2);
    for (int r = 0; r < rows; r++) {
      List<List<String>> values = new ArrayList<>();
      int tallest = 1;
      for (int c = 0; c < columns; c++) {
        int i = c * rows + r;
        List<String> lines =
            i < facts.facts().size()
                ? Lines.of(facts.facts().get(i).value(), fonts(), true, BODY, across - valueAt - 2)
                : List.of();
        values.add(lines);
        tallest = Math.max(tallest, lines.size());
      }
      need(step * tallest);
      y += step;
      for (int c = 0; c < columns; c++) {
        double x = left() + c * across;
        int i = c * rows + r;
        if (i < facts.facts().size()) {
          pen.text(x, y - 1.3, facts.facts().get(i).name(), false, BODY, GREY);
        }
        for (int l = 0; l < values.get(c).size(); l++) {
          double lineY = y - 1.3 + l * mm(BODY) * LEADING;
          pen.text(x + valueAt, lineY, values.get(c).get(l), true, BODY, INK);
        }
      }
      y += (tallest - 1) * mm(BODY) * LEADING;
    }
    y += 1.5;
  }

  private void table(Block.Table table) throws IOException {
    double[] widths = TableWidths.of(table, fonts(), CELL, room());
    List<String> names = table.columns().stream().map(Block.Column::name).toList();
    need(Math.min(45, 14 + 6.5 * table.rows().size()));
    row(table, names, widths, true, false);
    boolean band = false;
    for (List<String> row : table.rows()) {
      double tall = tall(row, widths, false);
      if (y + Math.min(tall, bottom() - 40) > bottom()) {
        turnPage();
        row(table, names, widths, true, false);
      }
      row(table, row, widths, false, band);
      band = !band;
    }
    y += 2.5;
  }

  private List<List<String>> cells(List<String> row, double[] widths, boolean head) {
    List<List<String>> cells = new ArrayList<>();
    for (int c = 0; c < widths.length; c++) {
      double own = widths[c] - 2 * TableWidths.PAD + 0.01;
      cells.add(Lines.of(row.get(c), fonts(), head, CELL, own));
    }
    return cells;
  }

  private double tall(List<String> row, double[] widths, boolean head) {
    int lines = cells(row, widths, head).stream().mapToInt(List::size).max().orElse(1);
    return lines * mm(CELL) * LEADING + 1.7;
  }

  private void row(Block.Table table, List<String> row, double[] widths, boolean head, boolean band)
      throws IOException {
    List<List<String>> cells = cells(row, widths, head);
    double step = mm(CELL) * LEADING;
    double across = java.util.Arrays.stream(widths).sum();
    int lines = cells.stream().mapToInt(List::size).max().orElse(1);
    int done = 0;
    while (done < lines) {
      int fit = Math.max(1, (int) Math.floor((bottom() - y - 1.7) / step));
      int upTo = Math.min(lines, done + fit);
      double tall = (upTo - done) * step + 1.7;
      if (band) {
        pen.fill(left(), y, across, tall, BAND);
      }
      double x = left();
      for (int c = 0; c < widths.length; c++) {
        for (int l = done; l < Math.min(upTo, cells.get(c).size()); l++) {
          String line = cells.get(c).get(l);
          double off =
              table.columns().get(c).numbers()
                  ? widths[c] - TableWidths.PAD - fonts().width(line, head, CELL)
                  : TableWidths.PAD;
          double base = y + 0.85 + (l - done + 1) * step - mm(CELL) * 0.3;
          pen.text(x + off, base, line, head, CELL, INK);
        }
        x += widths[c];
      }
      y += tall;
      pen.line(left(), y, left() + across, y, head ? 0.4 : 0.12, head ? ACCENT : RULE);
      done = upTo;
      if (done < lines) {
        turnPage();
      }
    }
  }

  private void drawing(Block.Drawing drawing) throws IOException {
    double most = (height - 2 * Pages.MARGIN - 12) * drawing.share();
    PlanSheet paper =
        PlanSheet.fitting(
            drawing.plan(),
            room(),
            most,
            1,
            pages.packet().writing().isMetric() ? PlanSheet.METRIC_SCALES : PlanSheet.INCH_SCALES);
    String scale = pages.packet().writing().say("drawing.scale", drawing.caption(), scale(paper));
    place(drawing.plan(), paper, scale);
  }

  private static String scale(PlanSheet paper) {
    return "1:" + Math.round(paper.denominator());
  }

  private void template(Block.Template template) throws IOException {
    place(template.plan(), PlanSheet.of(template.plan(), 1, 1), template.caption());
  }

  private void place(org.underlee.picture.PlanDrawing plan, PlanSheet paper, String caption)
      throws IOException {
    double step = mm(CELL) * LEADING;
    List<String> lines = Lines.of(caption, fonts(), false, CELL, room());
    need(paper.heightMm() + lines.size() * step + 4);
    double x = left() + Math.max(0, (room() - paper.widthMm()) / 2);
    new DrawingOnPage(pen, fonts(), paper, x, y).draw(plan);
    y += paper.heightMm();
    for (String line : lines) {
      y += step;
      pen.text(left(), y, line, false, CELL, GREY);
    }
    y += 4;
  }

  private void picture(Block.Picture picture) throws IOException {
    double wide = room();
    double tall = wide * picture.image().height() / picture.image().width();
    need(tall + 8);
    pen.image(Pixels.of(pages.document(), picture.image()), left(), y, wide, tall);
    y += tall + mm(CELL) * LEADING;
    pen.text(left(), y, picture.caption(), false, CELL, GREY);
    y += 3;
  }

  private void ticks(Block.Ticks ticks) throws IOException {
    double step = mm(BODY) * LEADING;
    double small = mm(CELL) * LEADING;
    for (Block.Tick tick : ticks.ticks()) {
      List<String> text = Lines.of(tick.text(), fonts(), true, BODY, room() - 8);
      List<String> note =
          tick.note().isEmpty()
              ? List.of()
              : Lines.of(tick.note(), fonts(), false, CELL, room() - 8);
      need(text.size() * step + note.size() * small + 3);
      pen.box(left(), y + 0.7, 4, 4, 0.35, INK);
      for (String line : text) {
        y += step;
        pen.text(left() + 7.5, y - 0.9, line, true, BODY, INK);
      }
      for (String line : note) {
        y += small;
        pen.text(left() + 7.5, y - 0.7, line, false, CELL, GREY);
      }
      y += 2.6;
    }
  }

  private void stickers(Block.Stickers stickers) throws IOException {
    double wide = 61;
    double tall = 27;
    int across = Math.max(1, (int) Math.floor(room() / wide));
    double each = room() / across;
    int done = 0;
    while (done < stickers.stickers().size()) {
      need(tall);
      int row = Math.min(across, stickers.stickers().size() - done);
      for (int c = 0; c < row; c++) {
        sticker(stickers.stickers().get(done + c), left() + c * each, each, tall);
      }
      y += tall;
      done += row;
    }
  }

  private void sticker(Block.Sticker s, double x, double wide, double tall) {
    pen.outline(
        List.of(
            new Vec2(x, y),
            new Vec2(x + wide, y),
            new Vec2(x + wide, y + tall),
            new Vec2(x, y + tall)),
        0.15,
        RULE,
        List.of(2.0, 1.0));
    pen.text(x + 3, y + 8, s.label(), true, 15, INK);
    pen.text(x + 3, y + 13.5, s.part(), false, BODY, INK);
    pen.text(x + 3, y + 18.5, s.size(), true, BODY, INK);
    pen.fill(
        List.of(
            List.of(
                new Vec2(x + 3, y + 22.3), new Vec2(x + 7, y + 20.6), new Vec2(x + 7, y + 24.0))),
        ACCENT);
    pen.text(x + 8.5, y + 23.4, s.end(), false, CELL, ACCENT);
  }
}
