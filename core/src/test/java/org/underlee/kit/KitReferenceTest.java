package org.underlee.kit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class KitReferenceTest {
  /** Keys that a kit may leave out. */
  private static final Set<String> OPTIONAL = Set.of("descriptionInInches", "downspoutNominalMm");

  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /**
   * When this fails, run {@link KitReference#main} with the project's root and look at the diff.
   */
  @Test
  void thePublishedReferenceIsWhatTheCodeSays() throws IOException {
    assertThat(ROOT.resolve(KitReference.SCHEMA_FILE)).hasContent(KitReference.schema());
    assertThat(ROOT.resolve(KitReference.VALUES_FILE)).hasContent(KitReference.values());
  }

  @Test
  void everyBuiltInKitHasExactlyTheKeysOfTheSchema() throws IOException {
    JsonNode schema =
        new ObjectMapper().readTree(Files.readString(ROOT.resolve(KitReference.SCHEMA_FILE)));
    List<String> faults = new ArrayList<>();
    for (String name : KitReader.BUILT_IN) {
      compare(schema, KitReaderTest.builtInText(name), name, faults);
    }
    assertThat(faults).isEmpty();
  }

  @Test
  void aKeyMoreOrLessIsNoticed() throws IOException {
    JsonNode schema = new ObjectMapper().readTree(KitReference.schema());
    var kit = KitReaderTest.builtInText();
    kit.put("more", 1);
    ((com.fasterxml.jackson.databind.node.ObjectNode) kit.get("values")).remove("railLegMm");
    List<String> faults = new ArrayList<>();
    compare(schema, kit, "", faults);
    assertThat(faults).hasSize(2);
  }

  /** The part of JSON Schema that the kit's schema uses to say which keys there are. */
  private static void compare(JsonNode schema, JsonNode value, String path, List<String> faults) {
    if (schema.has("oneOf")) {
      String family = value.path("family").asText();
      schema
          .get("oneOf")
          .forEach(
              kit -> {
                if (kit.at("/properties/family/const").asText().equals(family)) {
                  compare(kit, value, path, faults);
                }
              });
    } else if (schema.path("type").asText().equals("array")) {
      value.forEach(v -> compare(schema.get("items"), v, path + "[]", faults));
    } else if (schema.has("properties")) {
      JsonNode properties = schema.get("properties");
      List<String> known = names(properties);
      List<String> required = new ArrayList<>(known);
      required.removeAll(OPTIONAL);
      assertThat(schema.get("required")).hasSameSizeAs(required);
      List<String> there = names(value);
      if (!known.equals(there)) {
        faults.add(path + ": the schema has " + known + ", the kit " + there);
      }
      known.stream()
          .filter(value::has)
          .forEach(k -> compare(properties.get(k), value.get(k), path + "/" + k, faults));
    }
  }

  private static List<String> names(JsonNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    names.sort(String::compareTo);
    return names;
  }
}
