package org.underlee.step;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.InputException;

/**
 * One pass over the text that finds where each section and instance begins. Checks what the index
 * rests on (quotation marks, parentheses, semicolons); values are checked when decoded.
 */
final class StepScanner {
  private static final String MAGIC = "ISO-10303-21";

  private final StepCursor cursor;
  private final byte[] bytes;
  final StepIndex index = new StepIndex();
  final List<StepValue.Typed> header = new ArrayList<>();
  long highestId;
  int blockOffset = -1;

  StepScanner(StepSource source) {
    this.bytes = source.bytes;
    this.cursor = new StepCursor(source, startAfterMark(bytes));
  }

  private static int startAfterMark(byte[] b) {
    boolean mark =
        b.length >= 3 && b[0] == (byte) 0xEF && b[1] == (byte) 0xBB && b[2] == (byte) 0xBF;
    return mark ? 3 : 0;
  }

  StepScanner scan() {
    start();
    while (section()) {
      // each call reads one section
    }
    if (blockOffset < 0) {
      throw cursor.error(
          cursor.at,
          "the file has no DATA section",
          "Maybe it was cut off: get it again from its author.");
    }
    index.finish(cursor.source);
    return this;
  }

  private void start() {
    cursor.skipSpace();
    int start = cursor.at;
    if (!cursor.word().equals(MAGIC)) {
      throw notStep(start);
    }
    cursor.expect(';', "after " + MAGIC);
    cursor.skipSpace();
    if (!word("HEADER")) {
      throw cursor.expected("HEADER;");
    }
    cursor.expect(';', "after HEADER");
    headerSection();
  }

  private InputException notStep(int start) {
    if (start >= bytes.length) {
      return cursor.error(0, "the file is empty", "Choose an IFC file (*.ifc).");
    }
    boolean zip = bytes.length > 2 && bytes[0] == 'P' && bytes[1] == 'K';
    String advice =
        zip
            ? "This is a ZIP archive: take the *.ifc file out of it first."
            : bytes[start] == '<'
                ? "This looks like XML: export the model as an IFC file (*.ifc)."
                : "Choose an IFC file (*.ifc) in the text format of ISO 10303-21.";
    String found = zip ? "a ZIP archive" : cursor.source.snippet(start);
    return cursor.error(
        start, "not an IFC text file: expected \"" + MAGIC + ";\", found " + found, advice);
  }

  /** Whether the given word stands here; steps over it if so. */
  private boolean word(String wanted) {
    int start = cursor.at;
    if (cursor.word().equals(wanted)) {
      return true;
    }
    cursor.at = start;
    return false;
  }

  private void headerSection() {
    cursor.skipSpace();
    while (!word("ENDSEC")) {
      StepParser parser = new StepParser(cursor.source, cursor.at);
      header.add(parser.headerEntity());
      cursor.at = parser.end();
      cursor.skipSpace();
    }
    cursor.expect(';', "after ENDSEC");
  }

  /** Reads one section; false at the end of the file. A missing trailer is tolerated. */
  private boolean section() {
    cursor.skipSpace();
    if (cursor.atEnd() || word("END-" + MAGIC)) {
      return false;
    }
    int start = cursor.at;
    String name = cursor.word();
    switch (name) {
      case "DATA" -> {
        skipParameters();
        dataSection(start);
      }
      case "ANCHOR", "REFERENCE", "SIGNATURE" -> skipSection();
      default -> {
        cursor.at = start;
        throw cursor.expected("DATA; or END-" + MAGIC + ";");
      }
    }
    return true;
  }

  private void skipParameters() {
    cursor.skipSpace();
    if (cursor.at('(')) {
      skipList();
    }
    cursor.expect(';', "after DATA");
  }

  /** Sections of edition 3 that IFC does not use. */
  private void skipSection() {
    while (!word("ENDSEC")) {
      if (cursor.atEnd()) {
        throw cursor.expected("ENDSEC;");
      }
      if (cursor.at('\'')) {
        cursor.skipQuoted('\'');
      } else {
        cursor.at++;
      }
      cursor.skipSpace();
    }
    cursor.expect(';', "after ENDSEC");
  }

  private void dataSection(int start) {
    while (true) {
      cursor.skipSpace();
      if (cursor.at('#')) {
        instance();
      } else if (word("ENDSEC")) {
        blockOffset = cursor.at - "ENDSEC".length();
        cursor.expect(';', "after ENDSEC");
        return;
      } else {
        String begins = "the DATA section of line " + cursor.source.place(start).line().orElse(0);
        throw cursor.expected("an instance (#…) or ENDSEC; in " + begins);
      }
    }
  }

  private void instance() {
    int start = cursor.at;
    long id = cursor.id();
    cursor.instance = id;
    highestId = Math.max(highestId, id);
    cursor.expect('=', "after #" + id);
    cursor.skipSpace();
    int from = cursor.at;
    cursor.skipWord();
    int keyword = index.keywordNumber(bytes, from, cursor.at);
    cursor.skipSpace();
    if (!cursor.at('(')) {
      throw cursor.expected("'(' after the keyword");
    }
    skipList();
    cursor.expect(';', "at the end of #" + id);
    index.add(id, start, keyword);
    cursor.instance = -1;
  }

  /** Steps over a list in parentheses, noting the references in it. */
  private void skipList() {
    int depth = 0;
    do {
      if (cursor.atEnd()) {
        throw cursor.expected("')'");
      }
      switch (bytes[cursor.at]) {
        case '(' -> depth = deeper(depth);
        case ')' -> {
          depth--;
          cursor.at++;
        }
        case '\'', '"' -> cursor.skipQuoted((char) bytes[cursor.at]);
        case '#' -> highestId = Math.max(highestId, cursor.id());
        case ';', '=' -> throw cursor.expected("')'");
        case '/' -> skipCommentHere();
        default -> cursor.at++;
      }
    } while (depth > 0);
  }

  private int deeper(int depth) {
    if (depth == StepCursor.MAX_NESTING) {
      throw cursor.error(
          cursor.at,
          "lists nested deeper than " + StepCursor.MAX_NESTING,
          "The file is damaged: export it again.");
    }
    cursor.at++;
    return depth + 1;
  }

  private void skipCommentHere() {
    int start = cursor.at;
    cursor.skipSpace();
    if (cursor.at == start) {
      throw cursor.expected("a value");
    }
  }
}
