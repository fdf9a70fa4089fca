package org.underlee.command;

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
              + " the rain table; 8 in/h when not given.")
  Optional<Storm> given = Optional.empty();

  /** Reads {@code 8in/h}, {@code "Mobile, AL"}. */
  static final class RainConverter implements ITypeConverter<Storm> {
    @Override
    public Storm convert(String text) {
      return RainData.builtIn()
          .meant(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no rain; write it like 8in/h or 150mm/h, or name a place as in"
                          + " docs/reference/rain-and-capacities.md, such as \"Mobile, AL\""));
    }
  }

  Storm storm() {
    return given.orElseGet(() -> RainData.builtIn().service(RainData.ANYWHERE));
  }
}
