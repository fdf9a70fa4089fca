package org.underlee.step;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules for what is read although the standard forbids it. */
public final class StepRules {
  private static final String STANDARD = "ISO 10303-21:2016, ";

  static final Rule BYTE_ORDER_MARK =
      new Rule(
          "byte-order-mark",
          Level.NOTE,
          STANDARD + "5.2",
          "The file begins with a byte order mark, which other readers may refuse.");

  static final Rule NO_TRAILER =
      new Rule(
          "no-trailer",
          Level.WARNING,
          STANDARD + "5.3",
          "The closing line is missing or cut: the data is whole, but the file may have been cut short.");

  static final Rule AFTER_TRAILER =
      new Rule(
          "text-after-trailer",
          Level.WARNING,
          STANDARD + "5.3",
          "Text follows the closing line and is passed over.");

  static final Rule HEADER_TWICE =
      new Rule(
          "header-entity-twice",
          Level.WARNING,
          STANDARD + "8.2",
          "The header says something twice; the first is taken.");

  static final Rule SECTION_LEFT_OUT =
      new Rule(
          "section-left-out",
          Level.NOTE,
          Rule.OWN,
          "A section that holds no building data is passed over.");

  static final Rule RAW_BYTES =
      new Rule(
          "raw-bytes-in-text",
          Level.NOTE,
          STANDARD + "6.4.3",
          "A text holds letters that should have been written in code; they are read all the same.");

  static final Rule LONE_BACKSLASH =
      new Rule(
          "lone-backslash",
          Level.NOTE,
          STANDARD + "6.4.3",
          "A text holds a backslash that begins no code; it is taken as it stands.");

  private StepRules() {}

  public static List<Rule> all() {
    return List.of(
        BYTE_ORDER_MARK,
        NO_TRAILER,
        AFTER_TRAILER,
        HEADER_TWICE,
        SECTION_LEFT_OUT,
        RAW_BYTES,
        LONE_BACKSLASH);
  }
}
