package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Comparator;
import java.util.List;

/**
 * A rain to design for.
 *
 * @param name as in {@code Birmingham, AL: 100-year 1-hour, IPC 2018}
 * @param intensity metres per second
 */
public record Storm(String name, double intensity, Kind kind, String source, Mark mark) {
  /** What the rain is for. */
  public enum Kind {
    /** A short heavy burst that the gutter should hold. */
    @JsonProperty("service")
    SERVICE,
    /** The rate that a plumbing code asks for. */
    @JsonProperty("code")
    CODE
  }

  public Storm {
    if (!(intensity > 0) || Double.isInfinite(intensity)) {
      throw new IllegalArgumentException(
          "the storm \""
              + name
              + "\" has intensity "
              + intensity
              + " m/s, expected more than zero");
    }
  }

  /** A rain that the user names. */
  public static Storm given(double intensity) {
    return new Storm("your own rain", intensity, Kind.SERVICE, "given", Mark.GIVEN);
  }

  /** The hardest of them, which is the one to design for; the first of equals. */
  public static Storm hardest(List<Storm> storms) {
    return storms.stream()
        .max(Comparator.comparingDouble(Storm::intensity))
        .orElseThrow(
            () -> new IllegalArgumentException("no storm was given, expected one or more"));
  }

  /** Its name, and how far it can be trusted where it was not read in its source. */
  public String words() {
    return mark == Mark.FROM_MEMORY ? name + ", " + mark.words() : name;
  }

  /** The flow off an area in plan: rational method with a runoff coefficient of 1. */
  public double flow(double area) {
    return intensity * area;
  }
}
