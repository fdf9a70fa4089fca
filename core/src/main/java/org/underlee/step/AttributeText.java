package org.underlee.step;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The attributes of one instance as they stand in its text, each decoded when it is asked for: most
 * of a building is looked at for one or two attributes of each instance, or for none.
 *
 * <p>Made only of {@link PlainText}, which holds no error, so that leaving a value undecoded hides
 * none. Any other text is decoded whole.
 */
final class AttributeText {
  /** Attributes that most instances have. */
  private static final int USUAL = 10;

  /** Values in values deeper than this are left to the parser. */
  private static final int DEEPEST = 60;

  private final byte[] bytes;
  private final int limit;
  private final int longestString;
  private int[] starts = new int[USUAL];
  private int count;

  private AttributeText(StepBytes.Window window, int longestString) {
    this.bytes = window.bytes();
    this.limit = window.limit();
    this.longestString = longestString;
  }

  /** The attributes of the instance whose {@code #} is here; empty where the text is not plain. */
  static Optional<AttributeText> at(StepBytes.Window window, int from, StepLimits limits) {
    AttributeText text = new AttributeText(window, limits.stringBytes());
    int open = text.attributes(from);
    return open >= 0 && text.list(open, 1, false) >= 0 ? Optional.of(text) : Optional.empty();
  }

  /** Where the list of attributes begins. */
  private int attributes(int from) {
    int at = PlainText.id(bytes, from, limit);
    if (at < 0 || byteAt(at) != '=') {
      return PlainText.NOT;
    }
    at = PlainText.word(bytes, PlainText.space(bytes, at + 1, limit), limit);
    if (at >= 0) {
      at = PlainText.space(bytes, at, limit);
    }
    return at >= 0 && byteAt(at) == '(' ? at : PlainText.NOT;
  }

  private byte byteAt(int at) {
    return PlainText.byteAt(bytes, at, limit);
  }

  /**
   * Reads a list, and notes where each of its values begins when they are the attributes.
   *
   * @param open the place of its {@code (}
   * @param depth of how many lists this is the innermost
   * @param isTyped whether a keyword stands before it, so that it holds one value
   * @return the place after it, or {@link PlainText#NOT} where something is not plain
   */
  private int list(int open, int depth, boolean isTyped) {
    int at = PlainText.space(bytes, open + 1, limit);
    if (byteAt(at) == ')' && !isTyped) {
      return at + 1;
    }
    while (true) {
      if (depth == 1) {
        note(at);
      }
      at = value(at, depth);
      at = at < 0 ? at : PlainText.space(bytes, at, limit);
      if (at < 0 || byteAt(at) == ')') {
        return at < 0 ? at : at + 1;
      }
      if (byteAt(at) != ',' || isTyped) {
        return PlainText.NOT;
      }
      at = PlainText.space(bytes, at + 1, limit);
    }
  }

  /** The place after the value that begins here, in a list of this depth. */
  private int value(int at, int depth) {
    byte first = byteAt(at);
    boolean isTyped = first >= 'A' && first <= 'z';
    if (!isTyped && first != '(') {
      return PlainText.value(bytes, at, limit, longestString);
    }
    int open = isTyped ? opening(at) : at;
    return open < 0 || depth == DEEPEST ? PlainText.NOT : list(open, depth + 1, isTyped);
  }

  /** The parenthesis after the keyword of a typed value. */
  private int opening(int keyword) {
    int at = PlainText.word(bytes, keyword, limit);
    at = at < 0 ? at : PlainText.space(bytes, at, limit);
    return at >= 0 && byteAt(at) == '(' ? at : PlainText.NOT;
  }

  private void note(int at) {
    if (count == starts.length) {
      starts = Arrays.copyOf(starts, 2 * count);
    }
    starts[count++] = at;
  }

  int size() {
    return count;
  }

  /** The first byte of an attribute; that of an omitted one beyond the last. */
  byte first(int i) {
    return i < count ? bytes[starts[i]] : (byte) '$';
  }

  /** The number that an attribute refers to, or −1 when it is no reference. */
  long ref(int i) {
    return first(i) == '#' ? id(starts[i] + 1) : -1;
  }

  private long id(int from) {
    long id = 0;
    for (int at = from; at < limit && bytes[at] >= '0' && bytes[at] <= '9'; at++) {
      id = 10 * id + (bytes[at] - '0');
    }
    return id;
  }

  /** The text of an attribute, or null when it is none. */
  @Nullable String text(int i) {
    if (first(i) != '\'') {
      return null;
    }
    int from = starts[i];
    return StepText.decode(
        bytes, from + 1, PlainText.string(bytes, from, limit, longestString) - 1);
  }

  /** The number of an attribute; NaN when it is none, or has a type. */
  double number(int i) {
    return isNumber(first(i)) ? numberAt(starts[i]) : Double.NaN;
  }

  private static boolean isNumber(byte first) {
    return first == '-' || (first >= '0' && first <= '9');
  }

  private double numberAt(int at) {
    return PlainNumber.of(bytes, at, after(at));
  }

  private int after(int value) {
    return PlainText.value(bytes, value, limit, longestString);
  }

  /** The references in a list; null when it is none, or holds anything else. */
  long @Nullable [] refs(int i) {
    if (first(i) != '(') {
      return null;
    }
    long[] refs = new long[values(starts[i])];
    int at = starts[i];
    for (int k = 0; k < refs.length; k++) {
      at = PlainText.space(bytes, at + 1, limit);
      if (bytes[at] != '#') {
        return null;
      }
      refs[k] = id(at + 1);
      at = PlainText.space(bytes, after(at), limit);
    }
    return refs;
  }

  /** How many values stand in a list without lists; too many where it has some. */
  private int values(int list) {
    int at = PlainText.space(bytes, list + 1, limit);
    int values = bytes[at] == ')' ? 0 : 1;
    for (; bytes[at] != ')'; at++) {
      values += bytes[at] == ',' ? 1 : 0;
    }
    return values;
  }

  /** The numbers in a list; null when it is none, or holds anything else. */
  double @Nullable [] numbers(int i) {
    return first(i) == '(' ? row(starts[i]) : null;
  }

  private double @Nullable [] row(int list) {
    double[] row = new double[values(list)];
    int at = list;
    for (int k = 0; k < row.length; k++) {
      at = PlainText.space(bytes, at + 1, limit);
      if (!isNumber(bytes[at])) {
        return null;
      }
      int end = after(at);
      row[k] = PlainNumber.of(bytes, at, end);
      at = PlainText.space(bytes, end, limit);
    }
    return row;
  }

  /** The numbers in a list of lists; null when it is none, or holds anything else. */
  double @Nullable [] @Nullable [] rows(int i) {
    if (first(i) != '(') {
      return null;
    }
    List<double[]> rows = new ArrayList<>();
    int at = PlainText.space(bytes, starts[i] + 1, limit);
    while (bytes[at] != ')') {
      double[] row = bytes[at] == '(' ? row(at) : null;
      if (row == null) {
        return null;
      }
      rows.add(row);
      at = PlainText.space(bytes, end(at) + 1, limit);
      at = bytes[at] == ',' ? PlainText.space(bytes, at + 1, limit) : at;
    }
    return rows.toArray(new double[0][]);
  }

  /** Where a list without lists ends. */
  private int end(int list) {
    int at = list;
    while (bytes[at] != ')') {
      at++;
    }
    return at;
  }
}
