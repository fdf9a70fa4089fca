package org.underlee.schema;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** What the instances of a model may break of their schema. */
public final class SchemaRules {
  private static final String PART_21 = "ISO 10303-21";
  private static final String EXPRESS = "ISO 10303-11";

  static final Rule NAME =
      error("schema-name", PART_21, "The model says that it follows another schema.");

  static final Rule ENTITY =
      error(
          "schema-entity",
          EXPRESS,
          "The schema has no such entity, or it is abstract: there can be no instance of it.");

  static final Rule ATTRIBUTES =
      error(
          "schema-attributes",
          PART_21,
          "An instance has more or fewer attributes than its entity.");

  static final Rule MISSING =
      error("schema-missing", EXPRESS, "An attribute that must be given is not.");

  static final Rule TYPE =
      error("schema-type", EXPRESS, "A value is not of the type of its attribute.");

  static final Rule REFERENCE =
      error(
          "schema-reference",
          PART_21,
          "A reference leads to no instance, or to one of a wrong entity.");

  static final Rule CARDINALITY =
      error(
          "schema-cardinality",
          EXPRESS,
          "A list or set has more or fewer members than it may, or one twice.");

  static final Rule UNIQUE =
      error("schema-unique", EXPRESS, "Two instances have a value that only one may have.");

  static final Rule INVERSE =
      error("schema-inverse", EXPRESS, "More or fewer instances refer to one than may.");

  static final Rule WHERE =
      error(
          "schema-where",
          EXPRESS,
          "A rule that the schema states in words of its own does not hold.");

  static final Rule NOT_EXECUTED =
      new Rule(
          "schema-not-executed",
          Level.NOTE,
          Rule.OWN,
          "A rule of the schema could not be executed, so whether it holds is not known.");

  private SchemaRules() {}

  private static Rule error(String id, String source, String meaning) {
    return new Rule(id, Level.ERROR, source, meaning);
  }

  public static List<Rule> all() {
    return List.of(
        NAME,
        ENTITY,
        ATTRIBUTES,
        MISSING,
        TYPE,
        REFERENCE,
        CARDINALITY,
        UNIQUE,
        INVERSE,
        WHERE,
        NOT_EXECUTED);
  }
}
