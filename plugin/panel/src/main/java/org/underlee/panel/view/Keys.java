package org.underlee.panel.view;

import java.util.Map;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;

/** Keys of commands: which are pressed, and how they are written on this system's keyboards. */
final class Keys {
  /** Plus is on a key of its own, above the equals sign, or on the number pad. */
  private static final Map<KeyCode, KeyCode> SAME =
      Map.of(
          KeyCode.EQUALS, KeyCode.PLUS,
          KeyCode.ADD, KeyCode.PLUS,
          KeyCode.SUBTRACT, KeyCode.MINUS);

  private Keys() {}

  /** Whether these keys, as JavaFX writes them, are pressed; never where they are none. */
  static boolean match(String keys, KeyEvent e) {
    if (keys.isEmpty()) {
      return false;
    }
    KeyCombination combination = KeyCombination.valueOf(keys);
    return combination.match(e) || combination.match(meant(e));
  }

  /** The sign that is meant, however it is reached. */
  private static KeyEvent meant(KeyEvent e) {
    KeyCode code = SAME.getOrDefault(e.getCode(), e.getCode());
    boolean shift = e.isShiftDown() && code != KeyCode.PLUS;
    return new KeyEvent(
        e.getEventType(),
        e.getCharacter(),
        e.getText(),
        code,
        shift,
        e.isControlDown(),
        e.isAltDown(),
        e.isMetaDown());
  }

  /** {@code Ctrl+K}, or the signs that stand for it on a Mac. */
  static String words(String keys) {
    return keys.isEmpty() ? "" : KeyCombination.valueOf(keys).getDisplayText();
  }
}
