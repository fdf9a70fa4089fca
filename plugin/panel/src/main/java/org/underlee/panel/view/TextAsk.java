package org.underlee.panel.view;

import java.util.Optional;
import java.util.OptionalDouble;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.ButtonType;
import javafx.scene.control.TextInputDialog;
import org.underlee.units.LengthText;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** Asks for a line of text over the panel. */
final class TextAsk {
  private TextAsk() {}

  /**
   * Asks why something is accepted as it is; it can be answered when something is written. Empty
   * when the question was put away.
   */
  static Optional<String> reason(Node owner, String title, String what) {
    TextInputDialog ask = dialog(owner, title, what, "");
    ask.setContentText("Reason");
    ask.getEditor().setId("accept-reason");
    ask.getDialogPane()
        .lookupButton(ButtonType.OK)
        .disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> ask.getEditor().getText().isBlank(), ask.getEditor().textProperty()));
    return ask.showAndWait().filter(reason -> !reason.isBlank());
  }

  /**
   * Asks for a length, metres; it can be answered when it is one, or nothing: then an empty length.
   * Empty when the question was put away.
   */
  static Optional<OptionalDouble> length(
      Node owner, String title, String what, OptionalDouble before, UnitSystem units) {
    String given = before.isPresent() ? Lengths.format(before.getAsDouble(), units) : "";
    TextInputDialog ask = dialog(owner, title, what, given);
    ask.setContentText("Length");
    ask.getEditor().setId("asked-length");
    ask.getDialogPane()
        .lookupButton(ButtonType.OK)
        .disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> parsed(ask.getEditor().getText()).isEmpty(), ask.getEditor().textProperty()));
    return ask.showAndWait()
        .filter(t -> !t.equals(given) || given.isEmpty())
        .flatMap(TextAsk::parsed);
  }

  private static Optional<OptionalDouble> parsed(String text) {
    try {
      return Optional.of(
          text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(LengthText.parse(text)));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static TextInputDialog dialog(Node owner, String title, String what, String before) {
    TextInputDialog ask = new TextInputDialog(before);
    ask.initOwner(owner.getScene().getWindow());
    ask.setTitle(title);
    ask.setHeaderText(what);
    Dress.as(owner, ask.getDialogPane());
    return ask;
  }
}
