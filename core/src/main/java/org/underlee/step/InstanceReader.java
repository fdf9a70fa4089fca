package org.underlee.step;

import org.underlee.finding.InputException;

/**
 * Steps over instances without decoding them. Checks what the index rests on (quotation marks,
 * parentheses, semicolons); values are checked when decoded.
 */
final class InstanceReader {
  /** Bytes that mean something to the index where they stand outside of strings and comments. */
  private static final boolean[] MEANS = new boolean[256];

  static {
    for (char c : "()'\"#;=/".toCharArray()) {
      MEANS[c] = true;
    }
  }

  private final StepCursor cursor;
  private final Noticed noticed;
  private final int nesting;

  InstanceReader(StepCursor cursor, Noticed noticed) {
    this.cursor = cursor;
    this.noticed = noticed;
    this.nesting = cursor.source.limits.nesting();
  }

  /** Steps over the instance whose {@code #} is here; its keyword is then the cursor's. */
  long instance() {
    cursor.instance = -1;
    long id = cursor.id();
    cursor.keywordFrom = cursor.at;
    cursor.keywordTo = cursor.at;
    cursor.instance = id;
    noticed.highestId = Math.max(noticed.highestId, id);
    if (cursor.at('=')) {
      cursor.at++;
    } else {
      cursor.expect('=', "after #" + id);
    }
    cursor.skipSpace();
    cursor.keywordFrom = cursor.at;
    cursor.skipWord();
    cursor.keywordTo = cursor.at;
    cursor.skipSpace();
    if (!cursor.at('(')) {
      throw cursor.expected("'(' after the keyword");
    }
    list();
    end(id);
    return id;
  }

  private void end(long id) {
    if (cursor.at(';')) {
      cursor.at++;
    } else {
      cursor.expect(';', "at the end of #" + id);
    }
    cursor.instance = -1;
  }

  /** Steps over the list in parentheses that begins here, noting the references in it. */
  void list() {
    byte[] bytes = cursor.bytes;
    int limit = cursor.limit;
    int at = cursor.at;
    int depth = 0;
    do {
      while (at < limit && !MEANS[bytes[at] & 0xFF]) {
        at++;
      }
      byte c = at < limit ? bytes[at] : 0;
      if (c == ')') {
        depth--;
        at++;
      } else {
        cursor.at = at;
        depth = c == '(' ? deeper(depth) : depth;
        other(c);
        at = cursor.at;
      }
    } while (depth > 0);
    cursor.at = at;
  }

  /** What neither begins nor ends a list. */
  private void other(byte c) {
    switch (c) {
      case '(' -> cursor.at++;
      case '#' -> noticed.highestId = Math.max(noticed.highestId, cursor.id());
      case '\'' -> string();
      case '"' -> cursor.skipBinary();
      case '/' -> comment();
      default -> {
        cursor.atEnd();
        throw cursor.expected("')'");
      }
    }
  }

  private void string() {
    int start = cursor.at;
    int holds = cursor.skipString();
    if (holds != StepCursor.PLAIN) {
      noticed.string(holds, cursor.offset(start));
    }
  }

  private int deeper(int depth) {
    if (depth == nesting) {
      throw tooDeep(cursor);
    }
    return depth + 1;
  }

  static InputException tooDeep(StepCursor cursor) {
    return cursor.error(
        cursor.at,
        "lists nested deeper than " + cursor.source.limits.nesting(),
        "The file is damaged: export it again.");
  }

  private void comment() {
    int start = cursor.at;
    cursor.skipSpace();
    if (cursor.at == start) {
      throw cursor.expected("a value");
    }
  }
}
