package org.underlee.layout;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules whose findings come from laying out an assembly. */
public final class LayoutRules {
  static final Rule BAY_TOO_WIDE =
      new Rule(
          "bay-too-wide",
          Level.ERROR,
          Rule.COMMON_PRACTICE,
          "The bay is wider than a pan of the kit spans; it is left open.");

  static final Rule BAY_TOO_NARROW =
      new Rule(
          "bay-too-narrow",
          Level.ERROR,
          Rule.COMMON_PRACTICE,
          "The bay is too narrow to form and fix a pan in; it is left open.");

  static final Rule ON_A_SLANT =
      new Rule(
          "bay-on-a-slant",
          Level.ERROR,
          Rule.OWN,
          "A bay begins on a slant, as at a hip joist, where no square head rail fits; it is left"
              + " open.");

  static final Rule RUN_TOO_SHORT =
      new Rule(
          "run-too-short",
          Level.ERROR,
          Rule.OWN,
          "The clear run leaves no room for a pan between its end gaps; the bay is left open.");

  static final Rule NO_SEAT =
      new Rule(
          "no-seat-height",
          Level.ERROR,
          Rule.OWN,
          "No seat height meets every limit in the bay, or not the field's"
              + " height; the bay is left open.");

  static final Rule PIPE_AT_EDGE =
      new Rule(
          "pipe-at-pan-edge",
          Level.ERROR,
          Rule.OWN,
          "A pipe goes through where no sheet would be left around its collar; the bay is left"
              + " open.");

  static final Rule PIPE_THROUGH =
      new Rule(
          "pipe-through-bay",
          Level.ERROR,
          Rule.OWN,
          "A pipe goes through a bay where kits of this family have no collar; the bay is left"
              + " open.");

  static final Rule BATTEN_NOT_HUNG =
      new Rule(
          "batten-not-hung",
          Level.ERROR,
          Rule.OWN,
          "Something stands beside so many joists that a batten cannot be hung within its span.");

  public static final Rule LEFT_OPEN =
      new Rule(
          "bay-left-open",
          Level.NOTE,
          Rule.OWN,
          "A bay is left open because the user asked for it.");

  public static final Rule OUTSIDE_ZONE =
      new Rule(
          "bay-outside-dry-zone",
          Level.NOTE,
          Rule.OWN,
          "A bay is left open because it is over nothing that the user wants dry.");

  static final Rule ZONE_SPLASHED =
      new Rule(
          "dry-zone-splashed",
          Level.WARNING,
          Rule.COMMON_PRACTICE,
          "The drained part ends in the middle of the deck, so near to the dry zone that rain beside"
              + " the last joist splashes in.");

  static final Rule ZONE_BEYOND =
      new Rule(
          "dry-zone-beyond-gutter",
          Level.WARNING,
          Rule.OWN,
          "The dry zone goes on beyond the gutter, below deck that drips.");

  static final Rule NOTCHED_LONG =
      new Rule(
          "rail-notched-long",
          Level.ERROR,
          Rule.OWN,
          "A rail's leg is notched so low that no screw fits, over more than the kit's spacing of"
              + " screws.");

  static final Rule NO_SUCH_LOW_END =
      new Rule(
          "low-end-not-there",
          Level.WARNING,
          Rule.OWN,
          "The field has no low-end line of the name that the user asked for; another is taken.");

  static final Rule BOARDS_ON =
      new Rule(
          "boards-on-the-joists",
          Level.ERROR,
          Rule.OWN,
          "The kit lays membranes over the joist tops, but boards lie there and nobody said that"
              + " they are off; nothing is laid out.");

  static final Rule BOARDS_TAKEN_OFF =
      new Rule(
          "boards-taken-to-be-off",
          Level.NOTE,
          Rule.OWN,
          "The kit lays membranes over the joist tops; the boards are taken to be off, or not yet"
              + " laid.");

  static final Rule RAIL_PACKED =
      new Rule(
          "rail-packed-out",
          Level.NOTE,
          Rule.COMMON_PRACTICE,
          "A joist line is thinner over part of the bay, so its rail needs packing there to run"
              + " straight.");

  static final Rule BESIDE_RAIL =
      new Rule(
          "leg-left-whole",
          Level.NOTE,
          Rule.COMMON_PRACTICE,
          "Something in the bay stands as high as a rail's leg, but leaves room beside it: the leg is"
              + " not notched.");

  static final Rule NO_POST =
      new Rule(
          "no-post-for-downspout",
          Level.WARNING,
          Rule.OWN,
          "No post stands by the gutter to fix a downspout to.");

  static final Rule HEADROOM =
      new Rule(
          "headroom",
          Level.WARNING,
          Rule.COMMON_PRACTICE,
          "Less than the kit's headroom is left below the gutter.");

  static final Rule INSIDE_FLOOR =
      new Rule(
          "inside-floor-left-out",
          Level.NOTE,
          Rule.OWN,
          "Framing looks like a floor of a room or like a roof, so it is not laid out.");

  public static final Rule BEYOND_BEAM =
      new Rule(
          "open-beyond-the-beam",
          Level.WARNING,
          Rule.OWN,
          "The pans end at the beam; the deck from there to the rim drips.");

  static final Rule ENDS_BEFORE_BEAM =
      new Rule(
          "bay-ends-before-beam",
          Level.ERROR,
          Rule.OWN,
          "A bay does not reach the beam that the field's gutter follows, and is left open.");

  static final Rule NO_GUTTER_BELOW =
      new Rule(
          "no-gutter-below",
          Level.ERROR,
          Rule.OWN,
          "A bay ends too far from the line of the field's gutter to drip into it, and is left open.");

  static final Rule NO_HEAD_RAIL =
      new Rule(
          "no-head-rail",
          Level.WARNING,
          Rule.OWN,
          "Nothing bounds the high end of bays, so there is nothing to fix a head rail to.");

  static final Rule NOTHING_TO_HANG_ON =
      new Rule(
          "nothing-to-hang-gutter-on",
          Level.ERROR,
          Rule.OWN,
          "No beam or rim stands at the low end, so the gutter's hangers have nothing to be fixed to.");

  static final Rule FIELD_EMPTY =
      new Rule(
          "field-not-served",
          Level.ERROR,
          Rule.OWN,
          "No bay of the field can be served with this kit; nothing is laid out there.");

  private LayoutRules() {}

  public static List<Rule> all() {
    return List.of(
        BAY_TOO_WIDE,
        BAY_TOO_NARROW,
        ON_A_SLANT,
        RUN_TOO_SHORT,
        NO_SEAT,
        PIPE_AT_EDGE,
        PIPE_THROUGH,
        BATTEN_NOT_HUNG,
        LEFT_OPEN,
        OUTSIDE_ZONE,
        ZONE_SPLASHED,
        ZONE_BEYOND,
        NOTCHED_LONG,
        NO_SUCH_LOW_END,
        BOARDS_ON,
        BOARDS_TAKEN_OFF,
        RAIL_PACKED,
        BESIDE_RAIL,
        NO_POST,
        HEADROOM,
        INSIDE_FLOOR,
        BEYOND_BEAM,
        ENDS_BEFORE_BEAM,
        NO_GUTTER_BELOW,
        NO_HEAD_RAIL,
        NOTHING_TO_HANG_ON,
        FIELD_EMPTY);
  }
}
