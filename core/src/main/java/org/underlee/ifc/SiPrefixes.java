package org.underlee.ifc;

import java.util.Map;

/** The prefixes of SI units, in the words of the standard (IfcSIPrefix). */
public final class SiPrefixes {
  /** {@code MILLI} to -3. */
  public static final Map<String, Integer> POWERS_OF_TEN =
      Map.ofEntries(
          Map.entry("EXA", 18),
          Map.entry("PETA", 15),
          Map.entry("TERA", 12),
          Map.entry("GIGA", 9),
          Map.entry("MEGA", 6),
          Map.entry("KILO", 3),
          Map.entry("HECTO", 2),
          Map.entry("DECA", 1),
          Map.entry("DECI", -1),
          Map.entry("CENTI", -2),
          Map.entry("MILLI", -3),
          Map.entry("MICRO", -6),
          Map.entry("NANO", -9),
          Map.entry("PICO", -12),
          Map.entry("FEMTO", -15),
          Map.entry("ATTO", -18));

  private SiPrefixes() {}
}
