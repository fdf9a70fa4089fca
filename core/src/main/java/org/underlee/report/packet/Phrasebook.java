package org.underlee.report.packet;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;

/**
 * What findings and questions say, in another language: their English is the key, so that a rule
 * says a thing once. What is not in the book stays in English.
 */
record Phrasebook(Map<String, String> phrases) {
  private static final String AFTER_NAME = ": ";

  /** The book of a language; an empty one for English. */
  static Phrasebook of(String language) {
    try (InputStream in = Phrasebook.class.getResourceAsStream("said_" + language + ".json")) {
      return new Phrasebook(
          in == null ? Map.of() : new ObjectMapper().readValue(in, new TypeReference<>() {}));
    } catch (IOException e) {
      throw new UncheckedIOException("reading a resource of the program", e);
    }
  }

  /** The text in this language; after a name and a colon, too: {@code deck-1: its boards …}. */
  String say(String english) {
    return known(english)
        .or(
            () -> {
              int colon = english.indexOf(AFTER_NAME);
              int rest = colon + AFTER_NAME.length();
              return colon < 0
                  ? Optional.empty()
                  : known(english.substring(rest)).map(s -> english.substring(0, rest) + s);
            })
        .orElse(english);
  }

  private Optional<String> known(String english) {
    return Optional.ofNullable(phrases.get(english));
  }
}
