package org.underlee.kit;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;

/** Makes the reference pages of kits from the code that reads them. */
final class KitReference {
  static final String SCHEMA_FILE = "docs/reference/kit.schema.json";
  static final String VALUES_FILE = "docs/reference/kit-values.md";

  private static final ObjectMapper JSON = new ObjectMapper();

  private KitReference() {}

  /** Writes both files below the given root of the project. */
  public static void main(String[] args) throws IOException {
    Path root = Path.of(args.length > 0 ? args[0] : ".");
    Files.createDirectories(root.resolve(SCHEMA_FILE).getParent());
    Files.writeString(root.resolve(SCHEMA_FILE), schema());
    Files.writeString(root.resolve(VALUES_FILE), values());
  }

  /** The shape of a kit file of any family, JSON Schema 2020-12. */
  static String schema() {
    ObjectNode root = JSON.createObjectNode();
    root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    root.put("title", "Underlee kit");
    root.put(
        "description",
        "Generated from the code that reads kits. kit-values.md gives every value's meaning.");
    for (Family family : Family.values()) {
      kit(root.withArray("/oneOf").addObject(), family);
    }
    return text(root);
  }

  private static void kit(ObjectNode node, Family family) {
    node.put("title", "Kit of the family " + family.word());
    ObjectNode properties =
        object(
            node,
            List.of("schema", "id", "version", "name", "family", "values", "materials", "stock"));
    properties.putObject("schema").put("const", KitReader.SCHEMA);
    text(properties, "id", "Short name, lower case with dashes");
    text(properties, "version", "Version of the kit's own data");
    text(properties, "name", "Name for people");
    properties.putObject("family").put("const", family.word());
    numbers(properties.putObject("values"), family);
    ObjectNode materials = properties.putObject("materials");
    materials.put("type", "array");
    material(materials.putObject("items"));
    stock(properties.putObject("stock"), family);
  }

  /** An object with these keys and no other, all required; answers where the keys are described. */
  private static ObjectNode object(ObjectNode node, List<String> keys) {
    node.put("type", "object");
    keys.forEach(node.putArray("required")::add);
    node.put("additionalProperties", false);
    return node.putObject("properties");
  }

  private static ObjectNode text(ObjectNode properties, String key, String meaning) {
    return properties.putObject(key).put("type", "string").put("description", meaning);
  }

  private static void source(ObjectNode properties) {
    text(properties, "source", "Where the number comes from").put("pattern", "\\S");
  }

  private static void numbers(ObjectNode node, Family family) {
    ObjectNode properties =
        object(
            node,
            family.numbers().stream().filter(n -> !n.isOptional()).map(KitNumber::key).toList());
    for (KitNumber value : family.numbers()) {
      ObjectNode own = properties.putObject(value.key());
      own.put("description", value.meaning());
      ObjectNode entry = object(own, List.of("value", "source"));
      entry.putObject("value").put("type", "number").put("exclusiveMinimum", 0);
      source(entry);
    }
  }

  private static void material(ObjectNode node) {
    ObjectNode properties =
        object(node, List.of("id", "name", "densityKgPerM3", "colour", "source"));
    text(properties, "id", "What stock items call it");
    text(properties, "name", "Name for people");
    properties.putObject("densityKgPerM3").put("type", "number");
    ObjectNode colour = properties.putObject("colour");
    colour.put("type", "array").put("description", "Red, green, blue, 0 to 255");
    colour.putObject("items").put("type", "integer");
    colour.put("minItems", 3).put("maxItems", 3);
    text(properties, "source", "Where the numbers come from");
  }

  private static void stock(ObjectNode node, Family family) {
    node.put("type", "array");
    ObjectNode properties =
        object(
            node.putObject("items"),
            List.of(
                "id",
                "description",
                "unit",
                "stockLengthsMm",
                "kerfMm",
                "material",
                "thicknessMm",
                "shop",
                "source"));
    text(
        properties, "id", "One of " + String.join(", ", family.items()) + "; or another, not used");
    text(properties, "description", "As on a shopping list");
    text(properties, "descriptionInInches", "The same with its sizes in inches; may be left out");
    text(properties, "unit", "What it is bought in: length, piece, roll, coil");
    ObjectNode lengths = properties.putObject("stockLengthsMm");
    lengths.put("type", "array").put("description", "Empty for what is counted by the piece");
    lengths.putObject("items").put("type", "number").put("exclusiveMinimum", 0);
    properties.putObject("kerfMm").put("type", "number").put("minimum", 0);
    text(properties, "material", "The id of a material of this kit");
    properties.putObject("thicknessMm").put("type", "number");
    shop(properties.putObject("shop"));
    text(properties, "source", "Where the numbers come from");
    for (String id : family.items()) {
      ObjectNode contains = JSON.createObjectNode();
      contains.putObject("contains").putObject("properties").putObject("id").put("const", id);
      node.withArray("/allOf").add(contains);
    }
  }

  private static void shop(ObjectNode node) {
    ObjectNode properties =
        object(
            node.put("description", "How it is sold and cut"),
            List.of(
                "unit",
                "pieces",
                "sparePercent",
                "endTrimMm",
                "keepOffcutMm",
                "ripWidthMm",
                "source"));
    text(properties, "unit", "What a shop counts it in: piece, box, roll, coil, sheet");
    ObjectNode pieces = properties.putObject("pieces").put("type", "integer").put("minimum", 1);
    pieces.put("description", "Pieces in one such unit; 1 for lengths, rolls and sheets");
    least(
        properties,
        "sparePercent",
        "Bought on top of what is needed, whole pieces; of a coil or roll, of its length");
    least(properties, "endTrimMm", "Cut off each end of a stock length before it is used");
    least(properties, "keepOffcutMm", "Offcuts at least this long are kept; 0: none is");
    least(properties, "ripWidthMm", "Sheet width to rip pieces from side by side; 0: never");
    source(properties);
  }

  private static void least(ObjectNode properties, String key, String meaning) {
    ObjectNode number = properties.putObject(key).put("type", "number").put("minimum", 0);
    number.put("description", meaning);
  }

  private static String text(ObjectNode root) {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    try {
      return JSON.writer(
                  new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent))
              .writeValueAsString(root)
          + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A table of every value's meaning for each family, and one for each built-in kit. */
  static String values() {
    StringBuilder page =
        new StringBuilder(
            """
            # Values of a kit

            Generated from the code that reads kits; `kit.schema.json` holds the same keys. Every key of the
            kit's family must be in a kit file, but for those that may be left out, with a number above zero in the
            unit that the key ends with, and its source.
            """);
    meanings(page, "Every family: the drain run", List.of(DrainValue.values()));
    for (Family family : Family.values()) {
      List<KitNumber> own =
          family.numbers().stream().filter(n -> !(n instanceof DrainValue)).toList();
      meanings(page, "Family `" + family.word() + "`", own);
    }
    KitReader.allBuiltIn().forEach(kit -> values(page, kit));
    return page.toString();
  }

  private static void meanings(
      StringBuilder page, String title, List<? extends KitNumber> numbers) {
    page.append("\n## ").append(title).append("\n\n| key | meaning |\n|---|---|\n");
    for (KitNumber number : numbers) {
      page.append("| `").append(number.key()).append("` | ");
      page.append(number.meaning()).append(" |\n");
    }
  }

  private static void values(StringBuilder page, Kit kit) {
    page.append("\n## ").append(kit.name()).append(": `").append(kit.id()).append("`\n\n");
    page.append("Family `").append(kit.family().word()).append("`.\n\n");
    page.append("| key | value | its source |\n|---|---|---|\n");
    DecimalFormat number =
        new DecimalFormat("0.####", DecimalFormatSymbols.getInstance(Locale.ROOT));
    for (KitNumber value : kit.family().numbers()) {
      Kit.Sourced own = kit.values().get(value);
      page.append("| `").append(value.key()).append("` | ");
      page.append(number.format(own.value() / value.toSi(1))).append(" | ");
      page.append(own.source().replace("|", "\\|")).append(" |\n");
    }
  }
}
