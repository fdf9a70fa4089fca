package org.underlee.step;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * One instance, whose values are decoded when they are asked for. The accessors take an attribute's
 * position from 0 and fail with an {@link InputException} that names the instance, the attribute
 * (from 1), what was found and what was expected. A typed value such as {@code IFCLABEL('x')} is
 * read as what it holds.
 */
public final class StepInstance {
  private final StepFile file;
  private final long offset;
  private final long id;
  private final String keyword;
  private final Optional<AttributeText> text;
  private final List<StepInstance> parts;

  /** Decoded when something is asked for that the text does not tell, the same whoever does it. */
  private @Nullable List<StepValue> values;

  /** One with its values decoded, and its parts when it is complex. */
  StepInstance(
      StepFile file,
      long offset,
      long id,
      String keyword,
      List<StepValue> values,
      List<StepInstance> parts) {
    this.file = file;
    this.offset = offset;
    this.id = id;
    this.keyword = keyword;
    this.text = Optional.empty();
    this.values = List.copyOf(values);
    this.parts = List.copyOf(parts);
  }

  /** One whose values stand in its text. */
  StepInstance(StepFile file, long offset, long id, String keyword, Optional<AttributeText> text) {
    this.file = file;
    this.offset = offset;
    this.id = id;
    this.keyword = keyword;
    this.text = text;
    this.parts = List.of();
  }

  public long id() {
    return id;
  }

  /** In upper case; empty for a complex instance. */
  public String keyword() {
    return keyword;
  }

  public List<StepValue> values() {
    List<StepValue> known = values;
    if (known == null) {
      known = file.parsed(file.find(id)).values();
      values = known;
    }
    return known;
  }

  /** The parts of a complex instance, each with its own keyword and values; else none. */
  public List<StepInstance> parts() {
    return parts;
  }

  /** File, line, column and number. */
  public Place place() {
    return file.place(offset).atInstance(id);
  }

  /** Number of attributes. */
  public int size() {
    return text.map(AttributeText::size).orElseGet(() -> values().size());
  }

  /** The value at a position; omitted when the instance has fewer, as older schemas do. */
  public StepValue value(int i) {
    return i < values().size() ? values().get(i) : new StepValue.Omitted();
  }

  /** Whether the attribute is {@code $}, {@code *} or beyond the last. */
  public boolean isOmitted(int i) {
    if (text.isPresent()) {
      byte first = text.get().first(i);
      return first == '$' || first == '*';
    }
    StepValue v = value(i);
    return v instanceof StepValue.Omitted || v instanceof StepValue.Derived;
  }

  public boolean isReference(int i) {
    return text.map(t -> t.first(i) == '#')
        .orElseGet(() -> value(i) instanceof StepValue.Reference);
  }

  public long ref(int i) {
    long plain = text.isPresent() ? text.get().ref(i) : -1;
    if (plain >= 0) {
      return plain;
    }
    if (value(i) instanceof StepValue.Reference r) {
      return r.id();
    }
    throw unexpected(i, "a reference (#…)");
  }

  public OptionalLong optionalRef(int i) {
    return isOmitted(i) ? OptionalLong.empty() : OptionalLong.of(ref(i));
  }

  /** The instance that an attribute refers to. */
  public StepInstance follow(int i) {
    return file.instance(ref(i), this);
  }

  public Optional<StepInstance> optionalFollow(int i) {
    return isOmitted(i) ? Optional.empty() : Optional.of(follow(i));
  }

  /** The instance that a number found among the values leads to. */
  public StepInstance resolve(long reference) {
    return file.instance(reference, this);
  }

  /** The numbers in a list of references; empty when the list is omitted. */
  public long[] refs(int i) {
    long[] plain = text.isPresent() ? text.get().refs(i) : null;
    if (plain != null) {
      return plain;
    }
    List<StepValue> list = list(i);
    long[] refs = new long[list.size()];
    for (int k = 0; k < refs.length; k++) {
      refs[k] = element(i, list.get(k));
    }
    return refs;
  }

  private long element(int i, StepValue v) {
    if (v instanceof StepValue.Reference r) {
      return r.id();
    }
    throw unexpected(i, "a list of references", v);
  }

  /** The instances in a list of references; empty when the list is omitted. */
  public List<StepInstance> followAll(int i) {
    long[] refs = refs(i);
    List<StepInstance> all = new ArrayList<>(refs.length);
    for (long ref : refs) {
      all.add(file.instance(ref, this));
    }
    return Collections.unmodifiableList(all);
  }

  public String text(int i) {
    String plain = text.isPresent() ? text.get().text(i) : null;
    if (plain != null) {
      return plain;
    }
    if (plain(i) instanceof StepValue.Text t) {
      return t.value();
    }
    throw unexpected(i, "a text");
  }

  public Optional<String> optionalText(int i) {
    return isOmitted(i) ? Optional.empty() : Optional.of(text(i));
  }

  public double number(int i) {
    double plain = text.isPresent() ? text.get().number(i) : Double.NaN;
    if (!Double.isNaN(plain)) {
      return plain;
    }
    if (plain(i) instanceof StepValue.Numeral n) {
      return n.value();
    }
    throw unexpected(i, "a number");
  }

  public OptionalDouble optionalNumber(int i) {
    return isOmitted(i) ? OptionalDouble.empty() : OptionalDouble.of(number(i));
  }

  /** The numbers in a list. */
  public double[] numbers(int i) {
    double[] plain = text.isPresent() ? text.get().numbers(i) : null;
    return plain == null ? numbers(i, list(i)) : plain;
  }

  /** The numbers in a list of lists, one array an inner list. */
  public double[][] numberRows(int i) {
    double[][] plain = text.isPresent() ? text.get().rows(i) : null;
    return plain != null
        ? plain
        : list(i).stream().map(row -> numbers(i, inner(i, row))).toArray(double[][]::new);
  }

  private List<StepValue> inner(int i, StepValue row) {
    if (row instanceof StepValue.ListOf l) {
      return l.values();
    }
    throw unexpected(i, "a list of lists", row);
  }

  private double[] numbers(int i, List<StepValue> list) {
    double[] numbers = new double[list.size()];
    for (int k = 0; k < numbers.length; k++) {
      if (!(unwrapped(list.get(k)) instanceof StepValue.Numeral n)) {
        throw unexpected(i, "a list of numbers", list.get(k));
      }
      numbers[k] = n.value();
    }
    return numbers;
  }

  /** A list; empty when omitted. */
  public List<StepValue> list(int i) {
    if (plain(i) instanceof StepValue.ListOf l) {
      return l.values();
    }
    if (isOmitted(i)) {
      return List.of();
    }
    throw unexpected(i, "a list");
  }

  /** The name without dots. */
  public String enumeration(int i) {
    if (plain(i) instanceof StepValue.Enumeration e) {
      return e.name();
    }
    throw unexpected(i, "an enumeration (.NAME.)");
  }

  public Optional<String> optionalEnumeration(int i) {
    return isOmitted(i) ? Optional.empty() : Optional.of(enumeration(i));
  }

  /** A Part 21 boolean; false when omitted or unknown. */
  public boolean isTrue(int i) {
    return !isOmitted(i) && enumeration(i).equals("T");
  }

  private StepValue plain(int i) {
    return unwrapped(value(i));
  }

  private static StepValue unwrapped(StepValue v) {
    return v instanceof StepValue.Typed t ? unwrapped(t.value()) : v;
  }

  private InputException unexpected(int i, String expected) {
    return unexpected(i, expected, value(i));
  }

  private InputException unexpected(int i, String expected, StepValue found) {
    return error("attribute " + (i + 1) + " should be " + expected + " but is " + found.words());
  }

  /** An error about this instance: the message names its number and keyword. */
  public InputException error(String what) {
    return new InputException(
        place(),
        keyword + ": " + what,
        "Have the program that wrote the file export it again, or correct this line.");
  }

  @Override
  public String toString() {
    return "#" + id + "=" + keyword + values();
  }
}
