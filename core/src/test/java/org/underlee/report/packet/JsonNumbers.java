package org.underlee.report.packet;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.underlee.report.packet.Printed.Kind;
import org.underlee.units.Lengths.UnitSystem;

/** The numbers of JSON files by what they measure, with how far each was rounded there. */
final class JsonNumbers {
  private static final double ROUNDING = 1e-9;
  private static final double MM = 0.001;

  private static final List<String> CUT =
      List.of("lengthMm", "sheetWidthMm", "sheetLengthMm", "widthMm", "pattern", "cutLengthMm");

  private final Map<Kind, TreeMap<Double, Double>> known = new EnumMap<>(Kind.class);
  private final StringBuilder words = new StringBuilder();

  /** All that a node holds: names tell units, and sentences are read as a person reads them. */
  JsonNumbers all(JsonNode node) {
    node.fields().forEachRemaining(f -> named(f.getKey(), f.getValue()));
    node.elements().forEachRemaining(this::all);
    if (node.isTextual()) {
      words.append(node.asText()).append('\n');
      Printed.in(node.asText()).forEach(p -> add(p.kind(), p.si(), p.half()));
    }
    return this;
  }

  /** Its names only. */
  JsonNumbers words(JsonNode node) {
    node.elements().forEachRemaining(this::words);
    if (node.isTextual()) {
      words.append(node.asText()).append('\n');
    }
    return this;
  }

  private void named(String name, JsonNode value) {
    for (JsonNode one : value.isArray() ? value : List.of(value)) {
      if (one.isNumber()) {
        number(name, one.asDouble());
      }
    }
    if (value.path("value").isNumber()) {
      number(name, value.get("value").asDouble());
    }
  }

  private void number(String name, double value) {
    if (name.endsWith("Mm") || name.equals("pattern")) {
      length(value);
    } else if (name.endsWith("M2")) {
      add(Kind.AREA, value, 5e-7);
    } else if (name.equals("fall")) {
      add(Kind.FALL, value, 5e-10);
    } else if (name.endsWith("Fraction")) {
      add(Kind.SHARE, value, 5e-7);
    } else {
      add(Kind.PLAIN, value, 0);
    }
  }

  JsonNumbers length(double mm) {
    return add(Kind.LENGTH, Math.abs(mm) * MM, 5e-7);
  }

  /**
   * As {@link #all} of a piece or of pieces, whose lengths to cut are printed rounded down; what is
   * cut in them is not.
   */
  JsonNumbers pieces(JsonNode node, UnitSystem units) {
    node.fields()
        .forEachRemaining(
            f -> {
              if (CUT.contains(f.getKey())) {
                for (JsonNode one : f.getValue().isArray() ? f.getValue() : List.of(f.getValue())) {
                  down(one.asDouble(), units == UnitSystem.METRIC ? 1 : 25.4 / 16);
                }
              } else if (f.getKey().equals("cuts")) {
                all(f.getValue());
              } else {
                named(f.getKey(), f.getValue());
                pieces(f.getValue(), units);
              }
            });
    if (node.isArray()) {
      node.elements().forEachRemaining(e -> pieces(e, units));
    }
    return node.isTextual() ? all(node) : this;
  }

  /** The file has it to a tenth of a millimetre, the nearest or the one below. */
  private void down(double mm, double step) {
    length(Math.floor((mm - 0.1) / step) * step);
    length(Math.floor((mm + 0.1) / step) * step);
  }

  JsonNumbers add(Kind kind, double si, double half) {
    known.computeIfAbsent(kind, k -> new TreeMap<>()).merge(si, half, Math::max);
    return this;
  }

  boolean has(Printed p) {
    double widest = p.half() + 2 * MM;
    TreeMap<Double, Double> own = known.getOrDefault(p.kind(), new TreeMap<>());
    double reach = p.kind() == Kind.LENGTH ? widest : Double.POSITIVE_INFINITY;
    return own.subMap(p.si() - reach, true, p.si() + reach, true).entrySet().stream()
        .anyMatch(e -> Math.abs(e.getKey() - p.si()) <= p.half() + e.getValue() + ROUNDING);
  }

  /** Whether a name stands in the files. */
  boolean names(String word) {
    return words.indexOf(word) >= 0;
  }

  /** Of each node that a path leads to. */
  static List<JsonNode> at(JsonNode root, String path) {
    List<JsonNode> nodes = List.of(root);
    for (String step : path.split("/")) {
      List<JsonNode> next = new ArrayList<>();
      for (JsonNode node : nodes) {
        JsonNode child = node.path(step);
        if (child.isArray()) {
          child.forEach(next::add);
        } else if (!child.isMissingNode()) {
          next.add(child);
        }
      }
      nodes = next;
    }
    return nodes;
  }
}
