package org.underlee.writeback;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.framing.Storey;
import org.underlee.ifc.IfcSchema;

/**
 * What new instances need to know of the designer's model. References only: nothing of it is
 * edited.
 *
 * @param ownerHistory the designer's first, where there is one
 * @param body the context for bodies, where the designer has one
 * @param model the context that a body context of ours goes under
 * @param storeys by GlobalId
 * @param shelter where the assembly goes without a storey: the building, else the site
 * @param building what the drain run serves
 * @param classifications that the designer's model refers to, one of a name
 */
record Host(
    IfcSchema schema,
    Value project,
    String projectGlobalId,
    long highestId,
    Optional<Value> ownerHistory,
    Optional<Value> body,
    Value model,
    ModelUnits units,
    Map<String, SpatialPlace> storeys,
    SpatialPlace shelter,
    Optional<Value> building,
    List<Classification> classifications) {
  Host {
    storeys = Map.copyOf(storeys);
    classifications = List.copyOf(classifications);
  }

  /** A system of classification. */
  record Classification(String name, Value system) {}

  SpatialPlace place(Optional<Storey> storey) {
    return storey.map(Storey::globalId).map(storeys::get).orElse(shelter);
  }
}
