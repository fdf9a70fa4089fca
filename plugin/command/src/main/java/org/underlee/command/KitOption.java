package org.underlee.command;

import java.util.Iterator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The kit to lay out with. */
final class KitOption {
  @Option(
      names = "--kit",
      paramLabel = "KIT",
      completionCandidates = BuiltInKits.class,
      description = "A kit's file, or one of ${COMPLETION-CANDIDATES}; the first when not given.")
  Optional<String> name = Optional.empty();

  @Option(
      names = "--fall",
      paramLabel = "1:RUN",
      converter = FallConverter.class,
      description = "Fall of the pans, such as 1:64 (3/16 in per ft), in place of the kit's.")
  Optional<Fall> fall = Optional.empty();

  /** Names of the kits that need no file. */
  static final class BuiltInKits implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return KitReader.BUILT_IN.iterator();
    }
  }

  /** Run for one unit of fall. */
  record Fall(double run) {}

  /** Reads {@code 1:64}. */
  static final class FallConverter implements ITypeConverter<Fall> {
    private static final Pattern RATIO = Pattern.compile("1:(\\d+(?:\\.\\d+)?)");

    @Override
    public Fall convert(String text) {
      Matcher ratio = RATIO.matcher(text);
      if (!ratio.matches() || Double.parseDouble(ratio.group(1)) == 0) {
        throw new TypeConversionException(
            "\"" + text + "\" is no fall; write it like 1:64, for 3/16 in per ft");
      }
      return new Fall(Double.parseDouble(ratio.group(1)));
    }
  }

  Kit kit() {
    Kit kit = name.map(KitReader::named).orElseGet(KitReader::builtIn);
    return fall.map(f -> kit.with(DrainValue.RUN_PER_FALL, f.run(), "set by you with --fall"))
        .orElse(kit);
  }
}
