package org.underlee.panel.model;

/** How pictures follow a selection. */
enum Bringing {
  /** They stay: it was made in them. */
  NOT,
  /** What is out of sight comes into it, as near or far as the picture is. */
  INTO_VIEW,
  /** It fills the picture. */
  NEAR
}
