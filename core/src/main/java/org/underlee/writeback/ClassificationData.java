package org.underlee.writeback;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.underlee.finding.JsonInput;
import org.underlee.layout.PartKind;

/** What parts are called in systems of classification, each code with its source. */
final class ClassificationData {
  private static final String FILE = "classifications.json";

  private record All(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) List<ClassificationSystem> systems) {}

  /**
   * A system.
   *
   * @param names that models give it
   */
  record ClassificationSystem(
      @JsonProperty(required = true) List<String> names,
      @JsonProperty(required = true) List<Code> codes) {
    ClassificationSystem {
      names = List.copyOf(names);
      codes = List.copyOf(codes);
    }

    /**
     * Whether a model means this system by a name: letters and digits decide, an edition may
     * follow.
     */
    boolean isMeantBy(String name) {
      return names.stream().anyMatch(n -> letters(name).startsWith(letters(n)));
    }
  }

  /**
   * A code of a system.
   *
   * @param parts kinds of part, in the words used in files
   */
  record Code(
      @JsonProperty(required = true) String code,
      @JsonProperty(required = true) String title,
      @JsonProperty(required = true) List<String> parts,
      @JsonProperty(required = true) String source) {
    Code {
      parts = List.copyOf(parts);
    }

    boolean isFor(PartKind kind) {
      return parts.contains(kind.word());
    }
  }

  private ClassificationData() {}

  /** The systems whose codes we know. */
  static List<ClassificationSystem> systems() {
    try (InputStream in = ClassificationData.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new IllegalStateException(FILE + " is missing");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return JsonInput.read(text, FILE, All.class, "the list of classifications", "").systems();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String letters(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
  }
}
