package org.underlee.run;

import java.util.Optional;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepInstance;

/**
 * Where a model lies on a map: {@code IfcMapConversion}, which IFC2X3 does not have.
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
    return all.length == 0
        ? Optional.empty()
        : Optional.of(of(model.step().decode(all[0]), model.units().metresPerLengthUnit()));
  }

  private static Georeference of(StepInstance map, double metresPerUnit) {
    Optional<StepInstance> target = map.optionalFollow(TARGET);
    double metres = target.flatMap(Georeference::metresPerMapUnit).orElse(metresPerUnit);
    double scale = map.optionalNumber(SCALE).orElse(1) * metres / metresPerUnit;
    double k = Math.abs(scale - 1) <= MAP_SCALE ? scale : 1;
    double x = map.optionalNumber(ABSCISSA).orElse(1);
    double y = map.optionalNumber(ORDINATE).orElse(0);
    double length = Math.hypot(x, y);
    double cosine = length > 0 ? x / length : 1;
    double sine = length > 0 ? y / length : 0;
    Vec3 origin =
        new Vec3(map.number(EASTINGS), map.number(NORTHINGS), map.number(HEIGHT)).times(metres);
    Transform toMap =
        new Transform(
            origin,
            new Vec3(k * cosine, k * sine, 0),
            new Vec3(-k * sine, k * cosine, 0),
            new Vec3(0, 0, k));
    return new Georeference(toMap, target.flatMap(t -> t.optionalText(0)).orElse(""));
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
