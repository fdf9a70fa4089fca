package org.underlee.panel.model;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.underlee.finding.InputException;
import org.underlee.layout.DryZone;
import org.underlee.layout.Onto;
import org.underlee.layout.OutletWishes;
import org.underlee.layout.OwnTables;
import org.underlee.layout.Wishes;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The folder in which settings and decisions outlive the program. Each file is written beside its
 * place and moved there in one step, so that a crash leaves the one before. What cannot be read is
 * begun afresh: nothing of a model is ever in here alone.
 */
public final class Memory {
  private static final ObjectMapper JSON =
      JsonMapper.builder().disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES).build();

  private final Path folder;

  public Memory(Path folder) {
    this.folder = folder;
  }

  public Settings settings() {
    JsonNode n = read("panel.json");
    Settings first = Settings.FIRST;
    return new Settings(
        tone(n.path("tone").asText()),
        texts(n.path("recent")),
        n.path("left").asDouble(first.left()),
        n.path("top").asDouble(first.top()),
        n.path("width").asDouble(first.width()),
        n.path("height").asDouble(first.height()),
        n.path("maximized").asBoolean(first.maximized()),
        n.path("fontPercent").asInt(first.fontPercent()),
        units(n.path("units").asText()));
  }

  /** Keeps settings; returns whether they are kept now. */
  public boolean keep(Settings s) {
    ObjectNode n = JSON.createObjectNode();
    n.put("tone", s.tone().name().toLowerCase(Locale.ROOT));
    ArrayNode recent = n.putArray("recent");
    s.recent().forEach(recent::add);
    if (!Double.isNaN(s.left())) {
      n.put("left", s.left()).put("top", s.top());
    }
    n.put("width", s.width()).put("height", s.height()).put("maximized", s.maximized());
    n.put("fontPercent", s.fontPercent());
    s.units().ifPresent(u -> n.put("units", u.name().toLowerCase(Locale.ROOT)));
    return write("panel.json", n);
  }

  /** What was decided about a model when it was last open. */
  public Optional<Decisions> decisions(Path model) {
    JsonNode n = read(nameFor(model));
    if (!n.hasNonNull("kit")) {
      return Optional.empty();
    }
    double run = n.path("runPerFall").asDouble();
    return Optional.of(
        new Decisions(
            Optional.of(n.path("deck").asText()).filter(d -> !d.isEmpty()),
            n.path("kit").asText(),
            run > 0 ? OptionalDouble.of(run) : OptionalDouble.empty(),
            n.path("rain").asText(Decisions.FIRST.rain()),
            texts(n.path("services")),
            accepted(n.path("accepted")),
            wishes(n),
            map(n.path("roles")),
            Set.copyOf(texts(n.path("bothWays")))));
  }

  private static Wishes wishes(JsonNode n) {
    return new Wishes(
        n.path("boardsOff").asBoolean(),
        Set.copyOf(texts(n.path("leaveOpen"))),
        n.hasNonNull("seat")
            ? OptionalDouble.of(n.path("seat").asDouble())
            : OptionalDouble.empty(),
        Optional.of(n.path("lowEnd").asText()).filter(l -> !l.isEmpty()),
        Optional.of(n.path("dryZone").asText()).filter(DryZone::isDrawn).map(DryZone::parse),
        outlets(n.path("outlets").asText()),
        texts(n.path("alsoDrains")).stream().map(Onto::parse).toList(),
        Optional.of(n.path("capacityTables").asText())
            .filter(t -> !t.isEmpty())
            .map(t -> new OwnTables(n.path("capacityFile").asText(), t)));
  }

  private static OutletWishes outlets(String text) {
    try {
      return text.isEmpty() ? OutletWishes.NONE : OutletWishes.parse(text);
    } catch (InputException e) {
      return OutletWishes.NONE;
    }
  }

  private static void keep(Wishes wishes, ObjectNode to) {
    to.put("boardsOff", wishes.boardsOff());
    ArrayNode onto = to.putArray("alsoDrains");
    wishes.onto().forEach(o -> onto.add(o.text()));
    wishes
        .tables()
        .ifPresent(t -> to.put("capacityTables", t.text()).put("capacityFile", t.file()));
    ArrayNode open = to.putArray("leaveOpen");
    new TreeSet<>(wishes.leaveOpen()).forEach(open::add);
    wishes.seat().ifPresent(s -> to.put("seat", s));
    wishes.lowEnd().ifPresent(l -> to.put("lowEnd", l));
    wishes.dryZone().ifPresent(z -> to.put("dryZone", z.text()));
    to.put("outlets", wishes.outlets().text());
  }

  public boolean keep(Path model, Decisions d) {
    ObjectNode n = JSON.createObjectNode();
    n.put("model", model.toAbsolutePath().normalize().toString());
    d.deck().ifPresent(v -> n.put("deck", v));
    n.put("kit", d.kit());
    d.runPerFall().ifPresent(v -> n.put("runPerFall", v));
    n.put("rain", d.rain());
    ArrayNode services = n.putArray("services");
    d.services().forEach(services::add);
    ObjectNode accepted = n.putObject("accepted");
    new TreeMap<>(d.accepted()).forEach((key, a) -> keep(a, accepted.putObject(key)));
    ObjectNode roles = n.putObject("roles");
    new TreeMap<>(d.roles()).forEach(roles::put);
    ArrayNode bothWays = n.putArray("bothWays");
    new TreeSet<>(d.bothWays()).forEach(bothWays::add);
    keep(d.wishes(), n);
    return write(nameFor(model), n);
  }

  private static void keep(Acceptance a, ObjectNode to) {
    to.put("reason", a.reason());
    if (!a.of().isEmpty()) {
      to.put("of", a.of());
    }
    a.past().ifPresent(p -> to.put("past", p));
  }

  /** Older files have the reason alone. */
  private static Map<String, Acceptance> accepted(JsonNode object) {
    Map<String, Acceptance> all = new TreeMap<>();
    object.properties().forEach(e -> all.put(e.getKey(), acceptance(e.getValue())));
    return all;
  }

  private static Acceptance acceptance(JsonNode n) {
    return n.isObject()
        ? new Acceptance(
            n.path("reason").asText(),
            n.path("of").asText(),
            n.hasNonNull("past")
                ? OptionalDouble.of(n.path("past").asDouble())
                : OptionalDouble.empty())
        : Acceptance.plain(n.asText());
  }

  private static String nameFor(Path model) {
    String path = model.toAbsolutePath().normalize().toString();
    return "model-" + UUID.nameUUIDFromBytes(path.getBytes(StandardCharsets.UTF_8)) + ".json";
  }

  private static Tone tone(String word) {
    for (Tone tone : Tone.values()) {
      if (tone.name().equalsIgnoreCase(word)) {
        return tone;
      }
    }
    return Settings.FIRST.tone();
  }

  private static Optional<UnitSystem> units(String word) {
    for (UnitSystem system : UnitSystem.values()) {
      if (system.name().equalsIgnoreCase(word)) {
        return Optional.of(system);
      }
    }
    return Optional.empty();
  }

  private static Map<String, String> map(JsonNode object) {
    Map<String, String> all = new TreeMap<>();
    object.properties().forEach(e -> all.put(e.getKey(), e.getValue().asText()));
    return all;
  }

  private static List<String> texts(JsonNode array) {
    List<String> all = new ArrayList<>();
    array.forEach(t -> all.add(t.asText()));
    return all;
  }

  private JsonNode read(String name) {
    try {
      return JSON.readTree(Files.readString(folder.resolve(name)));
    } catch (IOException e) {
      return JSON.createObjectNode();
    }
  }

  /** Where all of it is. */
  Path folder() {
    return folder;
  }

  /** A full or guarded disk must not stop the work: the next change tries again. */
  private boolean write(String name, ObjectNode node) {
    try {
      Files.createDirectories(folder);
      Path beside = folder.resolve(name + ".new");
      Files.writeString(beside, text(node));
      Files.move(
          beside,
          folder.resolve(name),
          StandardCopyOption.ATOMIC_MOVE,
          StandardCopyOption.REPLACE_EXISTING);
      return true;
    } catch (IOException e) {
      return false; // nothing of the model is lost by this
    }
  }

  private static String text(ObjectNode node) throws JsonProcessingException {
    return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(node);
  }
}
