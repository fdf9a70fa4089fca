package org.underlee.run;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.FileFault;
import org.underlee.finding.InputException;
import org.underlee.finding.JsonInput;
import org.underlee.finding.Place;
import org.underlee.framing.Role;
import org.underlee.framing.Told;
import org.underlee.units.LengthText;

/**
 * The small file beside a model in which a user sets right what the program took for something
 * else, by GlobalId: {@code deck.underlee.json} beside {@code deck.ifc}.
 *
 * @param file its name, without folders
 */
public record Overrides(String file, Told told) {
  private static final String FIRST = "underlee/overrides/1";

  /** As the first, with fields that fall both ways. */
  private static final String SECOND = "underlee/overrides/2";

  /** As the second, with the places of their high lines. */
  private static final String SCHEMA = "underlee/overrides/3";

  private static final String NOT_FRAMING = "not-framing";

  /** How such a file is called, after the model's name. */
  public static final String ENDING = ".underlee.json";

  private static final String ADVICE = "docs/how-to/set-right-what-was-misread.md shows the file.";

  private static final Map<String, Role> ROLES =
      Arrays.stream(Role.values()).collect(Collectors.toMap(Role::word, Function.identity()));

  private record FirstFile(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) Map<String, String> roles,
      @JsonProperty(required = true) Map<String, Boolean> outside) {}

  private record SecondFile(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) Map<String, String> roles,
      @JsonProperty(required = true) Map<String, Boolean> outside,
      @JsonProperty(required = true) SortedSet<String> bothWays) {}

  private record OverridesFile(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) Map<String, String> roles,
      @JsonProperty(required = true) Map<String, Boolean> outside,
      @JsonProperty(required = true) SortedSet<String> bothWays,
      @JsonProperty(required = true) Map<String, String> highLines) {}

  /**
   * The file that lies beside a model, if there is one.
   *
   * @throws InputException when it cannot be used
   */
  public static Optional<Overrides> beside(Path model) {
    Path file = pathBeside(model);
    return Files.isRegularFile(file) ? Optional.of(read(file)) : Optional.empty();
  }

  /** Where that file lies, or would. */
  public static Path pathBeside(Path model) {
    String name = String.valueOf(model.getFileName());
    int dot = name.lastIndexOf('.');
    return model.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ENDING);
  }

  /**
   * The file at that path.
   *
   * @throws InputException when it cannot be used
   */
  public static Overrides read(Path file) {
    String name = file.getFileName().toString();
    try {
      return read(Files.readString(file), name);
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(name),
          "the overrides cannot be read: " + FileFault.words(e),
          "Check the path, the rights to the file, and that it is text in UTF-8.");
    }
  }

  /** Nothing is set right yet; further words come from {@code name}. */
  public static Overrides nothing(String name) {
    return new Overrides(name, Told.NOTHING);
  }

  /** What an element may be said to be. */
  public static List<String> words() {
    return Stream.concat(ROLES.keySet().stream().sorted(), Stream.of(NOT_FRAMING)).toList();
  }

  /**
   * The same with more said of elements; the newest word on an element holds.
   *
   * @param said one of {@link #words} by GlobalId
   * @throws InputException when a word is none of them
   */
  public Overrides with(Map<String, String> said) {
    Map<String, Role> roles = new HashMap<>(told.roles());
    Set<String> notFraming = new HashSet<>(told.notFraming());
    said.forEach(
        (id, word) -> {
          roles.remove(id);
          notFraming.remove(id);
          put(id, word, file, roles, notFraming);
        });
    return new Overrides(
        file, new Told(roles, notFraming, told.outside(), told.bothWays(), told.highLines()));
  }

  /** As {@link Told#fallingBothWays}. */
  Overrides fallingBothWays(Set<String> joists, Map<String, Double> lines) {
    return new Overrides(file, told.fallingBothWays(joists, lines));
  }

  private static void put(
      String id, String word, String name, Map<String, Role> roles, Set<String> notFraming) {
    if (word.equals(NOT_FRAMING)) {
      notFraming.add(id);
    } else {
      roles.put(id, role(id, word, name));
    }
  }

  static Overrides read(String text, String name) {
    OverridesFile file = file(text, name);
    Map<String, Role> roles = new HashMap<>();
    Set<String> notFraming = new HashSet<>();
    file.roles.forEach((id, word) -> put(id, word, name, roles, notFraming));
    Map<String, Double> lines = new HashMap<>();
    file.highLines.forEach((id, at) -> lines.put(id, station(id, at, name)));
    return new Overrides(name, new Told(roles, notFraming, file.outside, file.bothWays, lines));
  }

  private static double station(String id, String text, String name) {
    try {
      return LengthText.parse(text);
    } catch (IllegalArgumentException e) {
      throw slip(name, "the high line of " + id + ": " + e.getMessage());
    }
  }

  private static OverridesFile file(String text, String name) {
    if (text.contains('"' + SCHEMA + '"')) {
      OverridesFile file = shaped(text, name, OverridesFile.class);
      requireSchema(file.schema, SCHEMA, name);
      return file;
    }
    if (text.contains('"' + SECOND + '"')) {
      SecondFile file = shaped(text, name, SecondFile.class);
      requireSchema(file.schema, SECOND, name);
      return new OverridesFile(SCHEMA, file.roles, file.outside, file.bothWays, Map.of());
    }
    FirstFile file = shaped(text, name, FirstFile.class);
    requireSchema(file.schema, FIRST, name);
    return new OverridesFile(SCHEMA, file.roles, file.outside, new TreeSet<>(), Map.of());
  }

  private static <T> T shaped(String text, String name, Class<T> shape) {
    return JsonInput.read(text, name, shape, "the overrides file", ADVICE);
  }

  private static void requireSchema(String schema, String wanted, String name) {
    if (!schema.equals(wanted)) {
      throw slip(
          name,
          String.format(
              Locale.ROOT,
              "its schema is \"%s\", expected \"%s\", \"%s\" or \"%s\"",
              schema,
              FIRST,
              SECOND,
              SCHEMA));
    }
  }

  /** What is said of elements: one of {@link #words} by GlobalId. */
  public Map<String, String> said() {
    Map<String, String> roles = new TreeMap<>();
    told.roles().forEach((id, role) -> roles.put(id, role.word()));
    told.notFraming().forEach(id -> roles.put(id, NOT_FRAMING));
    return roles;
  }

  /** The file's text again, in one line, the same for the same content. */
  String text() {
    Map<String, Boolean> outside = new TreeMap<>(told.outside());
    SortedSet<String> bothWays = new TreeSet<>(told.bothWays());
    if (told.highLines().isEmpty()) {
      return JsonInput.text(
          bothWays.isEmpty()
              ? new FirstFile(FIRST, said(), outside)
              : new SecondFile(SECOND, said(), outside, bothWays));
    }
    Map<String, String> lines = new TreeMap<>();
    told.highLines().forEach((id, at) -> lines.put(id, HighLineAsked.length(at)));
    return JsonInput.text(new OverridesFile(SCHEMA, said(), outside, bothWays, lines));
  }

  private static Role role(String id, String word, String name) {
    return Optional.ofNullable(ROLES.get(word))
        .orElseThrow(
            () ->
                slip(
                    name,
                    "the role \""
                        + word
                        + "\" of "
                        + id
                        + " is none of "
                        + ROLES.keySet().stream().sorted().collect(Collectors.joining(", "))
                        + ", "
                        + NOT_FRAMING));
  }

  private static InputException slip(String name, String what) {
    return new InputException(
        Place.NOWHERE.inFile(name), "the overrides file cannot be used: " + what, ADVICE);
  }
}
