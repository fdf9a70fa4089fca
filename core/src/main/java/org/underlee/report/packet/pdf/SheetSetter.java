package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.List;
import org.underlee.report.packet.Block;
import org.underlee.report.packet.Block.Tone;
import org.underlee.report.packet.Sheet;

/**
 * Sets one sheet, block below block, onto as many pages as it takes. A sheet whose last page would
 * hold next to nothing is set a little tighter, where that saves the page.
 */
record SheetSetter(PageFlow flow, Setting set) {
  private static final int ALERT = 0xa5341d;
  private static final int ALERT_BAND = 0xfbeeea;

  /** A last page that is filled less than this is not worth a sheet of paper. */
  private static final double HARDLY = 0.3;

  static void set(Pages pages, Sheet sheet) throws IOException {
    set(pages, sheet, best(pages, sheet));
  }

  private static PageFlow set(Pages pages, Sheet sheet, Setting setting) throws IOException {
    try (PageFlow flow = new PageFlow(pages, sheet, setting)) {
      new SheetSetter(flow, setting).set(sheet.blocks());
      return flow;
    }
  }

  private static Setting best(Pages pages, Sheet sheet) throws IOException {
    Setting usual = new Setting(Setting.SCALES.get(0));
    if (!isElastic(sheet)) {
      return usual;
    }
    PageFlow first = trial(pages, sheet, usual);
    if (first.count() == 1 || first.filled() > HARDLY) {
      return usual;
    }
    for (int i = 1; i < Setting.SCALES.size(); i++) {
      Setting tighter = new Setting(Setting.SCALES.get(i));
      if (trial(pages, sheet, tighter).count() < first.count()) {
        return tighter;
      }
    }
    return usual;
  }

  /** What is printed at full size stays so: nothing is gained by small letters beside it. */
  private static boolean isElastic(Sheet sheet) {
    return sheet.blocks().stream()
        .noneMatch(b -> b instanceof Block.Template || b instanceof Block.Stickers);
  }

  /** On pages that are thrown away. */
  private static PageFlow trial(Pages pages, Sheet sheet, Setting setting) throws IOException {
    return set(new ScrapPages(pages), sheet, setting);
  }

  private void set(List<Block> blocks) throws IOException {
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i) instanceof Block.Heading heading) {
        heading(heading.text(), following(blocks, i + 1));
      } else {
        set(blocks.get(i));
      }
    }
  }

  /** What must stand on the page of a heading, mm: the texts below it, and what they speak of. */
  private double following(List<Block> blocks, int from) {
    double tall = 0;
    for (int i = from; i < blocks.size(); i++) {
      Block block = blocks.get(i);
      if (block instanceof Block.Text text) {
        tall += tall(text);
      } else if (block instanceof Block.Drawing drawing) {
        return tall + new FigureSetter(flow, set).least(drawing);
      } else if (block instanceof Block.Table table) {
        return tall + TableSetter.least(table);
      } else {
        break;
      }
    }
    return tall;
  }

  private void set(Block block) throws IOException {
    if (block instanceof Block.Text text) {
      text(text);
    } else if (block instanceof Block.Facts facts) {
      new FactSetter(flow, set).set(facts);
    } else if (block instanceof Block.Table table) {
      new TableSetter(flow, set).set(table);
    } else if (block instanceof Block.Drawing drawing) {
      new FigureSetter(flow, set).set(drawing);
    } else if (block instanceof Block.Template template) {
      new FigureSetter(flow, set).set(template);
    } else if (block instanceof Block.Picture picture) {
      new FigureSetter(flow, set).set(picture);
    } else if (block instanceof Block.Ticks ticks) {
      ticks(ticks);
    } else if (block instanceof Block.Stickers stickers) {
      new StickerSetter(flow, set).set(stickers);
    }
  }

  private void heading(String text, double following) throws IOException {
    double own = 5.5 + Setting.mm(set.head());
    flow.need(own + Math.max(12, Math.min(following, flow.free() - own)));
    flow.down(own - 2.5);
    flow.pen().text(flow.left(), flow.y(), text, true, set.head(), PageFlow.ACCENT);
    flow.down(2.5);
  }

  private static double indent(Block.Text text) {
    return text.tone() == Tone.CAUTION ? 4 : 0;
  }

  private List<String> lines(Block.Text text) {
    boolean heavy = text.tone() == Tone.STRONG;
    double room = flow.room() - 2 * indent(text);
    return Lines.of(text.text(), flow.fonts(), heavy, set.body(), room);
  }

  private double tall(Block.Text text) {
    return lines(text).size() * set.bodyStep() + (text.tone() == Tone.CAUTION ? 3 : 1.8);
  }

  private void text(Block.Text text) throws IOException {
    boolean caution = text.tone() == Tone.CAUTION;
    double tall = tall(text);
    flow.need(Math.min(tall, flow.free()));
    if (caution) {
      flow.pen().fill(flow.left(), flow.y(), flow.room(), tall - 1, ALERT_BAND);
      flow.pen().fill(flow.left(), flow.y(), 1.4, tall - 1, ALERT);
      flow.down(1);
    }
    double x = flow.left() + indent(text);
    for (String line : lines(text)) {
      flow.need(set.bodyStep());
      flow.down(set.bodyStep());
      double base = flow.y() - Setting.mm(set.body()) * 0.25;
      flow.pen().text(x, base, line, text.tone() == Tone.STRONG, set.body(), PageFlow.INK);
    }
    flow.down(caution ? 2.2 : 1.8);
  }

  private void ticks(Block.Ticks ticks) throws IOException {
    double step = set.bodyStep();
    double small = set.cellStep();
    for (Block.Tick tick : ticks.ticks()) {
      List<String> text = Lines.of(tick.text(), flow.fonts(), true, set.body(), flow.room() - 8);
      List<String> note =
          tick.note().isEmpty()
              ? List.of()
              : Lines.of(tick.note(), flow.fonts(), false, set.cell(), flow.room() - 8);
      flow.need(text.size() * step + note.size() * small + 3);
      flow.pen().box(flow.left(), flow.y() + 0.7, 4, 4, 0.35, PageFlow.INK);
      for (String line : text) {
        flow.down(step);
        flow.pen().text(flow.left() + 7.5, flow.y() - 0.9, line, true, set.body(), PageFlow.INK);
      }
      for (String line : note) {
        flow.down(small);
        flow.pen().text(flow.left() + 7.5, flow.y() - 0.7, line, false, set.cell(), PageFlow.GREY);
      }
      flow.down(2.6);
    }
  }
}
