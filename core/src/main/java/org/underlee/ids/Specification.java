package org.underlee.ids;

import java.util.List;

/**
 * One specification of an IDS file.
 *
 * @param versions of IFC that it is for
 * @param applicability facets of the elements that it is about; all must match
 * @param least elements that there must be
 * @param most elements that there may be
 */
record Specification(
    String name,
    List<String> versions,
    List<Facet> applicability,
    int least,
    int most,
    List<Requirement> requirements) {

  /** A facet that each of the elements must, may or must not have. */
  record Requirement(Facet facet, Cardinality cardinality) {}

  enum Cardinality {
    REQUIRED,
    /** Right where it is given. */
    OPTIONAL,
    PROHIBITED
  }

  Specification {
    versions = List.copyOf(versions);
    applicability = List.copyOf(applicability);
    requirements = List.copyOf(requirements);
  }
}
