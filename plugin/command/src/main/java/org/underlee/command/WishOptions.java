package org.underlee.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.underlee.layout.OutletWishes;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.CapacityTables;
import org.underlee.run.DryZones;
import org.underlee.run.RainFromRoofs;
import org.underlee.run.Survey;
import org.underlee.units.LengthText;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What the user fixes about the decks in scope. */
final class WishOptions {
  @Option(
      names = "--boards-off",
      description = "The boards are off or not yet laid: joist tops can be reached.")
  boolean boardsOff;

  @Option(
      names = "--leave-open",
      paramLabel = "BAY",
      arity = "1..*",
      description = "Bays to leave open on purpose: B3, or deck-1/field-1/B3.")
  List<String> leaveOpen = List.of();

  @Option(
      names = "--seat",
      paramLabel = "HEIGHT",
      converter = HeightConverter.class,
      description =
          "Seat at the high end above the joist bottom, with a minus below it, such as -20mm or"
              + " \"-3/4 in\".")
  Optional<Height> seat = Optional.empty();

  @Option(
      names = "--low-end",
      paramLabel = "LINE",
      description = "Line that the low end follows: beam-1 from the house, or joist-end.")
  Optional<String> lowEnd = Optional.empty();

  @Option(
      names = "--dry-zone",
      paramLabel = "ZONE",
      description = {
        "What must stay dry: the GlobalId or the name of a slab or space, or corners in metres in the"
            + " model's coordinates, such as \"0,0 3.6,0 3.6,2.4\", with ; between polygons. Bays"
            + " over none of it are left open."
      })
  Optional<String> dryZone = Optional.empty();

  @Option(
      names = "--outlets",
      paramLabel = "PLACES",
      arity = "1..*",
      description = {
        "Where outlets and downspouts are: a field and metres along its gutter from the end at its"
            + " first joist, as deck-1/field-1=0.45,3.2. A place within 10 mm of one beside a post"
            + " is fixed to the post; what would not carry the rain is refused."
      })
  List<String> outlets = List.of();

  @Option(
      names = "--also-drains",
      paramLabel = "AREA@X,Y",
      arity = "1..*",
      description = {
        "A roof's area whose rain comes onto the deck, and where, in metres in the model's"
            + " coordinates, such as 12m2@3.2,1.5 or 130ft2@3.2,1.5: a downspout that ends there."
      })
  List<String> alsoDrains = List.of();

  @Option(
      names = "--capacity-table",
      paramLabel = "FILE",
      description = {
        "Your own tables of what gutters and downspouts carry, as"
            + " docs/reference/own-capacities.schema.json says: they decide beside the program's, and"
            + " one with the id of a table of the program takes its place."
      })
  Optional<Path> tables = Optional.empty();

  @Option(names = "--storey", paramLabel = "NAME", description = "Only decks of this storey.")
  Optional<String> storey = Optional.empty();

  /** Metres. */
  record Height(double metres) {}

  /** Reads {@code -20mm}. */
  static final class HeightConverter implements ITypeConverter<Height> {
    @Override
    public Height convert(String text) {
      try {
        return new Height(LengthText.parseSigned(text));
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }

  /**
   * @throws org.underlee.finding.InputException when nothing is called as the dry zone is, or a
   *     roof's area or place cannot be read or is on no deck, or tables of capacities cannot be
   *     used
   */
  Scope of(Scope scope, Survey survey) {
    return new Scope(
        scope.deck(),
        storey,
        new Wishes(
            boardsOff,
            Set.copyOf(leaveOpen),
            seat.map(h -> OptionalDouble.of(h.metres())).orElseGet(OptionalDouble::empty),
            lowEnd,
            dryZone.map(text -> DryZones.of(survey, text)),
            outlets.isEmpty() ? OutletWishes.NONE : OutletWishes.parse(String.join(" ", outlets)),
            alsoDrains.stream().map(text -> RainFromRoofs.on(survey, text)).toList(),
            tables.map(CapacityTables::at)));
  }
}
