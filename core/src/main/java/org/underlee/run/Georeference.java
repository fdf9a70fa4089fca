package org.underlee.run;

import java.util.Optional;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepInstance;

/**
 * Where a model lies on a map: {@code IfcMapConversion}, or in IFC2X3, which does not have it, the
 * property sets {@code ePset_MapConversion} and {@code ePset_ProjectedCRS} of the project or the
 * site (buildingSMART Australasia, User Guide for Geo-referencing in IFC, 2020; from memory).
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

  /**
   * What the model says of its map.
   *
   * @throws org.underlee.finding.InputException when it is no number where one should be
   */
  static Optional<Georeference> of(IfcModel model) {
    int[] all = model.step().ofKeyword("IFCMAPCONVERSION");
    return all.length == 0
        ? MapProperties.of(model)
        : Optional.of(of(model.step().decode(all[0]), model.units().metresPerLengthUnit()));
  }

  private static Georeference of(StepInstance map, double metresPerUnit) {
    Optional<StepInstance> target = map.optionalFollow(TARGET);
    double metres = target.flatMap(Georeference::metresPerMapUnit).orElse(metresPerUnit);
    return of(
        new Vec3(map.number(EASTINGS), map.number(NORTHINGS), map.number(HEIGHT)).times(metres),
        map.optionalNumber(ABSCISSA).orElse(1),
        map.optionalNumber(ORDINATE).orElse(0),
        map.optionalNumber(SCALE).orElse(1) * metres / metresPerUnit,
        target.flatMap(t -> t.optionalText(0)).orElse(""));
  }

  /**
   * A map conversion.
   *
   * @param origin of the model on the map, metres
   * @param x of the direction on the map that the model's x has, likewise y
   * @param scale of the map; one that is rather a change of units is left aside
   */
  static Georeference of(Vec3 origin, double x, double y, double scale, String system) {
    double k = Math.abs(scale - 1) <= MAP_SCALE ? scale : 1;
    double length = Math.hypot(x, y);
    double cosine = length > 0 ? x / length : 1;
    double sine = length > 0 ? y / length : 0;
    Transform toMap =
        new Transform(
            origin,
            new Vec3(k * cosine, k * sine, 0),
            new Vec3(-k * sine, k * cosine, 0),
            new Vec3(0, 0, k));
    return new Georeference(toMap, system);
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
