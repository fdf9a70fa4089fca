package org.underlee.panel.model;

/** How far a result has come. */
public enum Progress {
  /** The framing is known; nothing is laid out yet. */
  FRAMED,
  /** The deck at hand is laid out; others are as they were before, or not there yet. */
  PARTLY,
  /** Every part is in its place; nothing is checked or counted yet. */
  LAID_OUT,
  /** The design is of this layout, and not of the one before. */
  WHOLE
}
