package org.underlee.run;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * Latitude and longitude that a site states, degrees: too coarse to place a model by, but enough to
 * see that two are not of one house.
 */
record SiteOnEarth(double latitude, double longitude) {
  // Attributes of IfcSite.
  private static final int LATITUDE = 9;
  private static final int LONGITUDE = 10;

  /** Sixty minutes of sixty seconds, of a million parts (IfcCompoundPlaneAngleMeasure). */
  private static final double[] PARTS = {1, 60, 3_600, 3.6e9};

  /** Length of a degree on the mean sphere of 6,371,009 m. */
  private static final double DEGREE = 111_195;

  static Optional<SiteOnEarth> of(IfcModel model) {
    for (int index : model.step().ofKeyword("IFCSITE")) {
      try {
        StepInstance site = model.step().decode(index);
        if (site.size() > LONGITUDE && !site.isOmitted(LATITUDE) && !site.isOmitted(LONGITUDE)) {
          return Optional.of(
              new SiteOnEarth(degrees(site.list(LATITUDE)), degrees(site.list(LONGITUDE))));
        }
      } catch (InputException e) {
        return Optional.empty(); // what cannot be read proves nothing
      }
    }
    return Optional.empty();
  }

  private static double degrees(List<StepValue> parts) {
    double sum = 0;
    for (int i = 0; i < Math.min(parts.size(), PARTS.length); i++) {
      if (parts.get(i) instanceof StepValue.Numeral n) {
        sum += Double.parseDouble(n.raw()) / PARTS[i];
      }
    }
    return sum;
  }

  /** Metres between the two, good to a few parts in a thousand near to each other. */
  double distance(SiteOnEarth other) {
    double north = (other.latitude - latitude) * DEGREE;
    double middle = Math.toRadians((latitude + other.latitude) / 2);
    double turn = Math.abs(other.longitude - longitude) % 360;
    double east = Math.min(turn, 360 - turn) * DEGREE * Math.cos(middle);
    return Math.hypot(north, east);
  }
}
