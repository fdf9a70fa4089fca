package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.drainage.flow.Mark;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.framing.Deck;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/** What there is to choose from when a person decides about the open model. */
public final class Offer {
  /** Before a kit is known: 1/8 in per ft. */
  private static final double USUAL_RUN = 96;

  private final Session session;
  private final List<String> builtInKits =
      KitReader.allBuiltIn().stream().map(Kit::id).distinct().toList();
  private final Map<String, String> names =
      KitReader.allBuiltIn().stream().collect(Collectors.toMap(Kit::id, Kit::name, (a, b) -> a));
  private final Set<String> ownKits = new LinkedHashSet<>();

  Offer(Session session) {
    this.session = session;
    session.decisions().addListener((o, before, now) -> know(now.kit()));
  }

  private void know(String kit) {
    if (!builtInKits.contains(kit)) {
      ownKits.add(kit);
    }
  }

  /** Decks to choose from, by id. */
  public List<String> decks() {
    return session.result().get().stream()
        .flatMap(r -> r.survey().framing().decks().stream())
        .map(Deck::id)
        .toList();
  }

  /** Lines that the low ends can follow. */
  public List<String> lowEnds() {
    return session.lowEnds();
  }

  /** Places whose rain is known. */
  public List<String> rainPlaces() {
    return RainData.builtIn().rows().stream().map(RainData.Row::place).distinct().toList();
  }

  public boolean isRain(String text) {
    return RainData.builtIn().meant(text).isPresent();
  }

  /** A place with how hard it rains there: {@code anywhere: 203 mm/h}; a rate as it is. */
  public String rainWords(String rateOrPlace, UnitSystem units) {
    return RainData.builtIn()
        .meant(rateOrPlace)
        .filter(s -> s.mark() != Mark.GIVEN)
        .map(s -> rateOrPlace + ": " + rate(s, units))
        .orElse(rateOrPlace);
  }

  /** The rain that is taken: how hard it is, and by what it was chosen. */
  public String rainTaken(UnitSystem units) {
    return "Rain taken: " + rainRate(units) + " (" + taken().words() + ")";
  }

  /** How hard the rain is that is taken. */
  public String rainRate(UnitSystem units) {
    return rate(taken(), units);
  }

  private Storm taken() {
    return session.decisions().get().storm();
  }

  private static String rate(Storm storm, UnitSystem units) {
    return Quantity.of(Quantity.Kind.RAIN, storm.intensity()).in(units);
  }

  /** A deck of {@link #decks} in words. */
  public String deckWords(String id) {
    return Names.deck(id);
  }

  /** A field as its pieces have it: {@code F1}. */
  public String fieldWords(String id) {
    return Names.of(session.result().get()).field(id);
  }

  /** A line of {@link #lowEnds} in words. */
  public String lowEndWords(String line) {
    return Names.lowEnd(line);
  }

  /** Run for one unit of fall, as decided or as the kit has it. */
  public double runPerFall() {
    return session
        .decisions()
        .get()
        .runPerFall()
        .orElseGet(
            () -> session.result().get().map(r -> 1 / r.layout().kit().fall()).orElse(USUAL_RUN));
  }

  /** The kits to choose from: those that ship with the program, then the user's own by file. */
  public List<String> kits() {
    Set<String> names = new LinkedHashSet<>(builtInKits);
    names.addAll(ownKits);
    return List.copyOf(names);
  }

  /** What a kit is called in a list: its name, or its file without the folders. */
  public String kitWords(String kit) {
    return Optional.ofNullable(names.get(kit))
        .orElseGet(() -> Path.of(kit).getFileName() + " (your own)");
  }
}
