package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The user's own tables of capacities. They take part beside the program's; one with the id of a
 * table of the program takes its place.
 *
 * @param shownOnly ids of what the program has that may decide no more
 */
record OwnCapacities(List<CapacityData.Table> tables, Set<String> shownOnly) {
  static final String SCHEMA = "underlee/own-capacities/1";

  /** What the proof itself follows, so that nothing goes without it. */
  private static final String ALWAYS = "flow-solution";

  /** A table as the user writes it. */
  private record Written(
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String use,
      @JsonProperty(required = true) String code,
      @JsonProperty(required = true) String edition,
      @JsonProperty(required = true) String table,
      @JsonProperty(required = true) String unit,
      @JsonProperty(required = true) String source,
      @JsonProperty(required = true) List<CapacityData.Row> rows) {
    CapacityData.Table given() {
      return new CapacityData.Table(
          id, use, code, edition, table, unit, Mark.GIVEN, source, true, rows);
    }
  }

  private record Shape(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) List<Written> tables,
      @JsonProperty(required = true) List<String> shownOnly) {}

  OwnCapacities {
    tables = List.copyOf(tables);
    shownOnly = Set.copyOf(shownOnly);
  }

  /**
   * Reads them.
   *
   * @param beside what the program has
   * @throws org.underlee.finding.InputException when they cannot be read or used
   */
  static OwnCapacities read(DataFile file, CapacityData beside) {
    Shape shape = file.read(Shape.class);
    file.requireSchema(shape.schema, SCHEMA);
    List<CapacityData.Table> tables = shape.tables.stream().map(Written::given).toList();
    CapacityData.check(file, tables);
    Set<String> known = new HashSet<>();
    beside.methods().forEach(m -> known.add(m.id()));
    beside.tables().forEach(t -> known.add(t.id()));
    shape.shownOnly.forEach(
        id ->
            file.require(
                known.contains(id),
                "\"" + id + "\", which is to be shown only, is no method or table of the program"));
    OwnCapacities own = new OwnCapacities(tables, new HashSet<>(shape.shownOnly));
    own.requireEnough(file, beside);
    return own;
  }

  /** A table says nothing of a size below its first: a formula must be left for each part. */
  private void requireEnough(DataFile file, CapacityData beside) {
    file.require(
        !shownOnly.contains(ALWAYS),
        "\"" + ALWAYS + "\" always decides: leave it out of shownOnly");
    List<String> without = new ArrayList<>();
    for (Rating.Part part : Rating.Part.values()) {
      if (beside.methods().stream()
          .noneMatch(m -> m.part() == part && m.accepted() && !shownOnly.contains(m.id()))) {
        without.add(part.name().toLowerCase(Locale.ROOT));
      }
    }
    file.require(
        without.isEmpty(),
        "its shownOnly leaves no formula that decides for " + String.join(" and ", without));
  }

  /** What the program has and what is the user's own, as it decides together. */
  CapacityData onTopOf(CapacityData beside) {
    Set<String> own = new HashSet<>();
    tables.forEach(t -> own.add(t.id()));
    return new CapacityData(
        beside.methods().stream().map(m -> shownOnly.contains(m.id()) ? m.shownOnly() : m).toList(),
        Stream.concat(
                beside.tables().stream()
                    .filter(t -> !own.contains(t.id()))
                    .map(t -> shownOnly.contains(t.id()) ? t.shownOnly() : t),
                tables.stream())
            .toList(),
        beside.notShipped());
  }
}
