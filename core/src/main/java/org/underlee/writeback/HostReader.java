package org.underlee.writeback;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Finds in the designer's model what ours refer to. */
final class HostReader {
  // Positions of attributes, the same in all three schemas.
  private static final int GLOBAL_ID = 0;
  private static final int OBJECT_PLACEMENT = 5;
  private static final int CLASSIFICATION_NAME = 3;
  private static final int REFERENCED_SOURCE = 3;
  private static final int RELATING_CLASSIFICATION = 5;

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
        building.map(HostReader::reference),
        classifications());
  }

  /** Those that something of the designer's refers to; of two with one name the first. */
  private List<Host.Classification> classifications() {
    Set<Long> used = new HashSet<>();
    all("IFCCLASSIFICATIONREFERENCE")
        .forEach(r -> reference(r, REFERENCED_SOURCE).ifPresent(used::add));
    all("IFCRELASSOCIATESCLASSIFICATION")
        .forEach(r -> reference(r, RELATING_CLASSIFICATION).ifPresent(used::add));
    Map<String, Host.Classification> byName = new LinkedHashMap<>();
    all("IFCCLASSIFICATION")
        .filter(c -> used.contains(c.id()))
        .forEach(
            c ->
                name(c)
                    .ifPresent(
                        n -> byName.putIfAbsent(n, new Host.Classification(n, reference(c)))));
    return List.copyOf(byName.values());
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

  /** What is no reference, in a file that breaks the schema here, refers to nothing. */
  private static Optional<Long> reference(StepInstance from, int attribute) {
    return attribute < from.values().size()
            && from.value(attribute) instanceof StepValue.Reference to
        ? Optional.of(to.id())
        : Optional.empty();
  }

  private static Optional<String> name(StepInstance classification) {
    return CLASSIFICATION_NAME < classification.values().size()
            && classification.value(CLASSIFICATION_NAME) instanceof StepValue.Text name
        ? Optional.of(name.value())
        : Optional.empty();
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
