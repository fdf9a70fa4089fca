package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * A quick look at instances: steps from value to value in the text itself and makes no objects of
 * them. It takes the plain forms that nearly all of a file is written in; at anything else (a
 * comment, a directive in a string, a typed value, a reference to nothing) it is {@link Unsure},
 * and the instance has to be decoded as a whole. What it does take is what {@link StepInstance}
 * gives, to the last bit. For one thread.
 */
public final class Glance {
  /** What is copied at once: many instances in a row, and little where they lie apart. */
  private static final int STRETCH = 1 << 11;

  private static final int USUAL = 16;

  private final StepFile file;
  private byte[] bytes = {};
  private long base;
  private int limit;
  private int at;
  private int end;

  public Glance(StepFile file) {
    this.file = file;
  }

  /** Something that only a full decoding can judge. */
  public static final class Unsure extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** Thrown often and never shown: it needs no trace. */
    Unsure() {
      super("only decoding can tell", null, false, false);
    }
  }

  /** Unsure, as the caller may be of what it was given. */
  public static Unsure unsure() {
    return new Unsure();
  }

  /** Goes to the first value of the instance with a number; gives its keyword, in upper case. */
  public String to(long id) {
    int found = file.find(id);
    if (found < 0) {
      throw new Unsure();
    }
    return toIndex(found);
  }

  /** The same for the instance at an index. */
  public String toIndex(int index) {
    long from = file.offset(index);
    long to = file.end(index);
    if (to - from > Integer.MAX_VALUE >> 1) {
      throw new Unsure();
    }
    if (from < base || to > base + limit || bytes.length == 0) {
      StepBytes.Window window =
          file.bytesOf().window(from, Math.max((int) (to - from), STRETCH), bytes);
      bytes = window.bytes();
      limit = window.limit();
      base = window.base();
    }
    at = (int) (from - base) + 1;
    end = (int) (to - base);
    while (at < end && bytes[at] != '(') {
      at++;
    }
    expect('(');
    return file.keyword(index);
  }

  /** Steps over values and checks their form. */
  public void skip(int values) {
    for (int i = 0; i < values; i++) {
      value();
      comma();
    }
  }

  /** Steps over what is left of the instance: all of it must be plain. */
  public void rest() {
    while (peek() != ')') {
      value();
      comma();
    }
    expect(')');
    if (peek() != ';') {
      throw new Unsure();
    }
  }

  /** A reference, or 0 where there is none; no instance has that number. */
  public long optionalRef() {
    byte c = peek();
    if (c == '$' || c == '*') {
      at++;
      comma();
      return 0;
    }
    long id = id();
    comma();
    return id;
  }

  public long ref() {
    long id = id();
    comma();
    return id;
  }

  /** A list of references. */
  public long[] refs() {
    long[] ids = new long[USUAL];
    int count = 0;
    expect('(');
    while (peek() != ')') {
      if (count == ids.length) {
        ids = Arrays.copyOf(ids, 2 * count);
      }
      ids[count++] = id();
      comma();
    }
    at++;
    comma();
    return Arrays.copyOf(ids, count);
  }

  public double number() {
    double number = numeral();
    comma();
    return number;
  }

  /** Reads a list of numbers into an array; gives how many, at most as many as it holds. */
  public int numbers(double[] into) {
    int count = 0;
    expect('(');
    while (peek() != ')') {
      if (count == into.length) {
        throw new Unsure();
      }
      into[count++] = numeral();
      comma();
    }
    at++;
    comma();
    return count;
  }

  /** Goes into a list. */
  public void enter() {
    expect('(');
  }

  /** Whether there is more in the list that was entered; steps out of it when there is not. */
  public boolean more() {
    if (peek() != ')') {
      return true;
    }
    at++;
    comma();
    return false;
  }

  /** A text of plain characters; empty where there is none. */
  public String optionalText() {
    byte c = peek();
    int from = at;
    value();
    int to = at;
    comma();
    if (c == '$' || c == '*') {
      return "";
    }
    if (c != '\'') {
      throw new Unsure();
    }
    return new String(bytes, from + 1, to - from - 2, StandardCharsets.ISO_8859_1);
  }

  /** The byte that comes next but for white space. */
  private byte peek() {
    while (at < end) {
      byte c = bytes[at];
      if (c < 0 || c > ' ') {
        return c;
      }
      at++;
    }
    throw new Unsure();
  }

  private void expect(char c) {
    if (peek() != c) {
      throw new Unsure();
    }
    at++;
  }

  /** After a value: a comma with a value behind it, or the end of the list. */
  private void comma() {
    byte c = peek();
    if (c == ',') {
      at++;
      if (peek() == ')') {
        throw new Unsure();
      }
    } else if (c != ')') {
      throw new Unsure();
    }
  }

  private long id() {
    expect('#');
    int from = at;
    long id = 0;
    while (at < end && isDigit(bytes[at])) {
      id = 10 * id + (bytes[at++] - '0');
    }
    if (at == from || at - from > StepParser.EXACT_DIGITS) {
      throw new Unsure();
    }
    return id;
  }

  private double numeral() {
    peek();
    int from = at;
    long digits = 0;
    int count = 0;
    int decimals = -1;
    boolean negative = bytes[at] == '-';
    at += negative ? 1 : 0;
    if (!negative && !isDigit(bytes[at])) {
      throw new Unsure();
    }
    for (; at < end; at++) {
      byte c = bytes[at];
      if (c == '.' && decimals < 0) {
        decimals = 0;
      } else if (isDigit(c)) {
        digits = 10 * digits + (c - '0');
        decimals += decimals < 0 ? 0 : 1;
        count++;
      } else {
        break;
      }
    }
    if (count == 0) {
      throw new Unsure();
    }
    if (count > StepParser.EXACT_DIGITS || (at < end && isExponent(bytes[at]))) {
      return longNumeral(from);
    }
    double value = StepParser.scaled(digits, Math.max(decimals, 0));
    return negative ? -value : value;
  }

  private double longNumeral(int from) {
    at = from;
    while (at < end && isOfNumber(bytes[at])) {
      at++;
    }
    try {
      double value =
          Double.parseDouble(new String(bytes, from, at - from, StandardCharsets.ISO_8859_1));
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      throw new Unsure();
    }
    throw new Unsure();
  }

  /** Steps over one value. */
  private void value() {
    switch (peek()) {
      case '$', '*' -> at++;
      case '#' -> id();
      case '\'' -> string();
      case '.' -> enumeration();
      case '(' -> list();
      default -> numeral();
    }
  }

  private void string() {
    int from = ++at;
    while (at < end && bytes[at] != '\'') {
      if (bytes[at] < ' ' || bytes[at] == '\\') {
        throw new Unsure();
      }
      at++;
    }
    expect('\'');
    if (at - from > STRETCH || peek() == '\'') {
      throw new Unsure();
    }
  }

  private void enumeration() {
    int from = ++at;
    while (at < end && isOfName(bytes[at])) {
      at++;
    }
    if (at == from || peek() != '.') {
      throw new Unsure();
    }
    at++;
  }

  /** Lists of lists of numbers or references and no deeper: the indices of a mesh. */
  private void list() {
    int depth = 0;
    do {
      byte c = peek();
      if (c == '(') {
        at++;
        depth++;
        if (depth > 2) {
          throw new Unsure();
        }
        continue;
      }
      if (c == ')') {
        at++;
        depth--;
      } else if (c == '#') {
        id();
      } else {
        numeral();
      }
      if (depth > 0) {
        comma();
      }
    } while (depth > 0);
  }

  private static boolean isDigit(byte c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isExponent(byte c) {
    return c == 'E' || c == 'e';
  }

  private static boolean isOfNumber(byte c) {
    return isDigit(c) || c == '.' || c == '-' || c == '+' || isExponent(c);
  }

  private static boolean isOfName(byte c) {
    return isDigit(c) || (c >= 'A' && c <= 'Z') || c == '_';
  }
}
