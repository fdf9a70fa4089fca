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

  /** Values in values deeper than this are left to the parser: one bit each tells their kind. */
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
    int list = text.list(from);
    return list >= 0 && text.scan(list) ? Optional.of(text) : Optional.empty();
  }

  /** Where the list of attributes begins. */
  private int list(int from) {
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

  /** Notes where each attribute of the list begins; false where something is not plain. */
  private boolean scan(int list) {
    long typed = 0;
    int depth = 1;
    int at = PlainText.space(bytes, list + 1, limit);
    boolean mayEnd = true;
    while (true) {
      // Here stands a value, or the end of a list that has none.
      byte c = byteAt(at);
      if (c != ')' || !mayEnd) {
        if (depth == 1) {
          note(at);
        }
        boolean isTyped = c >= 'A' && c <= 'z';
        if (isTyped || c == '(') {
          at = isTyped ? opening(at) : at;
          if (at < 0 || ++depth > DEEPEST) {
            return false;
          }
          typed = isTyped ? typed | 1L << depth : typed & ~(1L << depth);
          mayEnd = !isTyped;
          at = PlainText.space(bytes, at + 1, limit);
          continue;
        }
        at = PlainText.value(bytes, at, limit, longestString);
        if (at < 0) {
          return false;
        }
        at = PlainText.space(bytes, at, limit);
      }
      while (byteAt(at) == ')') {
        if (--depth == 0) {
          return true;
        }
        at = PlainText.space(bytes, at + 1, limit);
      }
      if (byteAt(at) != ',' || (typed & 1L << depth) != 0) {
        return false;
      }
      at = PlainText.space(bytes, at + 1, limit);
      mayEnd = false;
    }
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
