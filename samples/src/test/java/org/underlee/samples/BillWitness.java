package org.underlee.samples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/**
 * What {@code web-ifc} reads of the bill in a drained model, and what it measures of the elements
 * that the bill counts; SI.
 *
 * @param lines of the bill
 * @param pieces what they count, by GlobalId
 * @param total what the bill says that all costs
 * @param sum of all units ordered times their price, added up by the witness
 */
record BillWitness(List<Line> lines, Map<String, Piece> pieces, double total, double sum) {
  /**
   * A line of the bill.
   *
   * @param kind of its quantity: {@code Length} or {@code Count}
   * @param elements GlobalIds of what it counts
   */
  record Line(String item, String kind, double value, List<String> elements) {}

  /**
   * An element.
   *
   * @param mesh none where it has no body
   * @param said its quantities by name
   */
  record Piece(String type, Optional<Mesh> mesh, Map<String, Double> said) {}

  /**
   * What its triangles say.
   *
   * @param way unit vector that most of its edges run along, or down which a pan falls
   * @param from where along the way its longest line of edges begins, or a pan does
   * @param to where that ends
   * @param area of all its faces
   * @param open how far its area vectors are from summing to nothing, as a share of its area
   */
  record Mesh(List<Double> way, double from, double to, double volume, double area, double open) {
    double length() {
      return to - from;
    }
  }

  /** Files by what is read of them, in one run of the witness; fails when one cannot be read. */
  static Map<Path, BillWitness> read(List<Path> files) throws IOException, InterruptedException {
    String list =
        files.stream().map(f -> f.toAbsolutePath().toString()).collect(Collectors.joining("\n"));
    ObjectMapper json = new ObjectMapper();
    Map<Path, List<JsonNode>> lines = new LinkedHashMap<>();
    for (String text : NodeScripts.in("node").run(List.of("node", "bill.mjs"), list).split("\n")) {
      JsonNode line = json.readTree(text);
      if (line.has("error")) {
        throw new AssertionError(text);
      }
      lines.computeIfAbsent(Path.of(line.get("file").asText()), f -> new ArrayList<>()).add(line);
    }
    Map<Path, BillWitness> read = new LinkedHashMap<>();
    files.forEach(f -> read.put(f, of(lines.getOrDefault(f.toAbsolutePath(), List.of()))));
    return read;
  }

  private static BillWitness of(List<JsonNode> all) {
    List<Line> lines = new ArrayList<>();
    Map<String, Piece> pieces = new LinkedHashMap<>();
    double total = 0;
    double sum = 0;
    for (JsonNode line : all) {
      if (line.has("item")) {
        lines.add(line(line));
      } else if (line.has("part")) {
        pieces.put(line.get("part").asText(), piece(line));
      } else {
        total = line.get("total").asDouble();
        sum = line.get("sum").asDouble();
      }
    }
    return new BillWitness(lines, pieces, total, sum);
  }

  private static Line line(JsonNode line) {
    return new Line(
        line.get("item").asText(),
        line.get("kind").asText(),
        line.get("value").asDouble(),
        StreamSupport.stream(line.get("elements").spliterator(), false)
            .map(JsonNode::asText)
            .toList());
  }

  private static Piece piece(JsonNode line) {
    Map<String, Double> said = new LinkedHashMap<>();
    line.get("said").properties().forEach(e -> said.put(e.getKey(), e.getValue().asDouble()));
    return new Piece(
        line.get("type").asText(),
        Optional.ofNullable(line.get("mesh")).map(BillWitness::mesh),
        said);
  }

  private static Mesh mesh(JsonNode mesh) {
    return new Mesh(
        StreamSupport.stream(mesh.get("way").spliterator(), false).map(JsonNode::asDouble).toList(),
        mesh.get("from").asDouble(),
        mesh.get("to").asDouble(),
        mesh.get("volume").asDouble(),
        mesh.get("area").asDouble(),
        mesh.get("open").asDouble());
  }
}
