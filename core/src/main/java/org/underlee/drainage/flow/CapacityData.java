package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

/** Tables and methods of capacity, keyed by code and edition, and which of them may decide. */
public final class CapacityData {
  private static final String SCHEMA = "underlee/capacities/1";
  private static final String WHAT = "the table of capacities";
  private static final double SAME = 1e-9;

  /** Square feet at 1 in per hour for each gallon per minute, exactly. */
  private static final double SQUARE_FEET_PER_GPM = 96.25;

  /** Uses that a table can have. */
  public static final String SEMICIRCULAR = "semicircular gutter";

  public static final String ROUND_DOWNSPOUT = "round downspout";
  public static final String RECTANGULAR_DOWNSPOUT = "rectangular downspout";
  static final Set<String> USES =
      Set.of(SEMICIRCULAR, ROUND_DOWNSPOUT, RECTANGULAR_DOWNSPOUT, "sloped pipe");

  /** Units that a table can have, in cubic metres a second. */
  private static final Map<String, Double> PER_UNIT =
      Map.of(
          "gpm",
          Flows.GPM,
          "ft2 at 1 in/h",
          Flows.GPM / SQUARE_FEET_PER_GPM,
          "l/s",
          Flows.LITRE_PER_SECOND);

  static final Set<String> UNITS = PER_UNIT.keySet();

  /** A formula that the program knows. */
  public record Method(
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String name,
      @JsonProperty(required = true) Rating.Part part,
      @JsonProperty(required = true) String code,
      @JsonProperty(required = true) String edition,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) boolean accepted,
      @JsonProperty(required = true) String source) {
    Capacity of(double flow) {
      return new Capacity(id, name, code, edition, mark, source, accepted, flow);
    }

    Method shownOnly() {
      return new Method(id, name, part, code, edition, mark, false, source);
    }
  }

  /** One entry, in the units of its source. */
  public record Row(
      @JsonProperty(required = true) double sizeInches,
      @JsonProperty(required = true) double fallInchesPerFoot,
      @JsonProperty(required = true) double capacity) {}

  /** A table of a code. */
  public record Table(
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String use,
      @JsonProperty(required = true) String code,
      @JsonProperty(required = true) String edition,
      @JsonProperty(required = true) String table,
      @JsonProperty(required = true) String unit,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source,
      @JsonProperty(required = true) boolean accepted,
      @JsonProperty(required = true) List<Row> rows) {

    /** The best entry that is no larger and no steeper; nothing is read between entries. */
    Optional<Capacity> of(double size, double fall) {
      double inches = size / Lengths.INCH * (1 + SAME);
      double perFoot = fall * 12 * (1 + SAME) + SAME;
      return rows.stream()
          .filter(r -> r.sizeInches <= inches && r.fallInchesPerFoot <= perFoot)
          .mapToDouble(Row::capacity)
          .max()
          .stream()
          .boxed()
          .findFirst()
          .map(c -> new Capacity(id, name(), code, edition, mark, source, accepted, flow(c)));
    }

    /** As it is named beside a figure: editions of a code differ. */
    public String name() {
      return code + " " + edition + ", " + table;
    }

    Table shownOnly() {
      return new Table(id, use, code, edition, table, unit, mark, source, false, rows);
    }

    private double flow(double capacity) {
      return capacity * PER_UNIT.getOrDefault(unit, Double.NaN);
    }
  }

  /** A table of a code whose values are not in this program. */
  public record NotShipped(
      @JsonProperty(required = true) String code,
      @JsonProperty(required = true) String edition,
      @JsonProperty(required = true) String table,
      @JsonProperty(required = true) String why) {}

  private record Shape(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) List<Method> methods,
      @JsonProperty(required = true) List<Table> tables,
      @JsonProperty(required = true) List<NotShipped> notShipped) {}

  private final List<Method> methods;
  private final List<Table> tables;
  private final List<NotShipped> notShipped;

  CapacityData(List<Method> methods, List<Table> tables, List<NotShipped> notShipped) {
    this.methods = List.copyOf(methods);
    this.tables = List.copyOf(tables);
    this.notShipped = List.copyOf(notShipped);
  }

  /** Read when it is first asked for: it is the same for every gutter. */
  private static final class BuiltIn {
    private static final CapacityData DATA = read(DataFile.builtIn("capacities.json", WHAT));
  }

  public static CapacityData builtIn() {
    return BuiltIn.DATA;
  }

  /**
   * These, and the user's own tables.
   *
   * @param file its name, for messages
   * @param text JSON, as {@code docs/reference/own-capacities.schema.json} says
   * @throws org.underlee.finding.InputException when they cannot be read or used
   */
  public CapacityData with(String file, String text) {
    return OwnCapacities.read(new DataFile(file, text, WHAT), this).onTopOf(this);
  }

  /** The user's own tables among them. */
  public List<Table> own() {
    return tables.stream().filter(t -> t.mark == Mark.GIVEN).toList();
  }

  static CapacityData read(DataFile file) {
    Shape shape = file.read(Shape.class);
    file.requireSchema(shape.schema, SCHEMA);
    check(file, shape.tables);
    return new CapacityData(shape.methods, shape.tables, shape.notShipped);
  }

  static void check(DataFile file, List<Table> tables) {
    List<String> ids = new ArrayList<>();
    for (Table table : tables) {
      file.require(!ids.contains(table.id), "the table \"" + table.id + "\" is there twice");
      ids.add(table.id);
      check(file, table);
    }
  }

  private static void check(DataFile file, Table table) {
    String name = "the table \"" + table.id + "\"";
    file.require(USES.contains(table.use), name + " is for \"" + table.use + "\", not of " + USES);
    file.require(
        UNITS.contains(table.unit),
        name
            + " is in \""
            + table.unit
            + "\", expected one of "
            + UNITS.stream().sorted().toList());
    file.require(!table.source.isBlank(), name + " names no source");
    file.require(!table.rows.isEmpty(), name + " has no rows");
    for (int i = 0; i < table.rows.size(); i++) {
      Row row = table.rows.get(i);
      file.require(
          row.sizeInches > 0 && row.fallInchesPerFoot >= 0 && row.capacity > 0,
          name + ", row " + (i + 1) + ", is " + row + "; expected numbers above zero");
      for (int j = 0; j < i; j++) {
        Row other = table.rows.get(j);
        file.require(
            !contradict(row, other) && !contradict(other, row),
            name
                + ", rows "
                + (j + 1)
                + " and "
                + (i + 1)
                + ", contradict: "
                + other
                + ", "
                + row
                + "; a larger size or a steeper fall carries more");
      }
    }
  }

  /** Whether one that should carry no less than the other does, or both are the same entry. */
  private static boolean contradict(Row more, Row less) {
    boolean covers =
        more.sizeInches >= less.sizeInches && more.fallInchesPerFoot >= less.fallInchesPerFoot;
    boolean same =
        more.sizeInches == less.sizeInches && more.fallInchesPerFoot == less.fallInchesPerFoot;
    return same || (covers && more.capacity < less.capacity);
  }

  public List<Method> methods() {
    return methods;
  }

  public List<Table> tables() {
    return tables;
  }

  public List<NotShipped> notShipped() {
    return notShipped;
  }

  Method method(String id) {
    return methods.stream()
        .filter(m -> m.id.equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("the method " + id + " is not in the data"));
  }

  /** What every table for this use says. */
  List<Capacity> tabled(String use, double size, double fall) {
    return tables.stream()
        .filter(t -> t.use.equals(use))
        .flatMap(t -> t.of(size, fall).stream())
        .toList();
  }
}
