package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.underlee.units.Lengths;

/** Numbers that the proof uses beside rain and capacities, each with its mark and source. */
public final class ProofData {
  /** Names of the single values; in SI or a plain ratio, millimetres where the name says so. */
  public enum Key {
    FREEBOARD_MM("freeboardMm"),
    ROUGHNESS_SMOOTH("roughnessSmooth"),
    ROUGHNESS_DIRTY("roughnessDirty"),
    WALL_SHARE("wallShare"),
    STRAINER_SHARE("strainerShare"),
    BEND_SHARE("bendShare"),
    ELBOWS_MOST("elbowsMost"),
    VENT_RATIO("ventRatio"),
    DISCHARGE_DISTANCE_MM("dischargeDistanceMm"),
    FILM_MM("filmMm"),
    JOIST_CREEP_FACTOR("joistCreepFactor"),
    SPOUT_END_HIGHEST_MM("spoutEndHighestMm"),
    ROOF_PLACE_MM("roofPlaceMm"),
    FLASHING_LONGEST_MM("flashingLongestMm"),
    ROOF_FALL_LEAST("roofFallLeast"),
    EAVE_GUTTER_MM("eaveGutterMm"),
    EAVE_WORTH_M2("eaveWorthM2"),
    LEVEL_FACE_M2("levelFaceM2"),
    SPOUT_WALL_MM("spoutWallMm");

    private final String name;

    Key(String name) {
      this.name = name;
    }
  }

  /** A number with its mark. */
  public record Value(
      @JsonProperty(required = true) double value,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source) {}

  /** How a material grows. */
  public record Expansion(
      @JsonProperty(required = true) String material,
      @JsonProperty(required = true) double perKelvin,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source) {
    /** End to end; a part that is fixed at its middle moves half of it at each end. */
    public double movement(double length, double kelvin) {
      return perKelvin * length * kelvin;
    }
  }

  /** Whether two materials may touch in the wet. */
  public enum Verdict {
    @JsonProperty("allowed")
    ALLOWED,
    @JsonProperty("separate")
    SEPARATE,
    @JsonProperty("forbidden")
    FORBIDDEN
  }

  /** Two materials, in either order. */
  public record Contact(
      @JsonProperty(required = true) String one,
      @JsonProperty(required = true) String other,
      @JsonProperty(required = true) Verdict verdict,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source) {
    private boolean of(String a, String b) {
      return (one.equals(a) && other.equals(b)) || (one.equals(b) && other.equals(a));
    }
  }

  /** The inside of a box gutter that the trade bends or sells. */
  public record CommonGutter(
      @JsonProperty(required = true) double widthInches,
      @JsonProperty(required = true) double depthInches,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source) {}

  /** A round downspout that the trade sells. */
  public record CommonDownspout(
      @JsonProperty(required = true) double inches,
      @JsonProperty(required = true) Mark mark,
      @JsonProperty(required = true) String source) {}

  private record Shape(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) Map<String, Value> values,
      @JsonProperty(required = true) List<Expansion> expansion,
      @JsonProperty(required = true) List<Contact> contacts,
      @JsonProperty(required = true) List<CommonGutter> commonGutters,
      @JsonProperty(required = true) List<CommonDownspout> commonDownspouts) {}

  private final Shape shape;

  private ProofData(Shape shape) {
    this.shape = shape;
  }

  /** Read when it is first asked for. */
  private static final class BuiltIn {
    private static final ProofData DATA = read();
  }

  public static ProofData builtIn() {
    return BuiltIn.DATA;
  }

  private static ProofData read() {
    DataFile file = DataFile.builtIn("proof.json", "the table of proof values");
    Shape shape = file.read(Shape.class);
    for (Key key : Key.values()) {
      file.require(shape.values.containsKey(key.name), "its value \"" + key.name + "\" is missing");
    }
    return new ProofData(shape);
  }

  public Value value(Key key) {
    Value value = shape.values.get(key.name);
    if (value == null) {
      throw new IllegalStateException("the proof value " + key.name + " is missing");
    }
    return value;
  }

  public double get(Key key) {
    return value(key).value();
  }

  /** A value that is kept in millimetres, in metres. */
  public double metres(Key key) {
    return get(key) * Lengths.MM;
  }

  public List<Expansion> expansion() {
    return List.copyOf(shape.expansion);
  }

  public List<Contact> contacts() {
    return List.copyOf(shape.contacts);
  }

  public Optional<Expansion> expansion(String material) {
    return shape.expansion.stream().filter(e -> e.material.equals(material)).findFirst();
  }

  /** The material of the table whose name stands in this one: {@code Coated aluminium sheet}. */
  public Optional<Expansion> expansionOf(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    return shape.expansion.stream()
        .filter(e -> lower.contains(e.material.toLowerCase(Locale.ROOT)))
        .findFirst();
  }

  /** What is known of two materials that touch; empty when the table does not know them. */
  public Optional<Contact> contact(String one, String other) {
    return shape.contacts.stream().filter(c -> c.of(one, other)).findFirst();
  }

  /** The least net free opening for an enclosed space of a plan area. */
  public double ventArea(double plan) {
    return plan / get(Key.VENT_RATIO);
  }

  /** Metres from the foundation that a downspout's end still lacks; 0 when it is far enough. */
  public double dischargeLack(double distance) {
    return Math.max(0, get(Key.DISCHARGE_DISTANCE_MM) / 1000 - distance);
  }

  public List<CommonGutter> commonGutters() {
    return shape.commonGutters;
  }

  public List<CommonDownspout> commonDownspouts() {
    return shape.commonDownspouts;
  }

  /** The common sizes, as what can be chosen from where a kit's own are too small. */
  public Sizing.Offer commonSizes(double fall) {
    return new Sizing.Offer(
        shape.commonGutters.stream()
            .<GutterSection>map(
                g -> Trough.box(g.widthInches * Lengths.INCH, g.depthInches * Lengths.INCH))
            .toList(),
        List.of(fall),
        shape.commonDownspouts.stream()
            .<Opening>map(d -> new Opening.Round(d.inches * Lengths.INCH))
            .toList(),
        true);
  }
}
