package org.underlee.step;

import java.util.List;

/**
 * What the HEADER section says. Header values are for people and often incomplete, so an absent one
 * is an empty text or list here, never an error.
 *
 * @param description FILE_DESCRIPTION, first value: the view definition
 * @param implementationLevel such as {@code 2;1}
 * @param fileName the name that the author's program gave, not the name on disk
 * @param schemas FILE_SCHEMA as written
 */
public record StepHeader(
    List<String> description,
    String implementationLevel,
    String fileName,
    String timeStamp,
    List<String> authors,
    List<String> organizations,
    String preprocessorVersion,
    String originatingSystem,
    String authorization,
    List<String> schemas) {
  static StepHeader of(List<StepValue.Typed> entities) {
    List<StepValue> description = values(entities, "FILE_DESCRIPTION");
    List<StepValue> name = values(entities, "FILE_NAME");
    return new StepHeader(
        texts(description, 0),
        text(description, 1),
        text(name, 0),
        text(name, 1),
        texts(name, 2),
        texts(name, 3),
        text(name, 4),
        text(name, 5),
        text(name, 6),
        texts(values(entities, "FILE_SCHEMA"), 0));
  }

  private static List<StepValue> values(List<StepValue.Typed> entities, String keyword) {
    return entities.stream()
        .filter(e -> e.keyword().equals(keyword))
        .findFirst()
        .map(e -> ((StepValue.ListOf) e.value()).values())
        .orElse(List.of());
  }

  private static String text(List<StepValue> values, int i) {
    return i < values.size() && values.get(i) instanceof StepValue.Text t ? t.value() : "";
  }

  private static List<String> texts(List<StepValue> values, int i) {
    if (i < values.size() && values.get(i) instanceof StepValue.ListOf l) {
      List<StepValue> list = l.values();
      return java.util.stream.IntStream.range(0, list.size()).mapToObj(k -> text(list, k)).toList();
    }
    return List.of();
  }
}
