package org.underlee.kit;

/**
 * A number that a kit file states. The key ends with the unit; the factor takes it to SI. A kit has
 * the numbers of {@link Family#numbers()} of its family, but for optional ones, and no others.
 */
public sealed interface KitNumber permits DrainValue, PanValue, DrapeValue, SheetValue {
  /** Takes a number of a kit file that is given in millimetres to SI. */
  double MM = 0.001;

  /**
   * How a kit file states a number.
   *
   * @param key its name there
   * @param toSi what one of the file's units is in SI
   * @param meaning what it is, for people
   */
  record Stated(String key, double toSi, String meaning) {}

  Stated stated();

  /** The name in a kit file. */
  default String key() {
    return stated().key;
  }

  /** What it is, for people. */
  default String meaning() {
    return stated().meaning;
  }

  /** Whether a kit may leave it out. */
  default boolean isOptional() {
    return false;
  }

  /** The number of a kit file in SI: metres, or a plain ratio. */
  default double toSi(double value) {
    return value * stated().toSi;
  }
}
