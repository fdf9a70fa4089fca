package org.underlee.drainage;

import java.util.List;

/** What an outline is of, by its number: a face, a catchment, an outlet's opening, or a cut. */
final class SweepShapes {
  private final Facet[] facets;
  private final int outletsFrom;
  private final int cutsFrom;

  /**
   * @param areas how many catchments and outlets there are, numbered after the faces
   * @param outlets how many of them are outlets
   */
  SweepShapes(List<Facet> facets, int areas, int outlets) {
    this.facets = facets.toArray(new Facet[0]);
    this.outletsFrom = facets.size() + areas - outlets;
    this.cutsFrom = facets.size() + areas;
  }

  boolean isFacet(int shape) {
    return shape < facets.length;
  }

  Facet facet(int shape) {
    return facets[shape];
  }

  /** Number of the catchment; −1 for anything else. */
  int catchment(int shape) {
    return !isFacet(shape) && shape < outletsFrom ? shape - facets.length : -1;
  }

  /** Number of the outlet; −1 for anything else. */
  int outlet(int shape) {
    return shape >= outletsFrom && shape < cutsFrom ? shape - outletsFrom : -1;
  }
}
