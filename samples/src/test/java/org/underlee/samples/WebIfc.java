package org.underlee.samples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Measures IFC files with {@code web-ifc}, a reader that shares nothing with ours, in one run of
 * Node.js for many files.
 */
public final class WebIfc {
  public static final String SKIPPED = NodeScripts.SKIPPED;

  private WebIfc() {}

  /**
   * What the reader says of one element; metres, z up.
   *
   * @param open how far its area vectors are from summing to nothing, as a share of its area
   * @param triangles nine numbers each, for elements of the class asked for
   */
  public record Product(
      Path file,
      long instance,
      String type,
      String globalId,
      double[] min,
      double[] max,
      double volume,
      double open,
      double[] triangles) {}

  /**
   * What it says of many files.
   *
   * @param unread files that it could not read, or not to their end, with its reason
   */
  public record Reading(List<Product> products, Map<Path, String> unread) {}

  /** Whether {@code node} and {@code npm} can be started. */
  public static boolean nodeAvailable() {
    return NodeScripts.available();
  }

  /** Every product with a mesh in {@code files}; fails when a file cannot be read. */
  public static List<Product> measure(List<Path> files) throws IOException, InterruptedException {
    return measure(files, "none");
  }

  /** As {@link #measure(List)}, with the triangles of elements of one class. */
  public static List<Product> measure(List<Path> files, String trianglesOf)
      throws IOException, InterruptedException {
    Reading reading = read(files, trianglesOf);
    if (!reading.unread().isEmpty()) {
      throw new AssertionError(reading.unread().toString());
    }
    return reading.products();
  }

  /** Every product with a mesh in those of {@code files} that can be read. */
  public static Reading read(List<Path> files, String trianglesOf)
      throws IOException, InterruptedException {
    String list =
        files.stream().map(f -> f.toAbsolutePath().toString()).collect(Collectors.joining("\n"));
    List<String> command = List.of("node", "measure.mjs", "--triangles", trianglesOf);
    ObjectMapper json = new ObjectMapper();
    Reading reading = new Reading(new ArrayList<>(), new TreeMap<>());
    for (String text : NodeScripts.in("node").run(command, list).split("\n")) {
      if (!text.isBlank()) {
        JsonNode line = json.readTree(text);
        if (line.has("error")) {
          reading.unread().put(Path.of(line.get("file").asText()), line.get("error").asText());
        } else {
          reading.products().add(product(line));
        }
      }
    }
    return reading;
  }

  private static Product product(JsonNode line) {
    return new Product(
        Path.of(line.get("file").asText()),
        line.get("instance").asLong(),
        line.get("type").asText(),
        line.get("globalId").asText(),
        numbers(line.get("min")),
        numbers(line.get("max")),
        line.get("volume").asDouble(),
        line.get("open").asDouble(),
        numbers(line.get("triangles")));
  }

  private static double[] numbers(JsonNode list) {
    double[] numbers = new double[list.size()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = list.get(i).asDouble();
    }
    return numbers;
  }
}
