package org.underlee.report.packet.pdf;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines between words. */
final class Lines {
  private Lines() {}

  static List<String> of(String text, Fonts fonts, boolean heavy, double points, double room) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : fonts.writable(text).split(" ", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && fonts.width(longer, heavy, points) > room) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(line.toString());
    return lines;
  }
}
