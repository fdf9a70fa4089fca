package org.underlee.report;

/** Cells of a CSV table as RFC 4180 wants them. */
final class Csv {
  private Csv() {}

  /** Quoted where a comma, a quote or a line's end stands in it. */
  static String cell(String text) {
    boolean quote = text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return quote ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }
}
