package org.underlee.clash;

import java.util.Locale;

/** How two bodies stand to each other, the gravest first. */
public enum ClashKind {
  /** The same body in the same place. */
  DUPLICATE,
  /** Both fill the same space, by more than the tolerance. */
  INTERSECT,
  /** Nearer than the clearance, and no contact. */
  GAP,
  /** They bear on each other, within the tolerance. */
  TOUCH;

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
