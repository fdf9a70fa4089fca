package org.underlee.writeback;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What made an assembly, besides its kit, so that it can be made again.
 *
 * @param framingHash of the framing that was read: tells when the designer has changed it
 * @param assumed the joists that the user let the program assume where the model has a slab only
 * @param told what else the user decided, by the name of the property that keeps it
 */
public record Provenance(
    String programVersion, String framingHash, Optional<String> assumed, Map<String, String> told) {
  /** The rain that the user named, where it is not the usual one. */
  public static final String RAIN = "Rain";

  /** What the user set right in the file beside the model. */
  public static final String OVERRIDES = "Overrides";

  /** The one deck that the user asked for. */
  public static final String DECK = "Deck";

  /** The storey whose decks the user asked for. */
  public static final String STOREY = "Storey";

  /** That the boards are off, or not yet laid. */
  public static final String BOARDS_OFF = "BoardsOff";

  /** Bays left open on purpose, with spaces between. */
  public static final String LEFT_OPEN = "LeftOpen";

  /** The seat at the high end that the user fixed, metres from the joist bottom. */
  public static final String SEAT = "Seat";

  /** The line of the low end that the user chose; LowEnd is where it is, in words. */
  public static final String LOW_END = "LowEndAsked";

  /** Corners of what must stay dry, in metres. */
  public static final String DRY_ZONE = "DryZone";

  /** Where the user wants outlets, by field. */
  public static final String OUTLETS = "Outlets";

  /** Areas of roofs that drain onto the decks, each with its place, with spaces between. */
  public static final String ALSO_DRAINS = "AlsoDrains";

  /** The user's own tables of capacities, as written. */
  public static final String OWN_TABLES = "CapacityTables";

  /** Names that a resync kept in place of those that a survey counts out. */
  public static final String NAMES = "KeptNames";

  /** The GlobalId of the project that the GlobalIds derive from, where it is an older export's. */
  public static final String PROJECT = "ProjectBefore";

  public Provenance {
    told = Collections.unmodifiableMap(new TreeMap<>(told));
  }

  public Provenance(String programVersion, String framingHash, Optional<String> assumed) {
    this(programVersion, framingHash, assumed, Map.of());
  }
}
