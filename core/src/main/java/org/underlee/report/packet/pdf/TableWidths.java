package org.underlee.report.packet.pdf;

import java.util.List;
import org.underlee.report.packet.Block;

/**
 * Widths of a table's columns: what the longest cell wants where there is room, else each column
 * gives up in proportion to what it has above its longest word.
 */
final class TableWidths {
  /** Free paper at each side of a cell, mm. */
  static final double PAD = 1.3;

  private TableWidths() {}

  static double[] of(Block.Table table, Fonts fonts, double points, double room) {
    int n = table.columns().size();
    double[] wanted = new double[n];
    double[] least = new double[n];
    for (int c = 0; c < n; c++) {
      String name = table.columns().get(c).name();
      least[c] = word(name, fonts, true, points);
      wanted[c] = least[c];
      for (List<String> row : table.rows()) {
        String cell = fonts.writable(row.get(c));
        wanted[c] = Math.max(wanted[c], fonts.width(cell, false, points));
        least[c] = Math.max(least[c], word(cell, fonts, false, points));
      }
      wanted[c] += 2 * PAD;
      least[c] += 2 * PAD;
    }
    return shared(wanted, least, room);
  }

  private static double word(String text, Fonts fonts, boolean heavy, double points) {
    double most = 0;
    for (String word : fonts.writable(text).split(" ", -1)) {
      most = Math.max(most, fonts.width(word, heavy, points));
    }
    return most;
  }

  private static double[] shared(double[] wanted, double[] least, double room) {
    double want = java.util.Arrays.stream(wanted).sum();
    double need = java.util.Arrays.stream(least).sum();
    double[] widths = new double[wanted.length];
    for (int c = 0; c < widths.length; c++) {
      if (want <= room) {
        widths[c] = wanted[c] * Math.min(room / want, 1.6);
      } else if (need < room) {
        widths[c] = least[c] + (wanted[c] - least[c]) * (room - need) / (want - need);
      } else {
        widths[c] = least[c] * room / need;
      }
    }
    return widths;
  }
}
