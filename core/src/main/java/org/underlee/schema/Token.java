package org.underlee.schema;

/**
 * A word, number, text or sign of an EXPRESS file.
 *
 * @param text in upper case, but for a text
 * @param spelled as it is written
 * @param line from 1
 */
record Token(Kind kind, String text, String spelled, int line) {
  enum Kind {
    WORD,
    NUMBER,
    TEXT,
    SIGN,
    END
  }

  boolean is(String wanted) {
    return kind != Kind.TEXT && text.equals(wanted);
  }
}
