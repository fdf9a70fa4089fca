package org.underlee.framing;

import java.util.Optional;
import org.underlee.finding.Place;
import org.underlee.geom.Mesh;

/**
 * A building element as the framing reader needs it, whatever file it came from.
 *
 * @param file the model it is in, where that is not the one with the framing
 * @param instance its number in the file, for places in messages; negative for a member that is
 *     only assumed
 * @param ifcClass in the standard's spelling: {@code IfcBeam}
 * @param name as the author wrote it, or empty; evidence only
 * @param typeName name of its type, or empty
 * @param predefinedType without dots, or empty: {@code JOIST}
 * @param storey the storey that holds it, directly or through what it is part of
 * @param shape in world metres, z up
 */
public record BuildingElement(
    Optional<String> file,
    long instance,
    String globalId,
    String ifcClass,
    String name,
    String typeName,
    String predefinedType,
    Optional<Storey> storey,
    Mesh shape) {
  /** An element of the model with the framing. */
  public BuildingElement(
      long instance,
      String globalId,
      String ifcClass,
      String name,
      String typeName,
      String predefinedType,
      Optional<Storey> storey,
      Mesh shape) {
    this(
        Optional.empty(),
        instance,
        globalId,
        ifcClass,
        name,
        typeName,
        predefinedType,
        storey,
        shape);
  }

  /** The same element, in a model of services. */
  public BuildingElement in(String serviceFile) {
    return placed(Optional.of(serviceFile), shape);
  }

  /** The same element, in the model with the framing. */
  public BuildingElement inHost() {
    return placed(Optional.empty(), shape);
  }

  /** The same element with another body, as when it is moved. */
  public BuildingElement shaped(Mesh other) {
    return placed(file, other);
  }

  private BuildingElement placed(Optional<String> in, Mesh body) {
    return new BuildingElement(
        in, instance, globalId, ifcClass, name, typeName, predefinedType, storey, body);
  }

  /** Whether it stands in no file: framing that the user let the program assume. */
  public boolean isAssumed() {
    return instance < 0;
  }

  public Place place() {
    Place place = isAssumed() ? Place.NOWHERE : Place.element(instance, globalId);
    return file.map(place::inFile).orElse(place);
  }
}
