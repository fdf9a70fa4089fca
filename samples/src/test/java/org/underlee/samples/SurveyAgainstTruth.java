package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Holds a survey against what a sample's generator knows of itself. Decks, fields and bays are
 * matched by the members they are made of, never by their ids.
 */
final class SurveyAgainstTruth {
  private static final double MM = 0.1;

  /** A crossing's size may come from facets of a circle. */
  private static final double SIZE_MM = 1;

  private SurveyAgainstTruth() {}

  static void compare(JsonNode truth, JsonNode survey) {
    List<JsonNode> expected = fields(truth);
    List<JsonNode> found = fields(survey);
    assertThat(found).as("fields").hasSameSizeAs(expected);
    for (JsonNode field : expected) {
      JsonNode match =
          found.stream()
              .filter(f -> joists(f).equals(joists(field)))
              .findFirst()
              .orElseThrow(
                  () ->
                      new AssertionError(
                          "no field has the joists of "
                              + field.get("id")
                              + ": "
                              + joists(field)
                              + "\n found "
                              + found.stream().map(SurveyAgainstTruth::joists).toList()));
      field(field, match);
    }
    roles(truth, survey);
  }

  private static List<JsonNode> fields(JsonNode report) {
    List<JsonNode> fields = new ArrayList<>();
    report.get("decks").forEach(d -> d.get("fields").forEach(fields::add));
    return fields;
  }

  private static TreeSet<String> joists(JsonNode field) {
    TreeSet<String> ids = new TreeSet<>();
    field.get("joistLines").forEach(l -> l.get("members").forEach(m -> ids.add(m.asText())));
    return ids;
  }

  private static void field(JsonNode truth, JsonNode found) {
    for (int i = 0; i < 2; i++) {
      assertThat(found.at("/fallDirection/" + i).asDouble())
          .as("fall direction of %s", truth.get("id"))
          .isCloseTo(truth.at("/fallDirection/" + i).asDouble(), within(1e-4));
    }
    for (String list : List.of("ledgers", "rims", "beams", "posts", "headers", "trimmers")) {
      assertThat(set(found.get(list)))
          .as("%s of %s", list, truth.get("id"))
          .isEqualTo(set(truth.get(list)));
    }
    assertThat(found.get("joistLines")).as("lines").hasSameSizeAs(truth.get("joistLines"));
    for (int i = 0; i < truth.get("joistLines").size(); i++) {
      line(truth.get("joistLines").get(i), found.get("joistLines").get(i));
    }
    bays(truth, found);
  }

  private static void line(JsonNode truth, JsonNode found) {
    assertThat(found.get("members")).isEqualTo(truth.get("members"));
    assertThat(found.get("plies").asInt()).isEqualTo(truth.get("plies").asInt());
    close(truth, found, "widthMm", MM);
    close(truth, found, "depthMm", MM);
  }

  private static void bays(JsonNode truth, JsonNode found) {
    Map<String, JsonNode> byLines = new HashMap<>();
    found.get("bays").forEach(b -> byLines.put(between(found, b), b));
    assertThat(found.get("bays"))
        .as("bays of %s", truth.get("id"))
        .hasSameSizeAs(truth.get("bays"));
    for (JsonNode bay : truth.get("bays")) {
      JsonNode match = byLines.get(between(truth, bay));
      assertThat(match).as("bay %s of %s", bay.get("id"), truth.get("id")).isNotNull();
      bay(bay, match);
    }
  }

  private static String between(JsonNode field, JsonNode bay) {
    Map<String, String> lines = new HashMap<>();
    field
        .get("joistLines")
        .forEach(l -> lines.put(l.get("id").asText(), l.get("members").toString()));
    return lines.get(bay.at("/between/0").asText()) + lines.get(bay.at("/between/1").asText());
  }

  private static void bay(JsonNode truth, JsonNode found) {
    close(truth, found, "clearWidthHighMm", MM);
    close(truth, found, "clearWidthLowMm", MM);
    close(truth, found, "lengthMm", MM);
    matched(
        truth,
        found,
        "blocking",
        "member",
        Map.of("atMm", MM, "thicknessMm", MM, "bottomAboveJoistBottomMm", MM));
    matched(
        truth,
        found,
        "crossings",
        "element",
        Map.of("atMm", SIZE_MM, "acrossMm", SIZE_MM, "sizeMm", SIZE_MM));
    for (JsonNode crossing : truth.get("crossings")) {
      JsonNode match =
          byKey(found.get("crossings"), "element").get(crossing.get("element").asText());
      assertThat(match.get("way")).isEqualTo(crossing.get("way"));
      assertThat(match.get("ifcClass")).isEqualTo(crossing.get("ifcClass"));
    }
  }

  private static void matched(
      JsonNode truth, JsonNode found, String list, String key, Map<String, Double> numbers) {
    Map<String, JsonNode> have = byKey(found.get(list), key);
    Map<String, JsonNode> want = byKey(truth.get(list), key);
    assertThat(have.keySet()).as("%s of bay %s", list, truth.get("id")).isEqualTo(want.keySet());
    want.forEach((id, node) -> numbers.forEach((name, by) -> close(node, have.get(id), name, by)));
  }

  private static Map<String, JsonNode> byKey(JsonNode list, String key) {
    Map<String, JsonNode> map = new HashMap<>();
    list.forEach(n -> map.put(n.get(key).asText(), n));
    return map;
  }

  /** Framing and boards have the role they were made for; what is neither has none of these. */
  private static void roles(JsonNode truth, JsonNode survey) {
    Map<String, JsonNode> have = byKey(survey.get("roles"), "member");
    for (JsonNode role : truth.get("roles")) {
      String want = role.get("role").asText();
      JsonNode given = have.get(role.get("member").asText());
      String got = given == null ? "none" : given.get("role").asText();
      assertThat(accepted(want)).as("role of %s", role.get("member")).contains(got);
    }
  }

  private static List<String> accepted(String made) {
    return switch (made) {
      case "joist", "ledger", "rim", "post", "blocking", "deck-board" -> List.of(made);
      case "beam" -> List.of("drop-beam", "flush-beam");
      case "guard" -> List.of("guard-post", "none");
      default -> List.of("none");
    };
  }

  private static void close(JsonNode truth, JsonNode found, String name, double by) {
    assertThat(found.get(name).asDouble())
        .as("%s of %s", name, truth)
        .isCloseTo(truth.get(name).asDouble(), within(by));
  }

  private static TreeSet<String> set(JsonNode array) {
    TreeSet<String> ids = new TreeSet<>();
    array.forEach(n -> ids.add(n.asText()));
    return ids;
  }
}
