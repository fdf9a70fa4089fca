package org.underlee.panel.model;

import java.util.Locale;
import java.util.function.BooleanSupplier;

/**
 * Something that can be done, from the keyboard, a button or the list of commands.
 *
 * @param keys in JavaFX's way of writing, {@code Shortcut+Z}; empty for none
 * @param icon name in the icon font
 * @param needs what must be so before it can be done; empty where it always can
 */
public record Command(
    String id,
    String words,
    String icon,
    String keys,
    BooleanSupplier can,
    String needs,
    Runnable run) {

  /** What must be so before something can be done, in words and as a question. */
  public record Need(String words, BooleanSupplier met) {
    /** Nothing. */
    public static final Need NONE = new Need("", () -> true);
  }

  public Command(String id, String words, String icon, String keys, Need need, Runnable run) {
    this(id, words, icon, keys, need.met, need.words, run);
  }

  /** Does it, where it can be done now. */
  public boolean runIfItCan() {
    boolean now = can.getAsBoolean();
    if (now) {
      run.run();
    }
    return now;
  }

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
