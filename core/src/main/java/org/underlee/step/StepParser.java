package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Decodes the values of one instance or header entity. */
final class StepParser {
  private final StepCursor cursor;
  private final byte[] bytes;
  private int depth;

  StepParser(StepSource source, int at) {
    this.cursor = new StepCursor(source, at);
    this.bytes = source.bytes;
  }

  int end() {
    return cursor.at;
  }

  /** The header entity here: its keyword and the list of its values. */
  StepValue.Typed headerEntity() {
    StepValue.Typed entity = entity();
    cursor.expect(';', "after " + entity.keyword());
    return entity;
  }

  /** The instance whose {@code #} is here. */
  StepInstance instance(StepFile file) {
    int start = cursor.at;
    long id = cursor.id();
    cursor.instance = id;
    cursor.expect('=', "after #" + id);
    cursor.skipSpace();
    if (cursor.at('(')) {
      return new StepInstance(file, start, id, "", List.of(), parts(file, start, id));
    }
    return part(file, start, id);
  }

  private List<StepInstance> parts(StepFile file, int start, long id) {
    List<StepInstance> parts = new ArrayList<>();
    cursor.at++;
    cursor.skipSpace();
    while (!cursor.at(')')) {
      parts.add(part(file, start, id));
      cursor.skipSpace();
    }
    return parts;
  }

  private StepInstance part(StepFile file, int start, long id) {
    StepValue.Typed entity = entity();
    return new StepInstance(
        file, start, id, entity.keyword(), ((StepValue.ListOf) entity.value()).values());
  }

  private StepValue.Typed entity() {
    cursor.skipSpace();
    String keyword = cursor.word();
    if (keyword.isEmpty()) {
      throw cursor.expected("a keyword");
    }
    cursor.skipSpace();
    if (!cursor.at('(')) {
      throw cursor.expected("'(' after " + keyword);
    }
    return new StepValue.Typed(keyword, list());
  }

  private StepValue value() {
    cursor.skipSpace();
    int c = cursor.peek();
    return switch (c) {
      case '#' -> new StepValue.Reference(cursor.id());
      case '\'' -> text();
      case '.' -> enumeration();
      case '(' -> list();
      case '$' -> sign(new StepValue.Omitted());
      case '*' -> sign(new StepValue.Derived());
      case '"' -> binary();
      default -> c == '-' || c == '+' || isDigit(c) ? number() : typed();
    };
  }

  private StepValue sign(StepValue meaning) {
    cursor.at++;
    return meaning;
  }

  private StepValue.ListOf list() {
    deeper();
    cursor.at++;
    List<StepValue> values = new ArrayList<>();
    cursor.skipSpace();
    if (!cursor.at(')')) {
      values.add(value());
      cursor.skipSpace();
      while (cursor.at(',')) {
        cursor.at++;
        values.add(value());
        cursor.skipSpace();
      }
    }
    if (!cursor.at(')')) {
      throw cursor.expected("',' or ')'");
    }
    cursor.at++;
    depth--;
    return new StepValue.ListOf(values);
  }

  private void deeper() {
    if (++depth > StepCursor.MAX_NESTING) {
      throw cursor.error(
          cursor.at,
          "lists nested deeper than " + StepCursor.MAX_NESTING,
          "The file is damaged: export it again.");
    }
  }

  private StepValue typed() {
    String keyword = cursor.word();
    cursor.skipSpace();
    if (keyword.isEmpty() || !cursor.at('(')) {
      throw cursor.expected("a value");
    }
    deeper();
    cursor.at++;
    StepValue value = value();
    cursor.expect(')', "after the value of " + keyword);
    depth--;
    return new StepValue.Typed(keyword, value);
  }

  private StepValue text() {
    int start = cursor.at;
    cursor.skipQuoted('\'');
    while (cursor.at('\'')) {
      cursor.skipQuoted('\'');
    }
    return new StepValue.Text(StepText.decode(bytes, start + 1, cursor.at - 1));
  }

  private StepValue binary() {
    int start = cursor.at;
    cursor.skipQuoted('"');
    return new StepValue.Binary(ascii(start + 1, cursor.at - 1));
  }

  private StepValue enumeration() {
    int start = ++cursor.at;
    String name = cursor.word();
    if (name.isEmpty() || !cursor.at('.')) {
      cursor.at = start - 1;
      throw cursor.expected("an enumeration (.NAME.)");
    }
    cursor.at++;
    return new StepValue.Enumeration(name);
  }

  /**
   * Also takes {@code 1E5} and {@code 1e-5}, which the standard forbids and some programs write.
   */
  private StepValue number() {
    int start = cursor.at++;
    boolean real = false;
    while (!cursor.atEnd()) {
      int c = cursor.peek();
      boolean exponent = c == 'E' || c == 'e';
      boolean sign = (c == '-' || c == '+') && isExponent(bytes[cursor.at - 1]);
      if (!isDigit(c) && c != '.' && !exponent && !sign) {
        break;
      }
      real |= exponent || c == '.';
      cursor.at++;
    }
    String raw = ascii(start, cursor.at);
    double value = parse(raw, start);
    return real ? new StepValue.Real(raw, value) : new StepValue.Int(raw, value);
  }

  private double parse(String raw, int start) {
    double value;
    try {
      value = Double.parseDouble(raw);
    } catch (NumberFormatException e) {
      cursor.at = start;
      throw cursor.expected("a number");
    }
    if (!Double.isFinite(value)) {
      throw cursor.error(
          start, "the number " + raw + " is too large to compute with", "Correct this number.");
    }
    return value;
  }

  private String ascii(int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1).toUpperCase(Locale.ROOT);
  }

  private static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isExponent(byte c) {
    return c == 'E' || c == 'e';
  }
}
