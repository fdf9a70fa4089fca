package org.underlee.panel.model;

import java.util.Locale;
import java.util.function.BooleanSupplier;

/**
 * Something that can be done, from the keyboard, a button or the list of commands.
 *
 * @param keys in JavaFX's way of writing, {@code Shortcut+Z}; empty for none
 * @param icon name in the icon font
 */
public record Command(
    String id, String words, String icon, String keys, BooleanSupplier can, Runnable run) {

  /** Whether every word that was typed begins somewhere in what the command is called. */
  public boolean matches(String typed) {
    String all = words.toLowerCase(Locale.ROOT);
    for (String word : typed.strip().toLowerCase(Locale.ROOT).split("\\s+", -1)) {
      if (!all.contains(word)) {
        return false;
      }
    }
    return true;
  }
}
