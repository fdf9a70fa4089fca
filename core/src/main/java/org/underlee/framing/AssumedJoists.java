package org.underlee.framing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.units.DressedLumber;
import org.underlee.units.LengthText;

/**
 * What a user lets the program assume where a deck is only a slab or a covering: {@code
 * joists=2x10@16in,direction=90,outline=GLOBALID}.
 *
 * @param text as the user wrote it
 * @param width of a joist, metres
 * @param depth of a joist, metres
 * @param spacing from joist to joist, centre to centre, metres
 * @param direction the way the water goes, radians counter-clockwise from the model's x axis; away
 *     from the house when not given
 * @param outline GlobalId of the slab or covering; may be left out where the model has one only
 */
public record AssumedJoists(
    String text,
    double width,
    double depth,
    double spacing,
    OptionalDouble direction,
    Optional<String> outline) {
  private static final Pattern JOISTS = Pattern.compile("(.+?)@(.+)");
  private static final Pattern METRIC_SECTION =
      Pattern.compile("(\\d+(?:\\.\\d+)?)x(\\d+(?:\\.\\d+)?)mm");
  private static final Set<String> KEYS = Set.of("joists", "direction", "outline");
  private static final String EXAMPLE =
      "write it like joists=2x10@16in or joists=45x220mm@400mm,direction=90";

  /**
   * Reads the text of the option.
   *
   * @throws IllegalArgumentException when it cannot be read, saying how to write it
   */
  public static AssumedJoists parse(String text) {
    Map<String, String> values = values(text);
    Matcher joists = JOISTS.matcher(values.getOrDefault("joists", ""));
    if (!joists.matches()) {
      throw new IllegalArgumentException(
          "\"" + text + "\" does not say which joists at which spacing; " + EXAMPLE);
    }
    DressedLumber.Size size = section(joists.group(1));
    double spacing = LengthText.parse(joists.group(2));
    double clear = spacing - size.thickness();
    if (clear <= 0 || clear > Field.WIDEST_BAY) {
      throw new IllegalArgumentException(
          "joists "
              + joists.group(1)
              + " at "
              + joists.group(2)
              + " leave "
              + Math.round(clear * 1000)
              + " mm between them; give a spacing that leaves up to "
              + Math.round(Field.WIDEST_BAY * 1000)
              + " mm");
    }
    return new AssumedJoists(
        text,
        size.thickness(),
        size.width(),
        spacing,
        direction(values),
        Optional.ofNullable(values.get("outline")));
  }

  private static Map<String, String> values(String text) {
    Map<String, String> values = new LinkedHashMap<>();
    for (String part : text.split(",", -1)) {
      int equals = part.indexOf('=');
      String key = equals < 0 ? part : part.substring(0, equals).strip();
      if (equals < 0 || !KEYS.contains(key)) {
        throw new IllegalArgumentException(
            "\"" + part + "\" is none of joists=, direction=, outline=; " + EXAMPLE);
      }
      if (values.put(key, part.substring(equals + 1).strip()) != null) {
        throw new IllegalArgumentException("\"" + text + "\" gives " + key + " twice; " + EXAMPLE);
      }
    }
    return values;
  }

  private static DressedLumber.Size section(String text) {
    Matcher metric = METRIC_SECTION.matcher(text);
    if (metric.matches()) {
      return new DressedLumber.Size(
          LengthText.parse(metric.group(1) + "mm"), LengthText.parse(metric.group(2) + "mm"));
    }
    DressedLumber table = DressedLumber.table();
    return table
        .size(text)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "\""
                        + text
                        + "\" is no size of lumber known here; it may be one of "
                        + String.join(", ", table.nominals())
                        + ", or in millimetres like 45x220mm"));
  }

  private static OptionalDouble direction(Map<String, String> values) {
    String degrees = values.get("direction");
    if (degrees == null) {
      return OptionalDouble.empty();
    }
    if (!degrees.matches("-?\\d{1,3}(\\.\\d+)?")) {
      throw new IllegalArgumentException(
          "direction="
              + degrees
              + " is not a number of degrees; give the way the water goes, counter-clockwise from"
              + " the model's x axis, like direction=90");
    }
    return OptionalDouble.of(Math.toRadians(Double.parseDouble(degrees)));
  }
}
