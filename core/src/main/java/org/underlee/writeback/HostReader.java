package org.underlee.writeback;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.geom.Transform;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Finds in the designer's model what ours refer to. */
final class HostReader {
  // Positions of attributes, the same in all three schemas.
  private static final int GLOBAL_ID = 0;
  private static final int OBJECT_PLACEMENT = 5;
  private static final int CONTEXT_IDENTIFIER = 0;
  private static final int CONTEXT_TYPE = 1;
  private static final int CONTEXT_DIMENSION = 2;
  private static final int SOLID = 3;

  private final StepFile file;
  private final ModelUnits units;
  private final LongFunction<Optional<Transform>> placements;

  /**
   * @param placements the frame in world metres of an object placement, by its number; empty where
   *     it cannot be read
   */
  HostReader(StepFile file, ModelUnits units, LongFunction<Optional<Transform>> placements) {
    this.file = file;
    this.units = units;
    this.placements = placements;
  }

  /**
   * @throws InputException when the model has no project or no context for solid shapes
   */
  Host read() {
    StepInstance project = all("IFCPROJECT").findFirst().orElseThrow(() -> lacks("IfcProject"));
    Optional<StepInstance> building = all("IFCBUILDING").findFirst();
    Optional<StepInstance> shelter = building.or(() -> all("IFCSITE").findFirst());
    return new Host(
        file.schema().startsWith("IFC2X3"),
        reference(project),
        project.text(GLOBAL_ID),
        file.highestId(),
        all("IFCOWNERHISTORY").findFirst().map(HostReader::reference),
        body(),
        model(),
        units,
        storeys(),
        shelter.map(this::place).orElse(SpatialPlace.WORLD),
        building.map(HostReader::reference));
  }

  private Map<String, SpatialPlace> storeys() {
    Map<String, SpatialPlace> storeys = new HashMap<>();
    all("IFCBUILDINGSTOREY").forEach(s -> storeys.putIfAbsent(s.text(GLOBAL_ID), place(s)));
    return storeys;
  }

  /** A place whose placement cannot be read holds ours in world coordinates. */
  private SpatialPlace place(StepInstance spatial) {
    Value element = reference(spatial);
    return spatial.optionalRef(OBJECT_PLACEMENT).stream()
        .boxed()
        .flatMap(
            id ->
                placements.apply(id).stream()
                    .map(frame -> new SpatialPlace(element, Value.reference(id), frame)))
        .findFirst()
        .orElse(new SpatialPlace(element, Value.UNSET, Transform.IDENTITY));
  }

  private Optional<Value> body() {
    return all("IFCGEOMETRICREPRESENTATIONSUBCONTEXT")
        .filter(c -> c.optionalText(CONTEXT_IDENTIFIER).filter("Body"::equals).isPresent())
        .findFirst()
        .map(HostReader::reference);
  }

  private Value model() {
    return Stream.concat(
            all("IFCGEOMETRICREPRESENTATIONCONTEXT")
                .filter(c -> c.optionalText(CONTEXT_TYPE).filter("Model"::equals).isPresent()),
            all("IFCGEOMETRICREPRESENTATIONCONTEXT"))
        .filter(c -> c.number(CONTEXT_DIMENSION) == SOLID)
        .findFirst()
        .map(HostReader::reference)
        .orElseThrow(() -> lacks("IfcGeometricRepresentationContext of three dimensions"));
  }

  private Stream<StepInstance> all(String keyword) {
    return IntStream.of(file.ofKeyword(keyword)).mapToObj(file::decode);
  }

  private static Value reference(StepInstance instance) {
    return Value.reference(instance.id());
  }

  private InputException lacks(String what) {
    return new InputException(
        Place.NOWHERE.inFile(file.name()),
        file.name() + " has no " + what + ", so nothing can be added to it",
        "Export the model again with its project and its 3D shapes.");
  }
}
