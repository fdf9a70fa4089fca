package org.underlee.panel.view;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.Node;
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

/**
 * Everything that can be done, to be found by typing; what cannot be done now comes last and says
 * what it needs.
 */
final class PaletteView extends VBox {
  static final String KEYS = "Shortcut+K";

  private final Supplier<List<Command>> commands;
  private final TextField typed = new TextField();
  private final ListView<Command> found = new ListView<>();
  private Optional<Node> before = Optional.empty();
  private List<Command> offered = List.of();

  /**
   * @param commands told when it opens
   */
  PaletteView(Supplier<List<Command>> commands) {
    this.commands = commands;
    setId("commands");
    getStyleClass().add("palette");
    typed.setId("command-text");
    typed.setPromptText("Type what you want to do");
    typed.setAccessibleText("Type what you want to do");
    typed.textProperty().addListener((o, was, now) -> fill());
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
    if (!isVisible()) {
      before = Optional.ofNullable(getScene().getFocusOwner());
    }
    offered = commands.get();
    typed.clear();
    fill();
    setVisible(true);
    setManaged(true);
    typed.requestFocus();
  }

  /** Goes away, and the keys go again to where they went before. */
  void close() {
    setVisible(false);
    setManaged(false);
    before.ifPresent(Node::requestFocus);
    before = Optional.empty();
  }

  /** Whether something of the scene is part of this. */
  boolean holds(Object target) {
    Node node = target instanceof Node n ? n : null;
    while (node != null && node != this) {
      node = node.getParent();
    }
    return node != null;
  }

  private void fill() {
    found
        .getItems()
        .setAll(
            offered.stream()
                .filter(c -> c.matches(typed.getText()))
                .sorted(Comparator.comparing(c -> !c.can().getAsBoolean()))
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

  /** What cannot be done now leaves the list open, where what it needs can be read. */
  private void run() {
    Command command = found.getSelectionModel().getSelectedItem();
    if (command == null || command.can().getAsBoolean()) {
      close();
    }
    if (command != null) {
      command.runIfItCan();
    }
  }

  private static final class Cell extends ListCell<Command> {
    @Override
    protected void updateItem(Command command, boolean empty) {
      super.updateItem(command, empty);
      setText(null);
      if (empty || command == null) {
        setGraphic(null);
        setAccessibleText(null);
        return;
      }
      boolean can = command.can().getAsBoolean();
      Label words = new Label(command.words(), Icons.icon(command.icon()));
      Label beside = new Label(can ? Keys.words(command.keys()) : command.needs());
      beside.setMinWidth(Region.USE_PREF_SIZE);
      words.getStyleClass().add(can ? "can" : "cannot");
      beside.getStyleClass().add(can ? "keys" : "cannot");
      Region gap = new Region();
      HBox.setHgrow(gap, Priority.ALWAYS);
      setPrefWidth(0);
      setAccessibleText(command.words() + (can ? "" : ", not now: " + command.needs()));
      setGraphic(new HBox(words, gap, beside));
    }
  }
}
