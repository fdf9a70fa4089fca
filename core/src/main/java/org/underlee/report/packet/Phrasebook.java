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
  private static final String REMARK = " (";

  /** The book of a language; an empty one for English. */
  static Phrasebook of(String language) {
    try (InputStream in = Phrasebook.class.getResourceAsStream("said_" + language + ".json")) {
      return new Phrasebook(
          in == null ? Map.of() : new ObjectMapper().readValue(in, new TypeReference<>() {}));
    } catch (IOException e) {
      throw new UncheckedIOException("reading a resource of the program", e);
    }
  }

  /**
   * The text in this language; after a name and a colon, too, or before them: {@code deck-1: its
   * boards …}, {@code water stands …: gutter-1}; and with a remark behind it: {@code Flow solution
   * (your own table)}.
   */
  String say(String english) {
    return known(english)
        .or(() -> remarked(english))
        .or(
            () -> {
              int colon = english.indexOf(AFTER_NAME);
              int rest = colon + AFTER_NAME.length();
              return colon < 0
                  ? Optional.empty()
                  : known(english.substring(rest))
                      .map(s -> english.substring(0, rest) + s)
                      .or(
                          () ->
                              known(english.substring(0, colon))
                                  .map(s -> s + english.substring(colon)));
            })
        .orElse(english);
  }

  private Optional<String> remarked(String english) {
    int remark = english.lastIndexOf(REMARK);
    return remark < 0 || !english.endsWith(")")
        ? Optional.empty()
        : known(english.substring(remark + REMARK.length(), english.length() - 1))
            .map(s -> say(english.substring(0, remark)) + REMARK + s + ")");
  }

  private Optional<String> known(String english) {
    return Optional.ofNullable(phrases.get(english));
  }
}
