package org.underlee.writeback;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The entities and types of an EXPRESS schema, as far as a judge of instances needs them: explicit
 * attributes, what is derived, enumerations, selects and what defined types stand for.
 */
final class ExpressSchema {
  /** One explicit attribute; {@code type} is EXPRESS text in upper case. */
  record Attribute(String name, boolean optional, String type) {}

  private record Entity(Optional<String> parent, boolean isAbstract, List<Attribute> own) {}

  private static final Pattern ENTITY = Pattern.compile("(?s)\\bENTITY\\s+(\\w+)(.*?)END_ENTITY;");
  private static final Pattern TYPE =
      Pattern.compile("(?s)\\bTYPE\\s+(\\w+)\\s*=\\s*(.*?);(.*?)END_TYPE;");
  private static final Pattern SECTION =
      Pattern.compile("(?m)^\\s*(INVERSE|DERIVE|WHERE|UNIQUE)\\b");
  private static final Pattern REDECLARED = Pattern.compile("SELF\\\\\\w+\\.(\\w+)\\s*:[^;]*?:=");

  private final Map<String, Entity> entities = new HashMap<>();
  private final Map<String, String> types = new HashMap<>();
  private final Set<String> derived = new HashSet<>();

  static ExpressSchema read(Path file) {
    try {
      String text = Files.readString(file, StandardCharsets.ISO_8859_1);
      return new ExpressSchema(text.replaceAll("(?s)\\(\\*.*?\\*\\)", ""));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ExpressSchema(String text) {
    Matcher m = ENTITY.matcher(text);
    while (m.find()) {
      entity(m.group(1).toUpperCase(Locale.ROOT), m.group(2));
    }
    m = TYPE.matcher(text);
    while (m.find()) {
      types.put(m.group(1).toUpperCase(Locale.ROOT), upper(m.group(2)));
    }
  }

  private void entity(String name, String body) {
    int heading = body.indexOf(';');
    String head = upper(body.substring(0, heading));
    Matcher parent = Pattern.compile("SUBTYPE OF \\( ?(\\w+) ?\\)").matcher(head);
    String rest = body.substring(heading + 1);
    Matcher section = SECTION.matcher(rest);
    String explicit = section.find() ? rest.substring(0, section.start()) : rest;
    List<Attribute> own = new ArrayList<>();
    for (String line : explicit.split(";")) {
      if (line.contains(":")) {
        String[] two = upper(line).split(" ?: ?", 2);
        boolean optional = two[1].startsWith("OPTIONAL ");
        String type = optional ? two[1].substring("OPTIONAL ".length()) : two[1];
        own.add(new Attribute(two[0], optional, type));
      }
    }
    Matcher redeclared = REDECLARED.matcher(rest);
    while (redeclared.find()) {
      derived.add(name + "." + redeclared.group(1).toUpperCase(Locale.ROOT));
    }
    Optional<String> parentName = parent.find() ? Optional.of(parent.group(1)) : Optional.empty();
    boolean isAbstract = head.startsWith("ABSTRACT");
    entities.put(name, new Entity(parentName, isAbstract, own));
  }

  private static String upper(String text) {
    return text.replaceAll("\\s+", " ").strip().toUpperCase(Locale.ROOT);
  }

  boolean isEntity(String name) {
    return entities.containsKey(name);
  }

  boolean isInstantiable(String name) {
    return isEntity(name) && !entities.get(name).isAbstract();
  }

  /** What a defined type stands for, in upper case; empty for entities and simple types. */
  Optional<String> type(String name) {
    return Optional.ofNullable(types.get(name));
  }

  List<Attribute> attributes(String entity) {
    Entity e = entities.get(entity);
    List<Attribute> all = new ArrayList<>();
    e.parent().ifPresent(p -> all.addAll(attributes(p)));
    all.addAll(e.own());
    return all;
  }

  boolean isDerived(String entity, String attribute) {
    return derived.contains(entity + "." + attribute)
        || entities.get(entity).parent().filter(p -> isDerived(p, attribute)).isPresent();
  }

  boolean isA(String entity, String ancestor) {
    return entity.equals(ancestor)
        || Optional.ofNullable(entities.get(entity))
            .flatMap(Entity::parent)
            .filter(p -> isA(p, ancestor))
            .isPresent();
  }
}
