package org.underlee.panel.view;

import java.util.function.Predicate;
import javafx.scene.control.TextField;

/**
 * A field whose text counts on Enter, and when the field is left. What is being typed is not
 * written over by what the program has to show there meanwhile.
 */
final class TypedText extends TextField {
  private final Predicate<String> say;
  private boolean typed;
  private boolean showing;

  /**
   * @param say takes what was typed; false when it cannot be taken and is to be typed on
   */
  TypedText(Predicate<String> say) {
    this.say = say;
    textProperty().addListener((o, before, now) -> typed |= !showing);
    focusedProperty().addListener((o, before, now) -> said(now));
    setOnAction(e -> said(false));
  }

  private void said(boolean stillTyped) {
    if (typed && !stillTyped) {
      typed = false;
      typed = !say.test(getText());
    }
  }

  /** Shows what holds, unless something else is being typed. */
  void show(String text) {
    if (isFocused() && typed) {
      return;
    }
    showing = true;
    if (!text.equals(getText())) {
      setText(text);
    }
    typed = false;
    showing = false;
  }
}
