package org.underlee.panel.view;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Dialog;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Writing;

/** What writing would add, and where it goes. */
final class WriteDialog extends Dialog<ButtonType> {
  private static final int COLUMNS = 2;

  private final TextField target = new TextField();
  private final Label caution = new Label();
  private final RadioButton copy = new RadioButton("Write to a copy");
  private final RadioButton inPlace =
      new RadioButton("Write into the model itself, and keep the old one beside it");

  WriteDialog(PanelModel model, Writing writing, Path file) {
    setTitle("Write the assembly");
    VBox content = new VBox();
    content.setId("write-dialog");
    content.getStyleClass().add("write-dialog");
    Label head = new Label(writing.words());
    head.getStyleClass().add("inspector-name");
    Label bytes = new Label(bytes(writing));
    bytes.setId("write-bytes");
    bytes.setWrapText(true);
    ToggleGroup group = new ToggleGroup();
    copy.setToggleGroup(group);
    inPlace.setToggleGroup(group);
    copy.setSelected(true);
    copy.setId("write-copy");
    inPlace.setId("write-in-place");
    target.setId("write-target");
    target.setText(Writing.beside(file).toString());
    target.setAccessibleText("File to write");
    target.disableProperty().bind(inPlace.selectedProperty());
    inPlace.setDisable(writing.zipped());
    caution.setId("write-caution");
    caution.getStyleClass().add("slip");
    caution.setWrapText(true);
    Label rest =
        new Label(
            "The designer's bytes stay as they are; “strip” gives the model back byte for byte.");
    rest.getStyleClass().add("quiet");
    rest.setWrapText(true);
    content
        .getChildren()
        .addAll(head, counts(writing.counts()), bytes, copy, target, caution, inPlace, rest);
    getDialogPane().setContent(content);
    ButtonType write = new ButtonType("Write", ButtonBar.ButtonData.OK_DONE);
    getDialogPane().getButtonTypes().setAll(write, ButtonType.CANCEL);
    Button button = (Button) getDialogPane().lookupButton(write);
    button.setId("write-now");
    target.textProperty().addListener((o, before, now) -> caution(button));
    inPlace.selectedProperty().addListener((o, before, now) -> caution(button));
    caution(button);
    setResultConverter(b -> b);
    resultProperty()
        .addListener(
            (o, before, now) ->
                Optional.ofNullable(now)
                    .filter(b -> b == write)
                    .ifPresent(b -> model.saving().write(where(file), inPlace.isSelected())));
  }

  private void caution(Button write) {
    boolean copied = !inPlace.isSelected();
    write.setDisable(copied && Writing.target(target.getText()).isEmpty());
    Seen.say(caution, copied ? Writing.caution(target.getText()) : "");
  }

  private Path where(Path file) {
    return Writing.target(target.getText()).filter(t -> !inPlace.isSelected()).orElse(file);
  }

  private static String bytes(Writing w) {
    return String.format(
        Locale.ROOT,
        "%,d bytes become %,d: %,d are added, none of the model's own is changed.",
        w.bytesBefore(),
        w.bytesAfter(),
        w.bytesAfter() - w.bytesBefore());
  }

  private static GridPane counts(Map<String, Integer> counts) {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("rows");
    int at = 0;
    for (Map.Entry<String, Integer> e : counts.entrySet()) {
      Label number = new Label(Integer.toString(e.getValue()));
      number.getStyleClass().add("value");
      grid.add(number, 2 * (at % COLUMNS), at / COLUMNS);
      grid.add(new Label(e.getKey()), 2 * (at % COLUMNS) + 1, at / COLUMNS);
      at++;
    }
    return grid;
  }
}
