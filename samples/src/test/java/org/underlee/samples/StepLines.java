package org.underlee.samples;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The instances of a file in the order of its lines, read by pattern; only for what we write. */
record StepLines(List<Instance> instances) {
  private static final Pattern LINE = Pattern.compile("(?m)^#(\\d+)=(\\w+)\\((.*)\\);\\r?$");
  private static final Pattern STRING = Pattern.compile("'(?:[^']|'')*'");
  private static final Pattern REFERENCE = Pattern.compile("#(\\d+)");

  record Instance(long id, String entity, String values) {
    List<Long> references() {
      Matcher found = REFERENCE.matcher(STRING.matcher(values).replaceAll("''"));
      List<Long> references = new ArrayList<>();
      while (found.find()) {
        references.add(Long.valueOf(found.group(1)));
      }
      return references;
    }
  }

  static StepLines of(byte[] bytes) {
    Matcher line = LINE.matcher(new String(bytes, StandardCharsets.US_ASCII));
    List<Instance> instances = new ArrayList<>();
    while (line.find()) {
      instances.add(new Instance(Long.parseLong(line.group(1)), line.group(2), line.group(3)));
    }
    return new StepLines(List.copyOf(instances));
  }

  /** First values of 22 characters: the GlobalIds. */
  List<String> globalIds() {
    Pattern first = Pattern.compile("^'([^']{22})',#");
    return instances.stream()
        .map(i -> first.matcher(i.values()))
        .filter(Matcher::find)
        .map(m -> m.group(1))
        .toList();
  }
}
