package org.underlee.panel.view;

import java.util.List;
import java.util.function.Supplier;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.Command;

/** Everything that can be done, to be found by typing. */
final class PaletteView extends VBox {
  private final Supplier<List<Command>> commands;
  private final TextField typed = new TextField();
  private final ListView<Command> found = new ListView<>();
  private List<Command> offered = List.of();

  /**
   * @param commands told when it opens
   */
  PaletteView(Supplier<List<Command>> commands) {
    this.commands = commands;
    setId("commands");
    getStyleClass().add("palette");
    setMaxSize(560, 420);
    typed.setId("command-text");
    typed.setPromptText("Type what you want to do");
    typed.setAccessibleText("Type what you want to do");
    typed.textProperty().addListener((o, before, now) -> fill());
    typed.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    found.setId("command-list");
    found.setAccessibleText("Commands");
    found.setCellFactory(v -> new Cell());
    found.setOnMouseClicked(e -> run());
    found.setFocusTraversable(false);
    VBox.setVgrow(found, Priority.ALWAYS);
    getChildren().addAll(typed, found);
    setVisible(false);
    setManaged(false);
  }

  void open() {
    offered = commands.get();
    typed.clear();
    fill();
    setVisible(true);
    setManaged(true);
    typed.requestFocus();
  }

  void close() {
    setVisible(false);
    setManaged(false);
  }

  private void fill() {
    found
        .getItems()
        .setAll(
            offered.stream()
                .filter(c -> c.can().getAsBoolean() && c.matches(typed.getText()))
                .toList());
    found.getSelectionModel().selectFirst();
  }

  private void key(KeyEvent e) {
    int at = found.getSelectionModel().getSelectedIndex();
    if (e.getCode() == KeyCode.ESCAPE) {
      close();
    } else if (e.getCode() == KeyCode.ENTER) {
      run();
    } else if (e.getCode() == KeyCode.DOWN) {
      found.getSelectionModel().select(Math.min(at + 1, found.getItems().size() - 1));
    } else if (e.getCode() == KeyCode.UP) {
      found.getSelectionModel().select(Math.max(at - 1, 0));
    } else {
      return;
    }
    found.scrollTo(Math.max(0, found.getSelectionModel().getSelectedIndex() - 4));
    e.consume();
  }

  private void run() {
    Command command = found.getSelectionModel().getSelectedItem();
    close();
    if (command != null) {
      command.run().run();
    }
  }

  private static final class Cell extends ListCell<Command> {
    @Override
    protected void updateItem(Command command, boolean empty) {
      super.updateItem(command, empty);
      setText(null);
      if (empty || command == null) {
        setGraphic(null);
        return;
      }
      Label words = new Label(command.words(), Icons.icon(command.icon()));
      Label keys = new Label(command.keys().replace("Shortcut", "Ctrl"));
      keys.getStyleClass().add("keys");
      Region gap = new Region();
      HBox.setHgrow(gap, Priority.ALWAYS);
      setGraphic(new HBox(words, gap, keys));
    }
  }
}
