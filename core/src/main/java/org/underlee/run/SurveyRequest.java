package org.underlee.run;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.AssumedJoists;
import org.underlee.framing.Told;
import org.underlee.step.StepLimits;

/**
 * How to read a model, beyond the model itself.
 *
 * @param assume joists to assume where the model has a slab only
 * @param overrides what the user set right in a file beside the model
 * @param bothWays fields that are to fall both ways from a high line inside them
 * @param services models whose elements may cross the bays
 * @param limits how much a file may ask for before it is refused
 */
public record SurveyRequest(
    Optional<AssumedJoists> assume,
    Optional<Overrides> overrides,
    Set<HighLineAsked> bothWays,
    List<Path> services,
    StepLimits limits) {
  public SurveyRequest {
    bothWays = Set.copyOf(bothWays);
    services = List.copyOf(services);
  }

  /** With the usual limits, and every field falling one way. */
  public SurveyRequest(
      Optional<AssumedJoists> assume, Optional<Overrides> overrides, List<Path> services) {
    this(assume, overrides, Set.of(), services, StepLimits.STANDARD);
  }

  SurveyRequest withoutServices() {
    return new SurveyRequest(assume, overrides, bothWays, List.of(), limits);
  }

  SurveyRequest told(Overrides others) {
    return new SurveyRequest(assume, Optional.of(others), bothWays, services, limits);
  }

  /**
   * The same with fields that are to fall both ways.
   *
   * @param fields each as {@link HighLineAsked#parse} reads it
   * @throws InputException when one cannot be read
   */
  public SurveyRequest bothWays(Set<String> fields) {
    try {
      Set<HighLineAsked> asked =
          fields.stream().map(HighLineAsked::parse).collect(Collectors.toSet());
      return new SurveyRequest(assume, overrides, asked, services, limits);
    } catch (IllegalArgumentException e) {
      throw new InputException(
          Place.NOWHERE,
          String.valueOf(e.getMessage()),
          "Name a field to fall both ways as deck-1/field-1, or with the place of its high line as"
              + " deck-1/field-1@2.36m.");
    }
  }

  Told told() {
    return overrides.map(Overrides::told).orElse(Told.NOTHING);
  }

  /** Nothing but what is in the model. */
  public static final SurveyRequest PLAIN =
      new SurveyRequest(Optional.empty(), Optional.empty(), List.of());
}
