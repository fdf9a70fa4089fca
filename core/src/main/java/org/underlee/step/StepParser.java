package org.underlee.step;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Decodes the values of one instance or header entity. */
final class StepParser {
  private static final StepValue OMITTED = new StepValue.Omitted();
  private static final StepValue DERIVED = new StepValue.Derived();

  /** More values than most instances have. */
  private static final int USUAL = 16;

  private final StepCursor cursor;
  private int depth;

  /** Values of the lists that are not at their end yet, the outer before the inner. */
  private StepValue[] pending = new StepValue[USUAL];

  private int count;

  StepParser(StepCursor cursor) {
    this.cursor = cursor;
  }

  /** The header entity here: its keyword and the list of its values. */
  StepValue.Typed headerEntity() {
    StepValue.Typed entity = entity();
    cursor.expect(';', "after " + entity.keyword());
    return entity;
  }

  /**
   * The instance whose {@code #} is here.
   *
   * @param keyword as the index has it: empty for a complex instance
   */
  StepInstance instance(StepFile file, String keyword) {
    long start = cursor.offset();
    long id = cursor.id();
    cursor.keywordFrom = cursor.at;
    cursor.keywordTo = cursor.at;
    cursor.instance = id;
    if (cursor.at('=')) {
      cursor.at++;
    } else {
      cursor.expect('=', "after #" + id);
    }
    cursor.skipSpace();
    if (cursor.at('(')) {
      return new StepInstance(file, start, id, "", List.of(), parts(file, start, id));
    }
    return part(file, start, id, keyword);
  }

  private List<StepInstance> parts(StepFile file, long start, long id) {
    List<StepInstance> parts = new ArrayList<>();
    cursor.at++;
    cursor.skipSpace();
    while (!cursor.at(')')) {
      parts.add(part(file, start, id, ""));
      cursor.skipSpace();
    }
    return parts;
  }

  private StepInstance part(StepFile file, long start, long id, String known) {
    String keyword = keyword(known);
    return new StepInstance(file, start, id, keyword, list().values(), List.of());
  }

  private StepValue.Typed entity() {
    return new StepValue.Typed(keyword(""), list());
  }

  /** Steps over the keyword to its list; one that is known is not spelled out again. */
  private String keyword(String known) {
    cursor.skipSpace();
    cursor.keywordFrom = cursor.at;
    cursor.skipWord();
    cursor.keywordTo = cursor.at;
    if (cursor.keywordTo == cursor.keywordFrom) {
      throw cursor.expected("a keyword");
    }
    String keyword = known.isEmpty() ? cursor.text(cursor.keywordFrom, cursor.keywordTo) : known;
    cursor.skipSpace();
    if (!cursor.at('(')) {
      throw cursor.expected("'(' after " + keyword);
    }
    return keyword;
  }

  private StepValue value() {
    cursor.skipSpace();
    int c = cursor.peek();
    return switch (c) {
      case '#' -> new StepValue.Reference(cursor.id());
      case '\'' -> text();
      case '.' -> enumeration();
      case '(' -> list();
      case '$' -> sign(OMITTED);
      case '*' -> sign(DERIVED);
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
    int from = count;
    cursor.skipSpace();
    if (!cursor.at(')')) {
      push(value());
      cursor.skipSpace();
      while (cursor.at(',')) {
        cursor.at++;
        push(value());
        cursor.skipSpace();
      }
    }
    if (!cursor.at(')')) {
      throw cursor.expected("',' or ')'");
    }
    cursor.at++;
    depth--;
    StepValue.ListOf list = new StepValue.ListOf(values(from, count - from));
    count = from;
    return list;
  }

  /** Short lists, most of all, are made without copying their values twice. */
  private List<StepValue> values(int from, int length) {
    return switch (length) {
      case 1 -> List.of(pending[from]);
      case 2 -> List.of(pending[from], pending[from + 1]);
      case 3 -> List.of(pending[from], pending[from + 1], pending[from + 2]);
      default -> List.of(Arrays.copyOfRange(pending, from, from + length));
    };
  }

  private void push(StepValue value) {
    if (count == pending.length) {
      pending = Arrays.copyOf(pending, 2 * count);
    }
    pending[count++] = value;
  }

  private void deeper() {
    if (++depth > cursor.source.limits.nesting()) {
      throw InstanceReader.tooDeep(cursor);
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
    cursor.skipString();
    while (cursor.at('\'')) {
      cursor.skipString();
    }
    int most = cursor.source.limits.stringBytes();
    if (cursor.at - start - 2 > most) {
      throw cursor.error(
          start,
          "a string longer than " + most + " bytes",
          "Shorten it, or allow longer ones with --string-limit.");
    }
    return new StepValue.Text(StepText.decode(cursor.bytes, start + 1, cursor.at - 1));
  }

  private StepValue binary() {
    int start = cursor.at;
    cursor.skipBinary();
    return new StepValue.Binary(cursor.text(start + 1, cursor.at - 1));
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
      boolean sign = (c == '-' || c == '+') && isExponent(cursor.bytes[cursor.at - 1]);
      if (!isDigit(c) && c != '.' && !exponent && !sign) {
        break;
      }
      real |= exponent || c == '.';
      cursor.at++;
    }
    double value = parse(start);
    String raw = cursor.text(start, cursor.at);
    return real ? new StepValue.Real(raw, value) : new StepValue.Int(raw, value);
  }

  private double parse(int start) {
    double value;
    try {
      value = PlainNumber.of(cursor.bytes, start, cursor.at);
    } catch (NumberFormatException e) {
      cursor.at = start;
      throw cursor.expected("a number");
    }
    if (!Double.isFinite(value)) {
      throw cursor.error(
          start,
          "the number " + cursor.text(start, cursor.at) + " is too large to compute with",
          "Correct this number.");
    }
    return value;
  }

  private static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isExponent(byte c) {
    return c == 'E' || c == 'e';
  }
}
