package org.underlee.command;

import java.util.List;
import java.util.Optional;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The rain that must be carried away. */
final class RainOption {
  @Option(
      names = "--rain",
      paramLabel = "RAIN",
      converter = RainConverter.class,
      description =
          "Rain that gutters and outlets must carry: a rate such as 8in/h or 150mm/h, or a place of"
              + " the rain table; 8 in/h when not given, common practice for a burst of 5 minutes."
              + " What gets through is told for 3.9 in/h (100 mm/h) whatever the rain.")
  Optional<Storm> given = Optional.empty();

  /** Reads {@code 8in/h}, {@code "Mobile, AL"}. */
  static final class RainConverter implements ITypeConverter<Storm> {
    @Override
    public Storm convert(String text) {
      RainData table = RainData.builtIn();
      return table
          .meant(text)
          .orElseThrow(() -> new TypeConversionException(unknown(text, table.near(text))));
    }

    private static String unknown(String text, List<String> near) {
      return "\""
          + text
          + "\" is no rain"
          + (near.isEmpty()
              ? "; write it like 8in/h or 150mm/h, or name a place as in"
                  + " docs/reference/rain-and-capacities.md, such as \"Mobile, AL\""
              : " and no place of the table; did you mean \"" + near.get(0) + "\"?");
    }
  }

  Storm storm() {
    return given.orElseGet(() -> RainData.builtIn().service(RainData.ANYWHERE));
  }
}
