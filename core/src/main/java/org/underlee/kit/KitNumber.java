package org.underlee.kit;

/**
 * A number that a kit file states. The key ends with the unit; the factor takes it to SI. A kit has
 * the numbers of {@link Family#numbers()} of its family and no others.
 */
public sealed interface KitNumber permits DrainValue, PanValue {
  /** Takes a number of a kit file that is given in millimetres to SI. */
  double MM = 0.001;

  /** The name in a kit file. */
  String key();

  /** What it is, for people. */
  String meaning();

  /** The number of a kit file in SI: metres, or a plain ratio. */
  double toSi(double value);
}
