package org.underlee.finding;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * Where something is: any of file, line, column, instance number and GlobalId that are known.
 *
 * @param line from 1
 * @param column from 1, in bytes
 * @param instance the number after {@code #}
 */
public record Place(
    Optional<String> file,
    OptionalLong line,
    OptionalLong column,
    OptionalLong instance,
    Optional<String> globalId) {
  public static final Place NOWHERE =
      new Place(
          Optional.empty(),
          OptionalLong.empty(),
          OptionalLong.empty(),
          OptionalLong.empty(),
          Optional.empty());

  public static Place element(long instance, String globalId) {
    return new Place(
        Optional.empty(),
        OptionalLong.empty(),
        OptionalLong.empty(),
        OptionalLong.of(instance),
        Optional.of(globalId));
  }

  public static Place text(long line, long column) {
    return new Place(
        Optional.empty(),
        OptionalLong.of(line),
        OptionalLong.of(column),
        OptionalLong.empty(),
        Optional.empty());
  }

  public Place withGlobalId(String id) {
    return new Place(file, line, column, instance, Optional.of(id));
  }

  public Place inFile(String name) {
    return new Place(Optional.of(name), line, column, instance, globalId);
  }

  public Place atInstance(long number) {
    return new Place(file, line, column, OptionalLong.of(number), globalId);
  }

  /** In words, for a message: {@code deck.ifc, line 12, column 3, #45}. */
  @Override
  public String toString() {
    StringBuilder words = new StringBuilder();
    file.ifPresent(f -> join(words, f));
    line.ifPresent(l -> join(words, "line " + l));
    column.ifPresent(c -> join(words, "column " + c));
    instance.ifPresent(i -> join(words, "#" + i));
    globalId.ifPresent(g -> join(words, g));
    return words.toString();
  }

  private static void join(StringBuilder words, String more) {
    words.append(words.isEmpty() ? "" : ", ").append(more);
  }
}
