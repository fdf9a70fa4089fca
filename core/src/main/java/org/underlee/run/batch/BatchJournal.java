package org.underlee.run.batch;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.writeback.NotWrittenException;

/**
 * A file with a line for each model that is finished, so that a run that was stopped goes on where
 * it was. A line counts only for the same bytes, the same settings and the same program; a last
 * line that was cut off by the stop is passed over.
 */
final class BatchJournal implements AutoCloseable {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** How each line begins. */
  private static final String BEGINNING = "{\"run\":";

  private final Path file;
  private final String key;
  private final Map<String, ModelResult> known;
  private final FileChannel channel;

  private BatchJournal(Path file, String key, Map<String, ModelResult> known, FileChannel channel) {
    this.file = file;
    this.key = key;
    this.known = known;
    this.channel = channel;
  }

  /**
   * Opens or begins a journal.
   *
   * @param key of job, settings and program
   * @throws NotWrittenException when it cannot be written
   */
  static BatchJournal open(Path file, String key) {
    try {
      Map<String, ModelResult> known = Files.exists(file) ? read(file, key) : Map.of();
      FileChannel channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.APPEND, StandardOpenOption.WRITE);
      BatchJournal journal = new BatchJournal(file, key, known, channel);
      journal.endCutLine();
      return journal;
    } catch (IOException e) {
      throw notWritten(file, e);
    }
  }

  /** What is known of a model with these bytes. */
  Optional<ModelResult> of(String label, String sha256) {
    return Optional.ofNullable(known.get(label)).filter(r -> r.sha256().equals(sha256));
  }

  /** Adds a line and waits until it is on the disk. */
  synchronized void add(ModelResult result) {
    try {
      write(MAPPER.writeValueAsString(line(result)) + "\n");
      channel.force(false);
    } catch (IOException e) {
      throw notWritten(file, e);
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw notWritten(file, e);
    }
  }

  private void write(String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  /** What follows a line that was cut off must not be glued to it. */
  private void endCutLine() throws IOException {
    if (channel.size() > 0) {
      write("\n");
    }
  }

  private ObjectNode line(ModelResult result) {
    ModelResult.Counts counts = result.counts();
    ObjectNode node =
        MAPPER
            .createObjectNode()
            .put("run", key)
            .put("file", result.file())
            .put("sha256", result.sha256())
            .put("outcome", result.outcome().name())
            .put("message", result.message())
            .put("decks", counts.decks())
            .put("fields", counts.fields())
            .put("bays", counts.bays())
            .put("parts", counts.parts())
            .put("notes", counts.notes())
            .put("warnings", counts.warnings())
            .put("errors", counts.errors());
    counts.dryFraction().ifPresent(d -> node.put("dryFraction", d));
    return node;
  }

  private static Map<String, ModelResult> read(Path file, String key) throws IOException {
    Map<String, ModelResult> known = new HashMap<>();
    List<String> lines = Files.readAllLines(file);
    if (!lines.isEmpty() && !lines.get(0).startsWith(BEGINNING)) {
      throw new IOException("it is no journal of a batch, and lines are not added to other files");
    }
    for (String text : lines) {
      parsed(text)
          .filter(n -> n.path("run").asText().equals(key))
          .map(BatchJournal::result)
          .ifPresent(r -> known.put(r.file(), r));
    }
    return known;
  }

  private static Optional<JsonNode> parsed(String text) {
    try {
      return Optional.of(MAPPER.readTree(text)).filter(n -> n.has("errors"));
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }

  private static ModelResult result(JsonNode node) {
    OptionalDouble dry =
        node.has("dryFraction")
            ? OptionalDouble.of(node.get("dryFraction").asDouble())
            : OptionalDouble.empty();
    return new ModelResult(
        node.path("file").asText(),
        node.path("sha256").asText(),
        ModelResult.Outcome.valueOf(node.path("outcome").asText()),
        new ModelResult.Counts(
            node.path("decks").asInt(),
            node.path("fields").asInt(),
            node.path("bays").asInt(),
            node.path("parts").asInt(),
            dry,
            node.path("notes").asInt(),
            node.path("warnings").asInt(),
            node.path("errors").asInt()),
        node.path("message").asText());
  }

  private static NotWrittenException notWritten(Path file, IOException e) {
    return new NotWrittenException(
        "the journal " + file + " could not be kept: " + e.getMessage(),
        "Choose another --journal, or check the rights to its folder.",
        e);
  }
}
