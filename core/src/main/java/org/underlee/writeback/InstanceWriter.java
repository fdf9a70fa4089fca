package org.underlee.writeback;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Collects new instances in order, numbered above the highest number of the designer's file. */
final class InstanceWriter {
  private final List<String> lines = new ArrayList<>();
  private final Map<String, Value> shared = new HashMap<>();
  private long last;

  InstanceWriter(long highestId) {
    last = highestId;
  }

  /** A reference to a new instance. */
  Value add(String entity, Value... values) {
    return add(body(entity, values));
  }

  /** A reference to an instance with these values: the one already here, or a new one. */
  Value shared(String entity, Value... values) {
    return shared.computeIfAbsent(body(entity, values), this::add);
  }

  List<String> lines() {
    return List.copyOf(lines);
  }

  private Value add(String body) {
    last++;
    lines.add("#" + last + "=" + body + ";");
    return Value.reference(last);
  }

  private static String body(String entity, Value... values) {
    return Stream.of(values)
        .map(Value::token)
        .collect(Collectors.joining(",", entity.toUpperCase(Locale.ROOT) + "(", ")"));
  }
}
