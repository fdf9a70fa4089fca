package org.underlee.writeback;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Finds in the designer's model what ours refer to. */
final class HostReader {
  // Positions of attributes, the same in all three schemas.
  private static final int GLOBAL_ID = 0;
  private static final int OBJECT_PLACEMENT = 5;

  private final IfcModel model;
  private final StepFile file;

  HostReader(IfcModel model) {
    this.model = model;
    this.file = model.step();
  }

  /**
   * Reads it.
   *
   * @throws InputException when the model has no context for solid shapes
   */
  Host read() {
    Optional<StepInstance> building = all("IFCBUILDING").findFirst();
    Optional<StepInstance> shelter = building.or(() -> all("IFCSITE").findFirst());
    StepInstance context = context();
    boolean sub = context.keyword().equals("IFCGEOMETRICREPRESENTATIONSUBCONTEXT");
    return new Host(
        model.schema(),
        Value.reference(model.projectId()),
        model.projectGlobalId(),
        file.highestId(),
        optional(model.ownerHistoryId()),
        sub ? Optional.of(reference(context)) : Optional.empty(),
        reference(context),
        units(),
        storeys(),
        shelter.map(this::place).orElse(SpatialPlace.WORLD),
        building.map(HostReader::reference));
  }

  private StepInstance context() {
    OptionalLong context = model.bodyContextId();
    if (context.isEmpty()) {
      throw new InputException(
          Place.NOWHERE.inFile(file.name()),
          "the model has no context for shapes in 3-D, so nothing can be added to it",
          "Export the model again with its 3-D shapes.");
    }
    return file.instance(context.getAsLong());
  }

  private ModelUnits units() {
    AssignedUnits assigned = new AssignedUnits(file.instance(model.projectId()));
    return new ModelUnits(
        model.units().metresPerLengthUnit(),
        model.units().radiansPerAngleUnit(),
        assigned.inSi("AREAUNIT"),
        assigned.inSi("VOLUMEUNIT"),
        assigned.inSi("MASSUNIT"));
  }

  private Map<String, SpatialPlace> storeys() {
    Map<String, SpatialPlace> storeys = new HashMap<>();
    all("IFCBUILDINGSTOREY")
        .forEach(s -> s.optionalText(GLOBAL_ID).ifPresent(id -> storeys.putIfAbsent(id, place(s))));
    return storeys;
  }

  /** Under a place whose placement cannot be read, ours stand in world coordinates. */
  private SpatialPlace place(StepInstance spatial) {
    OptionalLong placement = spatial.optionalRef(OBJECT_PLACEMENT);
    if (placement.isPresent()) {
      try {
        long id = placement.getAsLong();
        return new SpatialPlace(reference(spatial), Value.reference(id), model.placement(id));
      } catch (InputException unreadable) {
        return SpatialPlace.unplaced(reference(spatial));
      }
    }
    return SpatialPlace.unplaced(reference(spatial));
  }

  private Stream<StepInstance> all(String keyword) {
    return IntStream.of(file.ofKeyword(keyword)).mapToObj(file::decode);
  }

  private static Value reference(StepInstance instance) {
    return Value.reference(instance.id());
  }

  private static Optional<Value> optional(OptionalLong id) {
    return id.isPresent() ? Optional.of(Value.reference(id.getAsLong())) : Optional.empty();
  }
}
