package org.underlee.run;

import java.util.List;
import org.underlee.check.OutletRatings;
import org.underlee.drainage.flow.Storm;
import org.underlee.layout.Wishes;

/** What every method says of a design's outlets. */
public final class OutletsRated {
  private OutletsRated() {}

  /**
   * Of every outlet that takes water.
   *
   * @param wishes that the design was made with, and likewise the rain
   */
  public static List<OutletRatings> of(Design design, Wishes wishes, Storm storm) {
    return OutletRatings.of(
        design.survey().checkInput(design.layout(), wishes, storm, design.proof()));
  }
}
