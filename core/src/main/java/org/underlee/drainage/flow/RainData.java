package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.underlee.finding.Nearest;
import org.underlee.units.RainRates;

/** Design rains by place, code and edition, each with its mark and source. */
public final class RainData {
  private static final String SCHEMA = "underlee/rain/1";
  private static final String WHAT = "the rain table";

  /** Rows for a place that has none of its own. */
  public static final String ANYWHERE = "anywhere";

  /** One row, in the units of its source. */
  public record Row(
      @JsonProperty(required = true) String place,
      @JsonProperty(required = true) Storm.Kind kind,
      @JsonProperty(required = true) String code,
      @JsonProperty(required = true) String edition,
      @JsonProperty(required = true) String storm,
      @JsonProperty(required = true) double intensity,
      @JsonProperty(required = true) String unit,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source) {

    public Storm toStorm() {
      double rate = unit.equals("mm/h") ? RainRates.MM_PER_HOUR : RainRates.INCH_PER_HOUR;
      return new Storm(place + ": " + storm + ", " + issue(), intensity * rate, kind, source, mark);
    }

    private String key() {
      return place + ", " + issue() + ", " + storm;
    }

    /** The code with its edition, of which common practice has none. */
    private String issue() {
      return (code + " " + edition).strip();
    }
  }

  private record Shape(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) List<Row> storms) {}

  private final List<Row> rows;

  private RainData(List<Row> rows) {
    this.rows = List.copyOf(rows);
  }

  public static RainData builtIn() {
    return BuiltIn.DATA;
  }

  /** Read once, and only where it is asked for: a hand that drags asks at every step. */
  private static final class BuiltIn {
    private static final RainData DATA = read(DataFile.builtIn("rain.json", WHAT));
  }

  static RainData read(DataFile file) {
    Shape shape = file.read(Shape.class);
    file.requireSchema(shape.schema, SCHEMA);
    List<String> keys = new ArrayList<>();
    for (Row row : shape.storms) {
      file.require(
          row.unit.equals("in/h") || row.unit.equals("mm/h"),
          "the unit of " + row.key() + " is \"" + row.unit + "\", expected in/h or mm/h");
      file.require(
          row.intensity > 0 && Double.isFinite(row.intensity),
          "the intensity of " + row.key() + " is " + row.intensity + ", expected more than zero");
      file.require(!row.source.isBlank(), row.key() + " names no source");
      file.require(!keys.contains(row.key()), row.key() + " is there twice");
      keys.add(row.key());
    }
    return new RainData(shape.storms);
  }

  public List<Row> rows() {
    return rows;
  }

  /** The rain that a code asks for at a place; empty when the table has none. */
  public Optional<Storm> code(String place, String code, String edition) {
    return rows.stream()
        .filter(r -> r.kind == Storm.Kind.CODE && r.place.equalsIgnoreCase(place))
        .filter(r -> r.code.equals(code) && r.edition.equals(edition))
        .findFirst()
        .map(Row::toStorm);
  }

  /** The burst to serve at a place; the round figure for anywhere when the place has no row. */
  public Storm service(String place) {
    return service(place, rows)
        .or(() -> service(ANYWHERE, rows))
        .orElseThrow(
            () -> new IllegalStateException("the rain table has no service storm for " + place));
  }

  private static Optional<Storm> service(String place, List<Row> rows) {
    return rows.stream()
        .filter(r -> r.kind == Storm.Kind.SERVICE && r.place.equalsIgnoreCase(place))
        .findFirst()
        .map(Row::toStorm);
  }

  /** Both rains of a place by default: the service storm, and the code's where it has a row. */
  public List<Storm> both(String place, String code, String edition) {
    List<Storm> storms = new ArrayList<>(List.of(service(place)));
    code(place, code, edition).ifPresent(storms::add);
    return List.copyOf(storms);
  }

  /** Places of the table that may be meant by a text that names none, the nearest first. */
  public List<String> near(String text) {
    return Nearest.meant(text.strip(), rows.stream().map(Row::place).distinct().toList());
  }

  /**
   * The rain that is meant by a rate such as {@code 8 in/h}, or by a place of the table: the
   * hardest that the table has for it, whatever the code.
   *
   * @return empty when it is no rate and the table has no such place
   */
  public Optional<Storm> meant(String rateOrPlace) {
    OptionalDouble rate = RainRates.parse(rateOrPlace);
    if (rate.isPresent()) {
      return Optional.of(Storm.given(rate.getAsDouble()));
    }
    List<Storm> storms =
        rows.stream()
            .filter(r -> r.place.equalsIgnoreCase(rateOrPlace.strip()))
            .map(Row::toStorm)
            .collect(Collectors.toCollection(ArrayList::new));
    if (storms.isEmpty()) {
      return Optional.empty();
    }
    storms.add(service(rateOrPlace.strip()));
    return Optional.of(Storm.hardest(storms));
  }
}
