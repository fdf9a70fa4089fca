package org.underlee.report;

/** Cells of CSV tables (RFC 4180). */
final class Csv {
  /** What a table program would take for the start of a formula. */
  private static final String FORMULA = "=+-@\t\r";

  private Csv() {}

  /**
   * A cell; text from a model that a table program would run as a formula is written with an
   * apostrophe before it.
   */
  static String cell(String text) {
    boolean number = text.matches("-?\\d+(\\.\\d+)?");
    boolean formula = !number && !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0;
    String safe = formula ? "'" + text : text;
    boolean quote = safe.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return quote ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }
}
