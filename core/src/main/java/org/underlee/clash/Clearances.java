package org.underlee.clash;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.underlee.finding.JsonInput;
import org.underlee.framing.BuildingElement;

/**
 * How near an assembly may come to what, from the data file {@code clearances.json}, each figure
 * with its source. Kinds are told by class and by words in the name; the first that fits counts.
 *
 * @param other for what fits none
 * @param headroomMm over stairs
 */
public record Clearances(
    String schema, List<Kind> kinds, Kind other, double headroomMm, String headroomSource) {
  private static final String FILE = "clearances.json";
  private static final double MM = 0.001;

  /**
   * One kind of thing.
   *
   * @param words what it is called in a sentence
   * @param names words in a name or a type's name that tell it
   * @param clearanceMm to gutters, downspouts and what else hangs free
   * @param inBayMm to pans and rails between the joists, which are laid out around what they meet
   * @param toleranceMm what is drawn this much into each other is contact
   * @param access whether a hand must get there
   */
  public record Kind(
      String id,
      String words,
      List<String> names,
      List<String> classes,
      double clearanceMm,
      double inBayMm,
      double toleranceMm,
      boolean access,
      String source) {
    public Kind {
      names = List.copyOf(names);
      classes = List.copyOf(classes);
    }

    private boolean is(BuildingElement e, String name) {
      return classes.contains(e.ifcClass()) || names.stream().anyMatch(name::contains);
    }

    public double clearance() {
      return clearanceMm * MM;
    }

    double inBay() {
      return inBayMm * MM;
    }

    double tolerance() {
      return toleranceMm * MM;
    }
  }

  public Clearances {
    kinds = List.copyOf(kinds);
  }

  public static Clearances builtIn() {
    try (InputStream in = Objects.requireNonNull(Clearances.class.getResourceAsStream(FILE))) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return JsonInput.read(text, FILE, Clearances.class, "the clearances", "Repair the file.");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public Kind of(BuildingElement e) {
    String name = (e.name() + " " + e.typeName()).toLowerCase(Locale.ROOT);
    return kinds.stream().filter(k -> k.is(e, name)).findFirst().orElse(other);
  }

  public double headroom() {
    return headroomMm * MM;
  }

  /** The greatest distance that matters. */
  public double reach() {
    return kinds.stream().mapToDouble(Kind::clearance).reduce(headroom(), Math::max);
  }
}
