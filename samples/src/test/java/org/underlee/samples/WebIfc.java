package org.underlee.samples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/**
 * Measures IFC files with {@code web-ifc}, a reader that shares nothing with ours, in one run of
 * Node.js for many files. Install once into {@code target/web-ifc}; needs the npm registry then.
 */
public final class WebIfc {
  public static final String SKIPPED = "skipped: Node.js is not on the path";
  private static final List<String> SCRIPTS =
      List.of("package.json", "package-lock.json", "measure.mjs");

  /** All public models take it about one minute of a processor; this is for a busy machine. */
  private static final int MINUTES = 20;

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
    return starts("node") && starts("npm");
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
    Path home = installed();
    String list =
        files.stream().map(f -> f.toAbsolutePath().toString()).collect(Collectors.joining("\n"));
    Path paths = Files.writeString(home.resolve("files.txt"), list);
    List<String> command = List.of("node", "measure.mjs", "--triangles", trianglesOf);
    ObjectMapper json = new ObjectMapper();
    Reading reading = new Reading(new ArrayList<>(), new TreeMap<>());
    for (String text : run(home, command, paths).split("\n")) {
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

  private static Path installed() throws IOException, InterruptedException {
    Path module = Path.of(System.getProperty("underlee.root", "..")).resolve("samples");
    Path home = module.resolve("target/web-ifc");
    Files.createDirectories(home);
    boolean changed = !Files.isDirectory(home.resolve("node_modules/web-ifc"));
    for (String script : SCRIPTS) {
      Path from = module.resolve("src/test/node").resolve(script);
      Path to = home.resolve(script);
      changed |=
          script.startsWith("package") && (!Files.exists(to) || Files.mismatch(from, to) >= 0);
      Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
    if (changed) {
      run(home, List.of("npm", "ci", "--no-audit", "--no-fund"), home.resolve("package.json"));
    }
    return home;
  }

  private static String run(Path home, List<String> command, Path input)
      throws IOException, InterruptedException {
    Path out = Files.createTempFile(home, "out", ".txt");
    Path err = Files.createTempFile(home, "err", ".txt");
    try {
      Process process =
          new ProcessBuilder(command)
              .directory(home.toFile())
              .redirectInput(input.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
        process.destroyForcibly();
        throw new IOException(command.get(0) + " did not end within " + MINUTES + " minutes");
      }
      if (process.exitValue() != 0) {
        throw new IOException(
            command.get(0) + " ended with " + process.exitValue() + ": " + Files.readString(err));
      }
      return Files.readString(out, StandardCharsets.UTF_8);
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }

  private static boolean starts(String program) {
    try {
      return new ProcessBuilder(program, "--version")
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
