package org.underlee.ifc;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Which entities are elements with a body, how the standard spells them, and where their
 * PredefinedType stands. Made from the EXPRESS schemas of the three editions; see the resource.
 */
final class ElementTable {
  private static final String RESOURCE = "elements.txt";

  private final Map<String, Row> rows = new HashMap<>();

  /** Columns in the order of {@link #column}: a position, {@code *} for none, {@code -}. */
  private record Row(String name, List<String> columns) {}

  ElementTable() {
    try (InputStream in = ElementTable.class.getResourceAsStream(RESOURCE);
        BufferedReader lines =
            new BufferedReader(
                new InputStreamReader(
                    Objects.requireNonNull(in, RESOURCE), StandardCharsets.US_ASCII))) {
      lines.lines().filter(line -> !line.startsWith("#")).forEach(this::add);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the element table", e);
    }
  }

  private void add(String line) {
    List<String> words = List.of(line.split(" ", -1));
    String name = words.get(0);
    rows.put(name.toUpperCase(Locale.ROOT), new Row(name, words.subList(1, words.size())));
  }

  boolean isElement(String keyword) {
    return rows.containsKey(keyword);
  }

  /** The standard's spelling: {@code IfcBeam} for {@code IFCBEAM}. */
  String spelling(String keyword) {
    return row(keyword).name();
  }

  /**
   * Where the entity has its PredefinedType. An entity of another edition than the file's, which
   * some programs write, is read as in the edition that has it.
   */
  Optional<Integer> predefinedType(String keyword, IfcSchema schema) {
    List<String> columns = row(keyword).columns();
    String own = columns.get(column(schema));
    String column =
        own.equals("-")
            ? columns.stream().filter(c -> !c.equals("-")).findFirst().orElse("*")
            : own;
    return column.equals("*") ? Optional.empty() : Optional.of(Integer.valueOf(column));
  }

  private static int column(IfcSchema schema) {
    return switch (schema) {
      case IFC2X3 -> 0;
      case IFC4 -> 1;
      case IFC4X3 -> 2;
    };
  }

  private Row row(String keyword) {
    return Objects.requireNonNull(rows.get(keyword), keyword);
  }
}
