package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.DryZone;
import org.underlee.layout.Onto;
import org.underlee.layout.OwnTables;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.HighLineAsked;
import org.underlee.run.Overrides;
import org.underlee.run.Redecided;

/**
 * Everything that a person has decided about a model. The model and these give the result, and
 * nothing else does.
 *
 * @param deck the one in scope; all outside decks when empty
 * @param kit a kit's name or file
 * @param runPerFall of the pans, in place of the kit's
 * @param rain a rate or a place, as after {@code --rain}
 * @param services models of services that may cross the bays
 * @param accepted what a person has answered for: findings by {@link Told#key}, issues by {@link
 *     ServiceIssue#key}
 * @param wishes what is fixed about the decks: seat, low end, bays left open, boards off, dry zone
 * @param roles what elements of the model are said to be, by GlobalId, as {@link Overrides#words}
 * @param bothWays fields that are to fall both ways, by the name that they have falling one way, as
 *     after {@code --both-ways}
 */
public record Decisions(
    Optional<String> deck,
    String kit,
    OptionalDouble runPerFall,
    String rain,
    List<String> services,
    Map<String, Acceptance> accepted,
    Wishes wishes,
    Map<String, String> roles,
    Set<String> bothWays) {
  public static final Decisions FIRST =
      new Decisions(
          Optional.empty(),
          KitReader.builtIn().id(),
          OptionalDouble.empty(),
          RainData.ANYWHERE,
          List.of(),
          Map.of(),
          Wishes.NONE,
          Map.of(),
          Set.of());

  static final String BY_YOU = "set by you in the panel";

  public Decisions {
    services = List.copyOf(services);
    accepted = Map.copyOf(accepted);
    roles = Map.copyOf(roles);
    bothWays = Set.copyOf(bothWays);
  }

  public Decisions withDeck(Optional<String> id) {
    return new Decisions(id, kit, runPerFall, rain, services, accepted, wishes, roles, bothWays);
  }

  /** Another kit, with its own fall. */
  public Decisions withKit(String nameOrFile) {
    return new Decisions(
        deck,
        nameOrFile,
        OptionalDouble.empty(),
        rain,
        services,
        accepted,
        wishes,
        roles,
        bothWays);
  }

  public Decisions withRunPerFall(OptionalDouble run) {
    return new Decisions(deck, kit, run, rain, services, accepted, wishes, roles, bothWays);
  }

  public Decisions withRain(String rateOrPlace) {
    return new Decisions(
        deck, kit, runPerFall, rateOrPlace, services, accepted, wishes, roles, bothWays);
  }

  public Decisions withService(Path model) {
    List<String> more = new ArrayList<>(services);
    more.add(model.toString());
    return servedBy(more);
  }

  /** Without a model of services. */
  public Decisions withoutService(String file) {
    return servedBy(services.stream().filter(s -> !s.equals(file)).toList());
  }

  private Decisions servedBy(List<String> files) {
    return new Decisions(deck, kit, runPerFall, rain, files, accepted, wishes, roles, bothWays);
  }

  private Decisions with(Wishes others) {
    return new Decisions(deck, kit, runPerFall, rain, services, accepted, others, roles, bothWays);
  }

  /** The height of the high end, metres from the joist bottom there; the kit's when empty. */
  public Decisions withSeat(OptionalDouble metres) {
    return with(wishes.withSeat(metres));
  }

  /** The line that low ends follow; as the framing has it when empty. */
  public Decisions withLowEnd(Optional<String> line) {
    return with(wishes.endingAt(line));
  }

  /** Whether the boards are off, or not yet laid. */
  public Decisions withBoardsOff(boolean off) {
    return with(wishes.withBoardsOff(off));
  }

  /** What must stay dry; everything below the decks when empty. */
  public Decisions withDryZone(Optional<DryZone> zone) {
    return with(wishes.keepingDry(zone));
  }

  /**
   * Where a field's outlets are.
   *
   * @param metres along its gutter; none to let the program choose
   */
  public Decisions withOutlets(String field, List<Double> metres) {
    return with(wishes.withOutlets(wishes.outlets().with(field, metres)));
  }

  /**
   * With more roofs whose rain comes onto decks.
   *
   * @param places as after {@code --also-drains}
   */
  Decisions alsoDraining(String places) {
    List<Onto> all = new ArrayList<>(wishes.onto());
    Stream.of(places.split(" ")).map(Onto::parse).forEach(all::add);
    return with(wishes.with(all));
  }

  /** Without the rain of a roof. */
  Decisions notDraining(Onto onto) {
    List<Onto> others = new ArrayList<>(wishes.onto());
    others.remove(onto);
    return with(wishes.with(others));
  }

  /** The user's own tables by which gutters and downspouts are rated, too. */
  Decisions withTables(Optional<OwnTables> tables) {
    return with(wishes.ratedBy(tables));
  }

  /** An element said to be something, or again as it was recognised. */
  public Decisions withRole(String globalId, Optional<String> word) {
    Map<String, String> said = new TreeMap<>(roles);
    said.remove(globalId);
    word.ifPresent(w -> said.put(globalId, w));
    return new Decisions(deck, kit, runPerFall, rain, services, accepted, wishes, said, bothWays);
  }

  /** The fields that are to fall both ways, and no others. */
  public Decisions fallingBothWays(Set<String> fields) {
    return new Decisions(deck, kit, runPerFall, rain, services, accepted, wishes, roles, fields);
  }

  /** A field falling both ways, or again one way. */
  public Decisions turningWays(String field) {
    return highLine(field).isPresent()
        ? fallingOneWay(field)
        : turnedAt(new HighLineAsked(field, OptionalDouble.empty()));
  }

  /** A field falling one way, as it is framed. */
  Decisions fallingOneWay(String field) {
    return fallingBothWays(others(field));
  }

  /** A field falling both ways from this line, and from no other. */
  public Decisions turnedAt(HighLineAsked line) {
    Set<String> fields = others(line.field());
    fields.add(line.text());
    return fallingBothWays(fields);
  }

  /** What was asked of a field that is to fall both ways. */
  public Optional<HighLineAsked> highLine(String field) {
    return bothWays.stream()
        .map(HighLineAsked::parse)
        .filter(l -> l.field().equals(field))
        .findFirst();
  }

  private Set<String> others(String field) {
    Set<String> fields = new TreeSet<>(bothWays);
    fields.removeIf(f -> HighLineAsked.parse(f).field().equals(field));
    return fields;
  }

  /** What was decided for an older export, in place of what is decided; services stay. */
  public Decisions again(Redecided then) {
    return new Decisions(
        then.scope().deck(),
        then.kit(),
        then.runPerFall(),
        then.rain().orElse(FIRST.rain),
        services,
        accepted,
        then.scope().wishes(),
        then.roles(),
        then.bothWays());
  }

  public OptionalDouble seat() {
    return wishes.seat();
  }

  public Optional<String> lowEnd() {
    return wishes.lowEnd();
  }

  public boolean boardsOff() {
    return wishes.boardsOff();
  }

  /** A bay left open on purpose, or no longer. */
  public Decisions turning(Item.OfBay bay) {
    String name = bay.field() + "/" + bay.bay();
    Set<String> open = new TreeSet<>(wishes.leaveOpen());
    if (!open.remove(name)) {
      open.add(name);
    }
    return with(wishes.leavingOpen(open));
  }

  /**
   * A bay no longer left open on purpose.
   *
   * @param bay as it is named in {@link Wishes#leaveOpen}
   */
  Decisions closing(String bay) {
    Set<String> open = new TreeSet<>(wishes.leaveOpen());
    open.remove(bay);
    return with(wishes.leavingOpen(open));
  }

  /** An issue accepted for a reason; no longer accepted when the reason is blank. */
  public Decisions accepting(String issue, String reason) {
    return reason.isBlank()
        ? reopening(Set.of(issue))
        : accepting(Map.of(issue, Acceptance.plain(reason.strip())));
  }

  /** With more that is accepted, or accepted anew. */
  Decisions accepting(Map<String, Acceptance> more) {
    Map<String, Acceptance> all = new TreeMap<>(accepted);
    all.putAll(more);
    return withAccepted(all);
  }

  /** Without what was accepted by these names. */
  Decisions reopening(Collection<String> keys) {
    Map<String, Acceptance> all = new TreeMap<>(accepted);
    all.keySet().removeAll(keys);
    return withAccepted(all);
  }

  private Decisions withAccepted(Map<String, Acceptance> all) {
    return new Decisions(deck, kit, runPerFall, rain, services, all, wishes, roles, bothWays);
  }

  /** The same with no finding accepted. */
  Decisions answeringNothing() {
    return new Decisions(deck, kit, runPerFall, rain, services, Map.of(), wishes, roles, bothWays);
  }

  /**
   * The kit with what was decided about it.
   *
   * @throws InputException when it cannot be used
   */
  public Kit chosenKit() {
    Kit chosen = KitReader.named(kit);
    return runPerFall.isPresent()
        ? chosen.with(DrainValue.RUN_PER_FALL, runPerFall.getAsDouble(), BY_YOU)
        : chosen;
  }

  public Scope scope() {
    return new Scope(deck).with(wishes);
  }

  /**
   * The rain to carry away.
   *
   * @throws InputException when it is neither a rate nor a place of the table
   */
  public Storm storm() {
    return RainData.builtIn()
        .meant(rain)
        .orElseThrow(
            () ->
                new InputException(
                    Place.NOWHERE,
                    "\"" + rain + "\" is no rain",
                    "Write a rate such as 8in/h or 150mm/h, or a place of the rain table."));
  }

  /** Whether the design is the same under others: only what was accepted differs. */
  boolean designsAs(Decisions other) {
    return new Decisions(
            deck, kit, runPerFall, rain, services, other.accepted, wishes, roles, bothWays)
        .equals(other);
  }

  /** Whether a model need not be read again when these take the place of others. */
  boolean readsAs(Decisions other) {
    return services.equals(other.services)
        && roles.equals(other.roles)
        && bothWays.equals(other.bothWays);
  }
}
