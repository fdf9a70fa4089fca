package org.underlee.report.packet;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Turns the measures of a sentence, as findings write them, into another language's. */
final class MeasureWords {
  private static final char POINT = '.';

  /** As {@code Quantity} writes them, the longer before what it begins with. */
  private static final List<String> UNITS =
      List.of(
          "gallons an hour",
          "litres an hour",
          "in per ft",
          "sq ft",
          "sq in",
          "mm/h",
          "in/h",
          "L/s",
          "gpm",
          "kg/m²",
          "psf",
          "cm²",
          "m²",
          "mm",
          "kg",
          "lb",
          "%",
          "degrees F");

  /** A number with its unit, or the run of a fall; section numbers of codes have neither. */
  private static final Pattern MEASURE =
      Pattern.compile(
          "1:\\d+(?:\\.\\d+)?|(\\d+(?:\\.\\d+)?(?:/\\d+)?)([ \u00a0])("
              + UNITS.stream().map(Pattern::quote).collect(Collectors.joining("|"))
              + ")(?![\\w²/])");

  private MeasureWords() {}

  static String of(Writing writing, String told) {
    char sign = writing.number(0.5, 1).charAt(1);
    Matcher measure = MEASURE.matcher(told);
    return measure.replaceAll(
        m ->
            Matcher.quoteReplacement(
                m.group(3) == null
                    ? m.group().replace(POINT, sign)
                    : m.group(1).replace(POINT, sign)
                        + m.group(2)
                        + writing.translated(m.group(3))));
  }
}
