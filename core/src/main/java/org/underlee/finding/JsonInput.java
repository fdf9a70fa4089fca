package org.underlee.finding;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads JSON that a person wrote: every key must be known, every required one there, none twice; a
 * slip is told with its line, column and key.
 */
public final class JsonInput {
  private static final ObjectMapper STRICT =
      JsonMapper.builder()
          .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  /** What is for programmers: a setting of the parser, or the class that was read. */
  private static final Pattern HINT = Pattern.compile(" \\((set DeserializationConfig|class ).*");

  private static final Pattern MISSING = Pattern.compile("^Missing required .*property '(\\w+)'");

  private JsonInput() {}

  /**
   * The text as a record.
   *
   * @param what the file is, for the message: {@code the kit}
   * @param advice what to do about a slip
   * @throws InputException when the text is not as the record's shape says
   */
  public static <T> T read(String text, String file, Class<T> shape, String what, String advice) {
    try {
      return STRICT.readValue(text, shape);
    } catch (JsonProcessingException e) {
      Place place =
          Optional.ofNullable(e.getLocation())
              .map(l -> Place.text(l.getLineNr(), l.getColumnNr()))
              .orElse(Place.NOWHERE);
      throw new InputException(
          place.inFile(file),
          what + " is not as its schema says" + at(e) + ": " + inWords(e),
          advice);
    }
  }

  /** A record as JSON in one line, to be read again. */
  public static String text(Object shape) {
    try {
      return STRICT.writeValueAsString(shape);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("cannot be written as JSON: " + shape, e);
    }
  }

  /** Which key is wrong, where the parser came so far: {@code , at values.railLegMm}. */
  private static String at(JsonProcessingException e) {
    if (!(e instanceof JsonMappingException mapping) || mapping.getPath().isEmpty()) {
      return "";
    }
    return mapping.getPath().stream()
        .map(r -> r.getFieldName() == null ? Integer.toString(r.getIndex()) : r.getFieldName())
        .collect(Collectors.joining(".", ", at ", ""));
  }

  private static String inWords(JsonProcessingException e) {
    String message = HINT.matcher(e.getOriginalMessage()).replaceFirst("");
    Matcher missing = MISSING.matcher(message);
    if (missing.find()) {
      return "the key \"" + missing.group(1) + "\" is missing";
    }
    if (e instanceof InvalidFormatException wrong) {
      return "\"" + wrong.getValue() + "\" stands where " + wanted(wrong) + " is expected";
    }
    return e instanceof MismatchedInputException wrong && message.startsWith("Cannot ")
        ? wanted(wrong) + " is expected here"
        : message;
  }

  /** What the record has there, in words for those who do not program. */
  private static String wanted(MismatchedInputException e) {
    Class<?> type = e.getTargetType() == null ? Object.class : e.getTargetType();
    if (type == int.class || type == Integer.class) {
      return "a whole number";
    }
    if (type == double.class || type == Double.class) {
      return "a number";
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true or false";
    }
    if (type == String.class) {
      return "a text in quotation marks";
    }
    if (type.isEnum()) {
      return "one of " + Arrays.toString(type.getEnumConstants());
    }
    return Collection.class.isAssignableFrom(type) ? "a list, [ ]" : "an object, { }";
  }
}
