package org.underlee.run;

import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepInstance;

/**
 * Where a model lies on a map: {@code IfcMapConversion}, or the property sets that stand for it in
 * IFC2X3.
 *
 * @param toMap from the model's world to the map, both in metres
 * @param system name of the map's coordinate reference system, or empty
 */
record Georeference(Transform toMap, String system) {
  /** A scale further from one than this is a change of units and no map scale. */
  private static final double MAP_SCALE = 0.01;

  // Attributes of IfcMapConversion.
  private static final int TARGET = 1;
  private static final int EASTINGS = 2;
  private static final int NORTHINGS = 3;
  private static final int HEIGHT = 4;
  private static final int ABSCISSA = 5;
  private static final int ORDINATE = 6;
  private static final int SCALE = 7;

  /** Of IfcProjectedCRS. */
  private static final int MAP_UNIT = 6;

  static Optional<Georeference> of(IfcModel model) {
    int[] all = model.step().ofKeyword("IFCMAPCONVERSION");
    double metres = model.units().metresPerLengthUnit();
    return all.length == 0
        ? MapProperties.of(model).flatMap(p -> of(p, metres))
        : Optional.of(of(model.step().decode(all[0]), metres));
  }

  private static Georeference of(StepInstance map, double metresPerUnit) {
    Optional<StepInstance> target = map.optionalFollow(TARGET);
    double metres = target.flatMap(Georeference::metresPerMapUnit).orElse(metresPerUnit);
    Vec3 origin =
        new Vec3(map.number(EASTINGS), map.number(NORTHINGS), map.number(HEIGHT)).times(metres);
    double scale = map.optionalNumber(SCALE).orElse(1) * metres / metresPerUnit;
    double x = map.optionalNumber(ABSCISSA).orElse(1);
    double y = map.optionalNumber(ORDINATE).orElse(0);
    String system = target.flatMap(t -> t.optionalText(0)).orElse("");
    return new Georeference(toMap(origin, scale, x, y), system);
  }

  private static Optional<Georeference> of(MapProperties map, double metresPerUnit) {
    OptionalDouble east = map.number("eastings");
    OptionalDouble north = map.number("northings");
    if (east.isEmpty() || north.isEmpty()) {
      return Optional.empty();
    }
    double metres = map.metresPerMapUnit().orElse(metresPerUnit);
    double height = map.number("orthogonalheight").orElse(0);
    Vec3 origin = new Vec3(east.getAsDouble(), north.getAsDouble(), height).times(metres);
    double scale = map.number("scale").orElse(1) * metres / metresPerUnit;
    double x = map.number("xaxisabscissa").orElse(1);
    double y = map.number("xaxisordinate").orElse(0);
    return Optional.of(new Georeference(toMap(origin, scale, x, y), map.name()));
  }

  private static Transform toMap(Vec3 origin, double scale, double x, double y) {
    double k = Math.abs(scale - 1) <= MAP_SCALE ? scale : 1;
    double length = Math.hypot(x, y);
    double cosine = length > 0 ? x / length : 1;
    double sine = length > 0 ? y / length : 0;
    return new Transform(
        origin,
        new Vec3(k * cosine, k * sine, 0),
        new Vec3(-k * sine, k * cosine, 0),
        new Vec3(0, 0, k));
  }

  /** An SI unit of length, with or without a prefix that maps use. */
  private static Optional<Double> metresPerMapUnit(StepInstance target) {
    if (target.size() <= MAP_UNIT) {
      return Optional.empty();
    }
    return target
        .optionalFollow(MAP_UNIT)
        .filter(u -> u.keyword().equals("IFCSIUNIT"))
        .map(
            u ->
                switch (u.optionalEnumeration(2).orElse("")) {
                  case "MILLI" -> 0.001;
                  case "CENTI" -> 0.01;
                  case "KILO" -> 1000.0;
                  default -> 1.0;
                });
  }

  /** Whether both are said to be on the same map, or one does not say. */
  boolean isOnMapOf(Georeference other) {
    return system.isBlank() || other.system.isBlank() || system.equalsIgnoreCase(other.system);
  }
}
