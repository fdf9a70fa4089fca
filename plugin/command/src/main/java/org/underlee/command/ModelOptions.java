package org.underlee.command;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.framing.AssumedJoists;
import org.underlee.framing.Deck;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.HighLineAsked;
import org.underlee.run.Overrides;
import org.underlee.run.Survey;
import org.underlee.run.SurveyRequest;
import org.underlee.units.Lengths.UnitSystem;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** What every verb that reads a model understands. */
final class ModelOptions {
  @Parameters(index = "0", paramLabel = "FILE", description = "The model, an IFC file.")
  Path file = Path.of("");

  @Option(names = "--json", description = "Write JSON instead of text.")
  boolean json;

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      description = {
        "End with 1 when a finding is at or above this level: note, warning or error; for check and"
            + " design also new, when an issue is there that was not before."
      })
  Optional<FailOn> failOn = Optional.empty();

  @Option(
      names = "--units",
      paramLabel = "SYSTEM",
      description = "metric or imperial text; as the model's unit when not given.")
  Optional<UnitSystem> units = Optional.empty();

  @Option(names = "--deck", paramLabel = "ID", description = "One deck, such as deck-1.")
  Optional<String> deck = Optional.empty();

  @Option(
      names = "--assume",
      paramLabel = "FRAMING",
      converter = AssumeConverter.class,
      description = {
        "Joists to assume under a slab where the model has no framing:"
            + " joists=2x10@16in,direction=90,outline=GLOBALID."
      })
  Optional<AssumedJoists> assume = Optional.empty();

  @Option(
      names = "--overrides",
      paramLabel = "FILE",
      description = {
        "Roles that you set right, by GlobalId. When not given, <name>.underlee.json beside the"
            + " model."
      })
  Optional<Path> overrides = Optional.empty();

  @Option(
      names = "--both-ways",
      paramLabel = "FIELD[@STATION]",
      converter = BothWaysConverter.class,
      description = {
        "A field that is to fall both ways from a high line inside it, such as deck-1/field-1: only"
            + " where neither end is at a house. The line is where the program puts it, or that far"
            + " from the field's high end, as in deck-1/field-1@2.36m. May be given more than once."
      })
  Set<HighLineAsked> bothWays = Set.of();

  @Option(
      names = "--services",
      paramLabel = "FILE",
      arity = "1..*",
      description = "Models of services that may cross the bays; name them after the model.")
  List<Path> services = List.of();

  @Mixin LimitOptions limits = new LimitOptions();

  @Spec(Spec.Target.MIXEE)
  CommandSpec spec = CommandSpec.create();

  /** Reads {@code --assume}; what is wrong with it is a mistake of usage. */
  static final class AssumeConverter implements ITypeConverter<AssumedJoists> {
    @Override
    public AssumedJoists convert(String text) {
      try {
        return AssumedJoists.parse(text);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }

  /** Reads {@code --both-ways}; what is wrong with it is a mistake of usage. */
  static final class BothWaysConverter implements ITypeConverter<HighLineAsked> {
    @Override
    public HighLineAsked convert(String text) {
      try {
        return HighLineAsked.parse(text);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }

  UnitSystem unitsFor(Survey survey) {
    return units.orElseGet(
        () -> {
          String unit = survey.source().lengthUnit();
          return unit.contains("FOOT") || unit.contains("INCH")
              ? UnitSystem.IMPERIAL
              : UnitSystem.METRIC;
        });
  }

  /**
   * Reads the model.
   *
   * @throws ParameterException when {@code --deck} names none of its decks
   */
  Survey survey() {
    Survey survey = DeckRun.survey(file, request());
    List<String> decks = survey.framing().decks().stream().map(Deck::id).toList();
    deck.filter(d -> !decks.contains(d))
        .ifPresent(
            d -> {
              throw new ParameterException(
                  spec.commandLine(), "--deck " + d + ": " + choice(decks));
            });
    return survey;
  }

  SurveyRequest request() {
    return new SurveyRequest(
        assume,
        overrides.map(Overrides::read).or(() -> Overrides.beside(file)),
        bothWays,
        services,
        limits.limits());
  }

  private static String choice(List<String> decks) {
    return decks.isEmpty()
        ? "no deck was found in the model"
        : "the model has " + String.join(", ", decks);
  }

  Scope scope() {
    return deck.map(d -> new Scope(Optional.of(d))).orElse(Scope.OUTSIDE);
  }

  /** The files of this run. */
  RunFiles files() {
    return RunFiles.of(spec);
  }

  /** Findings go to the people's stream; the exit code says whether one was grave enough. */
  int report(Collection<Finding> findings, UnitSystem shown) {
    for (Finding finding : findings) {
      say(line(finding, shown));
      finding.fix().ifPresent(f -> say("    " + f.words().in(shown)));
      finding.fix().flatMap(Fix::action).ifPresent(a -> say("    Try: " + a.typed()));
    }
    boolean grave =
        failOn.isPresent() && findings.stream().anyMatch(f -> failOn.get().isMetBy(f.level()));
    return grave ? ExitCode.FINDINGS : ExitCode.CLEAN;
  }

  private static String line(Finding finding, UnitSystem shown) {
    String place = finding.place().toString();
    return finding.level().word()
        + " "
        + finding.rule().id()
        + (place.isEmpty() ? "" : " (" + place + ")")
        + ": "
        + finding.message(shown);
  }

  void print(String text) {
    spec.commandLine().getOut().print(text);
    spec.commandLine().getOut().flush();
  }

  void say(String text) {
    spec.commandLine().getErr().println(text);
  }

  /** The first way of writing that a file name's ending asks for. */
  static String ending(Path file, List<String> known) {
    String name = file.getFileName().toString().toLowerCase(java.util.Locale.ROOT);
    return known.stream().filter(name::endsWith).findFirst().orElse("");
  }
}
