package org.underlee.samples.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.drainage.flow.RainData;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.report.SurveyJson;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.samples.CaseWriter;
import org.underlee.samples.Mix;
import org.underlee.samples.Xyz;

/**
 * A deck seen in a mirror is the same deck: its roles, its fields, and its bays member by member.
 */
class MirroredCasesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int SEEDS = 3;

  /** Metres that files in text may differ by. */
  private static final double SAME = 1e-6;

  private static final Set<PartKind> HUNG =
      Set.of(PartKind.PAN, PartKind.SIDE_RAIL, PartKind.MEMBRANE);

  static List<FramingCase> cases() {
    return FramingCasesTest.cases();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void theMirroredDeckHasTheSameSurvey(FramingCase framing) throws Exception {
    for (int seed = 1; seed <= SEEDS; seed++) {
      FramingCase.Model model = framing.make(new Random(seed));
      Mix mix = Mix.PLAIN.with(Mix.Body.TRIANGLES);
      List<Piece> mirrored = model.pieces().stream().map(MirroredCasesTest::mirrored).toList();
      FramingCase.Model other = new FramingCase.Model(model.levels(), mirrored, model.truth());
      assertThat(told(framing, other, mix))
          .as("%s, seed %s", framing.name(), seed)
          .isEqualTo(told(framing, model, mix));
    }
  }

  /** What hangs in the bays, piece by piece; gutters and sheets start from one side. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void theMirroredDeckHasTheSamePartsInItsBays(FramingCase framing) {
    FramingCase.Model model = framing.make(new Random(1));
    List<Piece> mirrored = model.pieces().stream().map(MirroredCasesTest::mirrored).toList();
    Survey here = survey(framing, model);
    Survey there = survey(framing, new FramingCase.Model(model.levels(), mirrored, model.truth()));
    if (here.bays().stream().noneMatch(b -> b.field().fallAssumed())) {
      for (String kit : List.of("formed-aluminium", "membrane-drape")) {
        Layout seen = layOut(here, kit);
        Layout other = layOut(there, kit);
        for (PartKind kind : HUNG) {
          assertThat(sizes(other, kind, Part::length))
              .containsExactly(sizes(seen, kind, Part::length), within(SAME));
          assertThat(sizes(other, kind, Part::width))
              .containsExactly(sizes(seen, kind, Part::width), within(SAME));
        }
      }
    }
  }

  private static Survey survey(FramingCase framing, FramingCase.Model model) {
    Mix mix = Mix.PLAIN.with(Mix.Body.TRIANGLES);
    return DeckRun.survey(CaseWriter.write(framing.name(), model, mix), "case.ifc");
  }

  private static Layout layOut(Survey survey, String kit) {
    Scope scope = Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff());
    return DeckRun.layOut(
        survey, scope, KitReader.named(kit), RainData.builtIn().service(RainData.ANYWHERE));
  }

  /** One size of all parts of a kind, smallest first. */
  private static double[] sizes(Layout layout, PartKind kind, ToDoubleFunction<Part> size) {
    return layout.parts().stream()
        .filter(p -> p.kind() == kind)
        .mapToDouble(size)
        .sorted()
        .toArray();
  }

  private static Piece mirrored(Piece p) {
    List<Body> bodies = p.bodies().stream().map(MirroredCasesTest::mirrored).toList();
    return new Piece(p.key(), p.kind(), p.role(), p.level(), bodies);
  }

  private static Body mirrored(Body body) {
    List<Xyz> points = body.points().stream().map(q -> new Xyz(-q.x(), q.y(), q.z())).toList();
    List<Body.Face> faces =
        body.faces().stream()
            .map(
                f ->
                    new Body.Face(
                        reversed(f.ring()),
                        f.holes().stream().map(MirroredCasesTest::reversed).toList()))
            .toList();
    return new Body.Polyhedron(points, faces);
  }

  private static List<Integer> reversed(List<Integer> ring) {
    List<Integer> turned = new ArrayList<>(ring);
    Collections.reverse(turned);
    return turned;
  }

  /** What does not depend on left and right, line by line. */
  private static Map<String, String> told(FramingCase framing, FramingCase.Model model, Mix mix)
      throws Exception {
    byte[] file = CaseWriter.write(framing.name(), model, mix);
    JsonNode survey = JSON.readTree(SurveyJson.write(DeckRun.survey(file, "case.ifc")));
    Map<String, String> told = new TreeMap<>();
    survey.get("roles").forEach(r -> told.put(text(r, "member"), text(r, "role")));
    for (JsonNode deck : survey.get("decks")) {
      for (JsonNode field : deck.get("fields")) {
        Map<String, TreeSet<String>> lines = new HashMap<>();
        field.get("joistLines").forEach(l -> lines.put(text(l, "id"), set(l.get("members"))));
        String fall = fall(deck, field);
        told.put(
            "field of " + new TreeSet<>(lines.values().stream().map(TreeSet::first).toList()),
            fall);
        field
            .get("bays")
            .forEach(b -> told.merge(between(b, lines), size(b), (x, y) -> both(x, y)));
      }
    }
    return told;
  }

  /** The way the water goes; where nothing tells it, either way may be assumed. */
  private static String fall(JsonNode deck, JsonNode field) {
    boolean assumed = text(field, "fallWhy").startsWith("assumed");
    return String.format(
        Locale.ROOT,
        "falls %.3f %.3f, outside %s",
        assumed ? 0 : Math.abs(field.at("/fallDirection/0").asDouble()),
        assumed ? 0 : field.at("/fallDirection/1").asDouble(),
        deck.at("/outside/value").asBoolean());
  }

  /** Two bays between the same lines, in either order. */
  private static String both(String x, String y) {
    return x.compareTo(y) < 0 ? x + " and " + y : y + " and " + x;
  }

  private static String between(JsonNode bay, Map<String, TreeSet<String>> lines) {
    TreeSet<String> two = new TreeSet<>();
    bay.get("between").forEach(l -> two.add(String.valueOf(lines.get(l.asText()))));
    return "bay " + two;
  }

  private static String size(JsonNode bay) {
    return String.format(
        Locale.ROOT,
        "%.1f long, %.1f to %.1f wide",
        bay.get("lengthMm").asDouble(),
        bay.get("clearWidthHighMm").asDouble(),
        bay.get("clearWidthLowMm").asDouble());
  }

  private static TreeSet<String> set(JsonNode array) {
    TreeSet<String> ids = new TreeSet<>();
    array.forEach(n -> ids.add(n.asText()));
    return ids;
  }

  private static String text(JsonNode node, String field) {
    return node.get(field).asText();
  }
}
