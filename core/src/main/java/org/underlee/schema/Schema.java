package org.underlee.schema;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * A schema as an EXPRESS file states it: entities, types, functions and rules, all names in upper
 * case. An entity has at most one supertype, as in IFC. Immutable.
 */
public final class Schema {
  /** One explicit attribute. */
  record Attribute(String name, boolean optional, ExpressType type) {}

  /** An attribute that follows from others; redeclared where {@code redeclares}. */
  record Derived(String name, Expr value) {}

  /**
   * Who refers to an instance.
   *
   * @param least fewest referring instances
   * @param most most of them; {@link Integer#MAX_VALUE} when any number may
   * @param single whether it is one instance and not a set
   */
  record Inverse(String name, boolean single, int least, int most, String entity, String by) {}

  /** A WHERE rule. */
  record Where(String label, Expr condition) {}

  /** Attributes whose values together are there once. */
  record Unique(String label, List<Expr> attributes) {}

  record Entity(
      String name,
      Optional<String> parent,
      boolean isAbstract,
      List<Attribute> attributes,
      List<Derived> derived,
      List<Inverse> inverses,
      List<Unique> uniques,
      List<Where> wheres) {}

  record Type(String name, ExpressType of, List<Where> wheres) {}

  /** A rule about all instances of an entity. */
  record Global(String name, Function as, List<Where> wheres) {}

  private final String name;
  private final Map<String, Entity> entities;
  private final Map<String, Type> types;
  private final Map<String, Function> functions;
  private final List<Global> globals;
  private final Map<String, String> spellings;
  private final Map<String, List<String>> lines = new HashMap<>();
  private final Map<String, List<Attribute>> explicit = new HashMap<>();
  private final Map<String, Set<String>> selects = new HashMap<>();

  Schema(
      String name,
      Map<String, Entity> entities,
      Map<String, Type> types,
      Map<String, Function> functions,
      List<Global> globals,
      Map<String, String> spellings) {
    this.name = name;
    this.entities = Map.copyOf(entities);
    this.types = Map.copyOf(types);
    this.functions = Map.copyOf(functions);
    this.globals = List.copyOf(globals);
    this.spellings = Map.copyOf(spellings);
    entities.keySet().forEach(e -> lines.put(e, line(e)));
    for (String entity : entities.keySet()) {
      List<Attribute> all = new ArrayList<>();
      line(entity).forEach(e -> all.addAll(0, entity(e).attributes()));
      explicit.put(entity, List.copyOf(all));
    }
    types.values().forEach(this::noteSelect);
  }

  private void noteSelect(Type type) {
    if (type.of() instanceof ExpressType.Select select) {
      for (String of : select.of()) {
        selects.computeIfAbsent(of, k -> new LinkedHashSet<>()).add(type.name());
      }
    }
  }

  /**
   * Reads an EXPRESS file.
   *
   * @throws InputException when it cannot be read or is none
   */
  public static Schema read(Path file) {
    String called = String.valueOf(file.getFileName());
    try {
      return parse(Files.readString(file, StandardCharsets.ISO_8859_1), called);
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(file.toString()),
          Files.exists(file) ? "the schema cannot be read" : "there is no such file",
          "Give the EXPRESS file (.exp) of the standard; its publisher offers it for download.");
    }
  }

  /**
   * Reads the text of an EXPRESS file.
   *
   * @param called its name, for messages
   * @throws InputException when it is none
   */
  public static Schema parse(String text, String called) {
    return new SchemaParser(Tokens.of(text, called)).schema();
  }

  /** {@code IFC4}, as the file says. */
  public String name() {
    return name;
  }

  /** {@code IfcWall} for {@code IFCWALL}. */
  String spelled(String upperCase) {
    return spellings.getOrDefault(upperCase, upperCase);
  }

  /** Names of all entities, in upper case. */
  Set<String> entities() {
    return entities.keySet();
  }

  public boolean isEntity(String entity) {
    return entities.containsKey(entity);
  }

  Entity entity(String entity) {
    Entity found = entities.get(entity);
    if (found == null) {
      throw new IllegalArgumentException(name + " has no entity " + entity);
    }
    return found;
  }

  Optional<Type> type(String type) {
    return Optional.ofNullable(types.get(type));
  }

  boolean isEnumeration(String type) {
    return type(type).filter(t -> t.of() instanceof ExpressType.Enumeration).isPresent();
  }

  Optional<Function> function(String function) {
    return Optional.ofNullable(functions.get(function));
  }

  List<Global> globals() {
    return globals;
  }

  /** The entity and its supertypes, itself first. */
  List<String> line(String entity) {
    List<String> known = lines.get(entity);
    if (known != null) {
      return known;
    }
    List<String> line = new ArrayList<>();
    for (Optional<String> e = Optional.of(entity); e.isPresent(); e = entity(e.get()).parent()) {
      if (line.contains(e.get())) {
        throw new IllegalArgumentException(entity + " is a subtype of itself");
      }
      line.add(e.get());
    }
    return List.copyOf(line);
  }

  public boolean isA(String entity, String ancestor) {
    return isEntity(entity) && line(entity).contains(ancestor);
  }

  /** Explicit attributes in the order of a Part 21 file, those of supertypes first. */
  List<Attribute> attributes(String entity) {
    return explicit.getOrDefault(entity, List.of());
  }

  /** Names of the explicit attributes of an entity as the file spells them, in their order. */
  public List<String> attributeNames(String entity) {
    return attributes(entity).stream().map(a -> spelled(a.name())).toList();
  }

  /** The defined type or entity of an attribute, in upper case, where it is one. */
  public Optional<String> typeOf(String entity, int attribute) {
    List<Attribute> all = attributes(entity);
    return attribute < all.size() && all.get(attribute).type() instanceof ExpressType.Named n
        ? Optional.of(n.name())
        : Optional.empty();
  }

  /** How an attribute is derived, where it is. */
  Optional<Derived> derived(String entity, String attribute) {
    return line(entity).stream()
        .flatMap(e -> entity(e).derived().stream())
        .filter(d -> d.name().equals(attribute))
        .findFirst();
  }

  Optional<Inverse> inverse(String entity, String attribute) {
    return line(entity).stream()
        .flatMap(e -> entity(e).inverses().stream())
        .filter(i -> i.name().equals(attribute))
        .findFirst();
  }

  /** The selects that a type or entity is a choice of, directly. */
  Set<String> selectsOf(String type) {
    return selects.getOrDefault(type, Set.of());
  }
}
