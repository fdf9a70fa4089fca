package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.underlee.report.packet.Block;

/** Sets a table: its header is said again on every page, a row that fits on no page is parted. */
record TableSetter(PageFlow flow, Setting set) {
  private static final int BAND = 0xeef2f4;

  /** A table that begins low on a page has so much of it there, or begins on the next. */
  static double least(Block.Table table) {
    return Math.min(45, 14 + 6.5 * table.rows().size());
  }

  void set(Block.Table table) throws IOException {
    double[] widths = TableWidths.of(table, flow.fonts(), set.cell(), flow.room());
    List<String> names = table.columns().stream().map(Block.Column::name).toList();
    flow.need(least(table));
    row(table, names, widths, true, false);
    boolean band = false;
    for (List<String> row : table.rows()) {
      double tall = tall(row, widths, false);
      if (flow.y() + Math.min(tall, flow.bottom() - 40) > flow.bottom()) {
        flow.turnPage();
        row(table, names, widths, true, false);
      }
      row(table, row, widths, false, band);
      band = !band;
    }
    flow.down(2.5);
  }

  private List<List<String>> cells(List<String> row, double[] widths, boolean head) {
    List<List<String>> cells = new ArrayList<>();
    for (int c = 0; c < widths.length; c++) {
      double own = widths[c] - 2 * TableWidths.PAD + 0.01;
      cells.add(Lines.of(row.get(c), flow.fonts(), head, set.cell(), own));
    }
    return cells;
  }

  private double tall(List<String> row, double[] widths, boolean head) {
    int lines = cells(row, widths, head).stream().mapToInt(List::size).max().orElse(1);
    return lines * set.cellStep() + 1.7;
  }

  private void row(Block.Table table, List<String> row, double[] widths, boolean head, boolean band)
      throws IOException {
    List<List<String>> cells = cells(row, widths, head);
    double step = set.cellStep();
    double across = java.util.Arrays.stream(widths).sum();
    int lines = cells.stream().mapToInt(List::size).max().orElse(1);
    int done = 0;
    while (done < lines) {
      int fit = Math.max(1, (int) Math.floor((flow.bottom() - flow.y() - 1.7) / step));
      int upTo = Math.min(lines, done + fit);
      double tall = (upTo - done) * step + 1.7;
      if (band) {
        flow.pen().fill(flow.left(), flow.y(), across, tall, BAND);
      }
      double x = flow.left();
      for (int c = 0; c < widths.length; c++) {
        for (int l = done; l < Math.min(upTo, cells.get(c).size()); l++) {
          String line = cells.get(c).get(l);
          double off =
              table.columns().get(c).numbers()
                  ? widths[c] - TableWidths.PAD - flow.fonts().width(line, head, set.cell())
                  : TableWidths.PAD;
          double base = flow.y() + 0.85 + (l - done + 1) * step - Setting.mm(set.cell()) * 0.3;
          flow.pen().text(x + off, base, line, head, set.cell(), PageFlow.INK);
        }
        x += widths[c];
      }
      flow.down(tall);
      flow.pen()
          .line(
              flow.left(),
              flow.y(),
              flow.left() + across,
              flow.y(),
              head ? 0.4 : 0.12,
              head ? PageFlow.ACCENT : PageFlow.RULE);
      done = upTo;
      if (done < lines) {
        flow.turnPage();
      }
    }
  }
}
