package org.underlee.panel.model;

import java.util.OptionalDouble;

/**
 * That a person has answered for something, and for what exactly.
 *
 * @param reason in the person's words
 * @param of what was said then, in metric units; empty where it was kept without
 * @param past how far past its limit it was then, SI; empty where it has no limit or is not known
 */
public record Acceptance(String reason, String of, OptionalDouble past) {
  /** Of something that has no numbers. */
  static Acceptance plain(String reason) {
    return new Acceptance(reason, "", OptionalDouble.empty());
  }
}
