package org.underlee.ifc;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules whose findings come from reading a model. */
public final class IfcRules {
  static final Rule NO_LENGTH_UNIT =
      new Rule(
          "no-length-unit",
          Level.WARNING,
          "IFC, IfcUnitAssignment",
          "The model does not say what unit its lengths are in; they are taken for metres.");

  static final Rule RELATIONSHIP_UNREADABLE =
      new Rule(
          "relationship-unreadable",
          Level.WARNING,
          Rule.OWN,
          "A line that says what belongs to what cannot be read, and is passed over.");

  static final Rule STOREY_UNPLACED =
      new Rule(
          "storey-unplaced",
          Level.WARNING,
          Rule.OWN,
          "A storey's placement cannot be read; its stated elevation is taken.");

  static final Rule BOUNDING_BOX_ONLY =
      new Rule(
          "bounding-box-only",
          Level.WARNING,
          Rule.OWN,
          "The model has no body of an element; it is taken for the box around it.");

  static final Rule OPENING_NOT_CUT =
      new Rule(
          "opening-not-cut",
          Level.NOTE,
          Rule.OWN,
          "An opening cannot be read or cut out; the element is taken as if whole there.");

  private IfcRules() {}

  public static List<Rule> all() {
    return List.of(
        NO_LENGTH_UNIT,
        RELATIONSHIP_UNREADABLE,
        STOREY_UNPLACED,
        BOUNDING_BOX_ONLY,
        OPENING_NOT_CUT);
  }
}
