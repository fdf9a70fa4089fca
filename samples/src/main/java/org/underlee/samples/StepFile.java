package org.underlee.samples;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;

/** Collects instances and writes them in the order a mix asks for. */
final class StepFile {
  /** An instance of this file; its number is decided when the file is written. */
  record Ref(int index) {}

  /** Text that goes in as it is: {@code $}, {@code *}, an enumeration. */
  record Raw(String text) {}

  /** A value of a named type: {@code IFCLABEL('x')}. */
  record Typed(String type, Object value) {}

  static final Raw NONE = new Raw("$");
  static final Raw DERIVED = new Raw("*");

  /** Fixed, so that the same sample has the same bytes whenever it is written. */
  private static final String WRITTEN = "2026-03-01T09:00:00";

  /** Gap between shuffled numbers is 1 to this. */
  private static final int WIDEST_GAP = 7;

  private record Instance(String entity, List<Object> values) {}

  private final List<Instance> instances = new ArrayList<>();
  private final Map<Instance, Ref> shared = new HashMap<>();

  static Raw enumeration(String name) {
    return name.isEmpty() ? NONE : new Raw("." + name + ".");
  }

  Ref add(String entity, Object... values) {
    instances.add(new Instance(entity, List.of(values)));
    return new Ref(instances.size() - 1);
  }

  /** As {@link #add}, but once for the same values. */
  Ref share(String entity, Object... values) {
    Instance instance = new Instance(entity, List.of(values));
    Ref known = shared.get(instance);
    if (known == null) {
      known = add(entity, values);
      shared.put(instance, known);
    }
    return known;
  }

  byte[] bytes(String fileName, Mix mix) {
    List<Integer> order = order(mix);
    long[] numbers = numbers(order, mix);
    StringBuilder out = new StringBuilder();
    header(out, fileName, mix.schema().name());
    for (int index : order) {
      Instance i = instances.get(index);
      out.append('#').append(numbers[index]).append('=').append(i.entity());
      out.append(list(i.values(), numbers)).append(";\n");
    }
    out.append("ENDSEC;\nEND-ISO-10303-21;\n");
    String text = mix.crlf() ? out.toString().replace("\n", "\r\n") : out.toString();
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static void header(StringBuilder out, String fileName, String schema) {
    out.append("ISO-10303-21;\nHEADER;\n");
    out.append("FILE_DESCRIPTION(('ViewDefinition [notYetAssigned]'),'2;1');\n");
    out.append("FILE_NAME(").append(StepText.string(fileName)).append(",'").append(WRITTEN);
    out.append("',('Underlee'),('Underlee'),'Underlee samples','Underlee samples','');\n");
    out.append("FILE_SCHEMA(('").append(schema).append("'));\nENDSEC;\nDATA;\n");
  }

  /** Instances only refer to earlier ones, so the reverse order has only forward references. */
  private List<Integer> order(Mix mix) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < instances.size(); i++) {
      order.add(i);
    }
    switch (mix.order()) {
      case FORWARD -> {}
      case BACKWARD -> Collections.reverse(order);
      case SHUFFLED -> Collections.shuffle(order, new Random(mix.seed()));
    }
    return order;
  }

  private long[] numbers(List<Integer> order, Mix mix) {
    long[] numbers = new long[instances.size()];
    if (mix.order() != Mix.Order.SHUFFLED) {
      for (int i = 0; i < numbers.length; i++) {
        numbers[order.get(i)] = i + 1L;
      }
      return numbers;
    }
    Random random = new Random(mix.seed() + 1);
    List<Integer> numbering = new ArrayList<>(order);
    Collections.shuffle(numbering, random);
    long next = 0;
    for (int index : numbering) {
      next += 1 + random.nextInt(WIDEST_GAP);
      numbers[index] = next;
    }
    return numbers;
  }

  private static String list(List<?> values, long[] numbers) {
    return values.stream().map(v -> value(v, numbers)).collect(Collectors.joining(",", "(", ")"));
  }

  private static String value(Object value, long[] numbers) {
    if (value instanceof Ref ref) {
      return "#" + numbers[ref.index()];
    } else if (value instanceof Raw raw) {
      return raw.text();
    } else if (value instanceof Double number) {
      return StepText.real(number);
    } else if (value instanceof Boolean flag) {
      return flag ? ".T." : ".F.";
    } else if (value instanceof String text) {
      return StepText.string(text);
    } else if (value instanceof Typed typed) {
      return typed.type() + "(" + value(typed.value(), numbers) + ")";
    } else if (value instanceof List<?> list) {
      return list(list, numbers);
    }
    return value.toString();
  }
}
