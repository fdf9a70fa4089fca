package org.underlee.samples.cases;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.underlee.samples.CaseWriter;
import org.underlee.samples.Mix;
import org.underlee.samples.Xyz;

/**
 * Holds a survey against the truth of a case, aspect by aspect. Fields are matched by their joists,
 * lines by their order, bays by the lines that they lie between.
 */
final class Score {
  private static final double MM = 1;

  /** Crossings are met by facets of a circle. */
  private static final double CROSSING_MM = 2;

  private final String name;
  private final Mix mix;
  private final Map<Aspect, String> wrong = new EnumMap<>(Aspect.class);

  private Score(String name, Mix mix) {
    this.name = name;
    this.mix = mix;
  }

  /** What is wrong, with the first fault of each aspect; empty when all is right. */
  static Map<Aspect, String> of(FramingCase.Model model, Mix mix, String name, JsonNode survey) {
    Score score = new Score(name, mix);
    score.roles(model.pieces(), survey);
    score.decks(model.truth(), survey);
    return score.wrong;
  }

  private void expect(Aspect aspect, boolean right, String what) {
    if (!right) {
      wrong.putIfAbsent(aspect, what);
    }
  }

  private void same(Aspect aspect, Object found, Object truth, String what) {
    expect(aspect, found.equals(truth), what + ": found " + found + ", truth " + truth);
  }

  private void near(Aspect aspect, double found, double truth, double by, String what) {
    expect(aspect, Math.abs(found - truth) <= by, what + ": found " + found + ", truth " + truth);
  }

  private String id(String key) {
    return CaseWriter.globalId(name, key);
  }

  private List<String> ids(Collection<String> keys) {
    return keys.stream().map(this::id).toList();
  }

  private void roles(List<Piece> pieces, JsonNode survey) {
    Map<String, String> found = new java.util.HashMap<>();
    survey.get("roles").forEach(r -> found.put(text(r, "member"), text(r, "role")));
    for (Piece piece : pieces) {
      String role = found.getOrDefault(id(piece.key()), "none");
      expect(
          Aspect.ROLES,
          List.of(piece.role().split("\\|")).contains(role),
          piece.key() + " is " + role + ", truth " + piece.role());
    }
  }

  private void decks(Truth truth, JsonNode survey) {
    List<JsonNode> fields = new ArrayList<>();
    TreeSet<String> own = new TreeSet<>();
    truth.decks().forEach(d -> d.fields().forEach(f -> own.addAll(joists(f))));
    List<JsonNode> judged = judged(survey, own);
    judged.forEach(d -> d.get("fields").forEach(fields::add));
    List<TreeSet<String>> levels = new ArrayList<>();
    for (Truth.Deck deck : truth.decks()) {
      TreeSet<String> joists = new TreeSet<>();
      for (Truth.Field field : deck.fields()) {
        joists.addAll(joists(field));
        Optional<JsonNode> match =
            fields.stream().filter(f -> joists(f).equals(joists(field))).findFirst();
        match.ifPresentOrElse(f -> field(field, f), () -> missing(field, fields));
      }
      levels.add(joists);
      outside(deck, joists, survey);
    }
    int count = truth.decks().stream().mapToInt(d -> d.fields().size()).sum();
    expect(Aspect.FIELDS, fields.size() == count, fields.size() + " fields, truth " + count);
    List<TreeSet<String>> foundLevels = new ArrayList<>();
    judged.forEach(d -> foundLevels.add(deckJoists(d)));
    Comparator<TreeSet<String>> first = Comparator.comparing(s -> s.isEmpty() ? "" : s.first());
    levels.sort(first);
    foundLevels.sort(first);
    expect(Aspect.DECKS, levels.equals(foundLevels), "the fields are gathered otherwise");
  }

  /** The decks, without those that are said to be no outside decks and are in no truth. */
  private static List<JsonNode> judged(JsonNode survey, TreeSet<String> own) {
    return stream(survey.get("decks"))
        .filter(
            d ->
                d.at("/outside/value").asBoolean()
                    || deckJoists(d).stream().anyMatch(own::contains))
        .toList();
  }

  private void outside(Truth.Deck deck, TreeSet<String> joists, JsonNode survey) {
    for (JsonNode found : survey.get("decks")) {
      if (deckJoists(found).equals(joists)) {
        same(Aspect.DECKS, found.at("/outside/value").asBoolean(), deck.outside(), "outside");
      }
    }
  }

  private void missing(Truth.Field field, List<JsonNode> fields) {
    String what =
        "no field has the joists of "
            + field.lines().stream().map(Truth.Line::members).toList()
            + "; fields found have "
            + fields.stream().map(f -> joists(f).size()).toList();
    for (Aspect aspect : Aspect.values()) {
      if (aspect != Aspect.ROLES && aspect != Aspect.DECKS) {
        expect(aspect, false, what);
      }
    }
  }

  private TreeSet<String> joists(Truth.Field field) {
    TreeSet<String> joists = new TreeSet<>();
    field.lines().forEach(l -> joists.addAll(ids(l.members())));
    return joists;
  }

  private static TreeSet<String> joists(JsonNode field) {
    TreeSet<String> joists = new TreeSet<>();
    field.get("joistLines").forEach(l -> l.get("members").forEach(m -> joists.add(m.asText())));
    return joists;
  }

  private static TreeSet<String> deckJoists(JsonNode deck) {
    TreeSet<String> joists = new TreeSet<>();
    deck.get("fields").forEach(f -> joists.addAll(joists(f)));
    return joists;
  }

  private void field(Truth.Field truth, JsonNode found) {
    Xyz fall = CaseWriter.inWorld(truth.fall(), mix);
    near(Aspect.FIELDS, found.at("/fallDirection/0").asDouble(), fall.x(), 1e-3, "fall x");
    near(Aspect.FIELDS, found.at("/fallDirection/1").asDouble(), fall.y(), 1e-3, "fall y");
    truth
        .supports()
        .forEach(
            (list, keys) ->
                same(Aspect.SUPPORTS, set(found.get(list)), new TreeSet<>(ids(keys)), list));
    lines(truth, found);
    bays(truth, found);
  }

  private void lines(Truth.Field truth, JsonNode found) {
    List<List<String>> members = new ArrayList<>();
    found.get("joistLines").forEach(l -> members.add(texts(l.get("members"))));
    List<List<String>> want = truth.lines().stream().map(l -> ids(l.members())).toList();
    same(Aspect.LINES, members.size(), want.size(), "number of lines");
    expect(Aspect.LINES, members.equals(want), "members of lines or their order");
    for (int i = 0; i < Math.min(members.size(), want.size()); i++) {
      JsonNode line = found.get("joistLines").get(i);
      Truth.Line own = truth.lines().get(i);
      same(Aspect.PLIES, line.get("plies").asInt(), own.plies(), "plies of line " + (i + 1));
      near(Aspect.LINES, number(line, "widthMm"), own.width(), MM, "width of " + own.members());
      near(Aspect.LINES, number(line, "depthMm"), own.depth(), MM, "depth of " + own.members());
    }
  }

  private void bays(Truth.Field truth, JsonNode found) {
    same(Aspect.BAYS, found.get("bays").size(), truth.bays().size(), "number of bays");
    Map<String, List<JsonNode>> byLines = new java.util.HashMap<>();
    for (JsonNode bay : found.get("bays")) {
      String lines = bay.at("/between/0").asText() + "|" + bay.at("/between/1").asText();
      byLines.computeIfAbsent(lines, l -> new ArrayList<>()).add(bay);
    }
    for (Truth.Bay bay : truth.bays()) {
      String lines = "J" + (bay.left() + 1) + "|J" + (bay.right() + 1);
      List<JsonNode> left = byLines.getOrDefault(lines, new ArrayList<>());
      if (left.isEmpty()) {
        for (Aspect aspect : List.of(Aspect.BAYS, Aspect.BLOCKING, Aspect.CROSSINGS)) {
          expect(aspect, false, "no bay between " + lines);
        }
      } else {
        bay(bay, left.remove(0), lines);
      }
    }
  }

  private void bay(Truth.Bay truth, JsonNode found, String lines) {
    near(Aspect.BAYS, number(found, "lengthMm"), truth.length(), MM, "length of " + lines);
    double high = truth.widths().get(0)[1];
    double low = truth.widths().get(truth.widths().size() - 1)[1];
    near(Aspect.BAYS, number(found, "clearWidthHighMm"), high, MM, "width of " + lines);
    near(Aspect.BAYS, number(found, "clearWidthLowMm"), low, MM, "low width of " + lines);
    widths(truth, found, lines);
    for (Truth.Block block : truth.blocking()) {
      Optional<JsonNode> match = find(found.get("blocking"), "member", block.member());
      expect(Aspect.BLOCKING, match.isPresent(), "no block " + block.member() + " in " + lines);
      match.ifPresent(
          b -> {
            near(Aspect.BLOCKING, number(b, "atMm"), block.at(), MM, "at of " + block);
            near(Aspect.BLOCKING, number(b, "thicknessMm"), block.thickness(), MM, "of " + block);
            near(
                Aspect.BLOCKING,
                number(b, "bottomAboveJoistBottomMm"),
                block.bottom(),
                MM,
                "bottom of " + block);
          });
    }
    same(
        Aspect.BLOCKING,
        keys(found.get("blocking"), "member"),
        new TreeSet<>(ids(truth.blocking().stream().map(Truth.Block::member).toList())),
        "blocking of " + lines);
    same(
        Aspect.BLOCKING,
        keys(found.get("bridging"), "member"),
        new TreeSet<>(ids(truth.bridging().stream().map(Truth.Bridge::member).toList())),
        "bridging of " + lines);
    for (Truth.Bridge bridge : truth.bridging()) {
      find(found.get("bridging"), "member", bridge.member())
          .ifPresent(
              b -> near(Aspect.BLOCKING, number(b, "atMm"), bridge.at(), MM, "at of " + bridge));
    }
    crossings(truth, found, lines);
  }

  private void widths(Truth.Bay truth, JsonNode found, String lines) {
    if (truth.widths().size() <= 2) {
      return;
    }
    JsonNode widths = found.path("clearWidths");
    same(Aspect.BAYS, widths.size(), truth.widths().size(), "widths of " + lines);
    for (int i = 0; i < Math.min(widths.size(), truth.widths().size()); i++) {
      double[] own = truth.widths().get(i);
      near(Aspect.BAYS, number(widths.get(i), "atMm"), own[0], MM, "place of width " + i);
      near(Aspect.BAYS, number(widths.get(i), "widthMm"), own[1], MM, "width " + i);
    }
  }

  private void crossings(Truth.Bay truth, JsonNode found, String lines) {
    same(
        Aspect.CROSSINGS,
        keys(found.get("crossings"), "element"),
        new TreeSet<>(ids(truth.crossings().stream().map(Truth.Crossing::element).toList())),
        "crossings of " + lines);
    for (Truth.Crossing own : truth.crossings()) {
      find(found.get("crossings"), "element", own.element())
          .ifPresent(
              c -> {
                same(Aspect.CROSSINGS, text(c, "way"), own.way(), "way of " + own);
                near(Aspect.CROSSINGS, number(c, "sizeMm"), own.size(), CROSSING_MM, "" + own);
                near(Aspect.CROSSINGS, number(c, "atMm"), own.at(), CROSSING_MM, "" + own);
                near(Aspect.CROSSINGS, number(c, "acrossMm"), own.across(), CROSSING_MM, "" + own);
              });
    }
  }

  private Optional<JsonNode> find(JsonNode list, String key, String piece) {
    return stream(list).filter(n -> text(n, key).equals(id(piece))).findFirst();
  }

  private static TreeSet<String> keys(JsonNode list, String key) {
    TreeSet<String> keys = new TreeSet<>();
    list.forEach(n -> keys.add(text(n, key)));
    return keys;
  }

  private static TreeSet<String> set(JsonNode array) {
    return new TreeSet<>(texts(array));
  }

  private static List<String> texts(JsonNode array) {
    return stream(array).map(JsonNode::asText).toList();
  }

  private static Stream<JsonNode> stream(JsonNode array) {
    List<JsonNode> list = new ArrayList<>();
    array.forEach(list::add);
    return list.stream();
  }

  private static String text(JsonNode node, String field) {
    return node.get(field).asText();
  }

  private static double number(JsonNode node, String field) {
    return node.get(field).asDouble();
  }
}
