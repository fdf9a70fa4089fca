package org.underlee.ids;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * What a value must be: one of some texts, or within an XML Schema restriction.
 *
 * @param options the texts of a simple value or an enumeration; empty when all are allowed
 * @param patterns regular expressions of XML Schema, of which one must match
 * @param bounds by name: {@code minInclusive}, {@code maxLength} …
 */
record IdsValue(List<String> options, List<Pattern> patterns, Map<String, Double> bounds) {
  /** How near two real numbers count as equal (IDS 1.0, floating point comparison). */
  private static final double TOLERANCE = 1e-6;

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
  private static final Pattern WHOLE = Pattern.compile("[+-]?\\d+");

  IdsValue {
    options = List.copyOf(options);
    patterns = List.copyOf(patterns);
    bounds = Map.copyOf(bounds);
  }

  static IdsValue simple(String text) {
    return new IdsValue(List.of(text), List.of(), Map.of());
  }

  /** A pattern of XML Schema, which has no anchors and matches whole texts. */
  static Pattern pattern(String xml) {
    try {
      return Pattern.compile(xml.replace("$", "\\$").replace("^", "\\^").replace("[\\^", "[^"));
    } catch (PatternSyntaxException e) {
      throw new InputException(
          Place.NOWHERE,
          "the pattern \"" + xml + "\" cannot be read",
          "Correct it in the IDS file.");
    }
  }

  /** Whether a text is allowed, capitals told from small letters. */
  boolean allows(String text) {
    return (options.isEmpty() || options.contains(text))
        && (patterns.isEmpty() || patterns.stream().anyMatch(p -> p.matcher(text).matches()))
        && isLong(text.length())
        && valueBounds().isEmpty();
  }

  /** Whether a real number is allowed, within the tolerance of the standard. */
  boolean allows(double number) {
    return patterns.isEmpty()
        && noLengths()
        && (options.isEmpty() || options.stream().anyMatch(o -> near(parsed(o), number)))
        && within(number);
  }

  /** Whether a whole number is allowed. */
  boolean allowsWhole(double number) {
    return patterns.isEmpty()
        && noLengths()
        && (options.isEmpty()
            || options.stream().anyMatch(o -> isWhole(o) && Double.parseDouble(o) == number))
        && within(number);
  }

  /** Whether a truth is allowed: {@code true} and {@code 1}, {@code false} and {@code 0}. */
  boolean allows(boolean truth) {
    return patterns.isEmpty()
        && bounds.isEmpty()
        && (options.isEmpty()
            || options.stream()
                .anyMatch(o -> o.equals(truth ? "true" : "false") || o.equals(truth ? "1" : "0")));
  }

  private static boolean near(OptionalDouble wanted, double number) {
    if (wanted.isEmpty()) {
      return false;
    }
    double w = wanted.getAsDouble();
    return Math.abs(w - number) <= TOLERANCE * Math.abs(w) + TOLERANCE;
  }

  private static OptionalDouble parsed(String text) {
    return NUMBER.matcher(text).matches()
        ? OptionalDouble.of(Double.parseDouble(text))
        : OptionalDouble.empty();
  }

  private static boolean isWhole(String text) {
    return WHOLE.matcher(text).matches();
  }

  private boolean noLengths() {
    return bounds.keySet().stream().noneMatch(k -> k.endsWith("ength"));
  }

  private Map<String, Double> valueBounds() {
    return bounds.entrySet().stream()
        .filter(e -> !e.getKey().endsWith("ength"))
        .collect(java.util.stream.Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
  }

  private boolean isLong(int length) {
    return holds("length", length, (a, b) -> a == b)
        && holds("minLength", length, (a, b) -> a >= b)
        && holds("maxLength", length, (a, b) -> a <= b);
  }

  private boolean within(double number) {
    return holds("minInclusive", number, (a, b) -> a >= b - TOLERANCE * Math.abs(b) - TOLERANCE)
        && holds("maxInclusive", number, (a, b) -> a <= b + TOLERANCE * Math.abs(b) + TOLERANCE)
        && holds("minExclusive", number, (a, b) -> a > b)
        && holds("maxExclusive", number, (a, b) -> a < b);
  }

  private interface Bound {
    boolean holds(double value, double bound);
  }

  private boolean holds(String name, double value, Bound bound) {
    return !bounds.containsKey(name) || bound.holds(value, bounds.getOrDefault(name, 0.0));
  }

  /** In words, for a message. */
  String words() {
    if (!options.isEmpty()) {
      return String.join(" or ", options);
    }
    String all = patterns.isEmpty() ? "" : "matching " + patterns;
    return bounds.isEmpty() ? all : (all + " with " + new java.util.TreeMap<>(bounds)).strip();
  }
}
