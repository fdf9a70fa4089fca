package org.underlee.panel.view;

import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.beans.WeakInvalidationListener;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.javafx.FontIcon;
import org.underlee.finding.Level;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.PanelModel;

/** A row of the findings, made once: each node that is new has its styles worked out. */
final class FindingCell extends ListCell<FindingList.Entry> {
  /** A row about what is selected has a bar at its side. */
  private static final PseudoClass ABOUT = PseudoClass.getPseudoClass("about");

  private final PanelModel model;
  private final FindingButtons buttons;
  private final Label message = new Label();
  private final Label below = new Label();
  private final HBox content;
  private final VBox words = new VBox(message, below);
  private final HBox pressed = new HBox();

  /** Kept here: what only listens to a property is forgotten by it. */
  private final InvalidationListener selecting = o -> mark();

  private Level level = Level.NOTE;

  private String spoken = "";

  /**
   * @param again what a click on a row that is chosen already does
   */
  FindingCell(ListView<FindingList.Entry> list, PanelModel model, Runnable again) {
    this.model = model;
    buttons = new FindingButtons(model.findings(), list);
    setPrefWidth(0);
    message.setWrapText(true);
    below.getStyleClass().add("quiet");
    below.setWrapText(true);
    message.setMinHeight(Region.USE_PREF_SIZE);
    below.setMinHeight(Region.USE_PREF_SIZE);
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMinWidth(0);
    pressed.getStyleClass().add("finding-buttons");
    pressed.setMinWidth(Region.USE_PREF_SIZE);
    content = new WrappedRow(list, sign(level), words, pressed);
    content.getStyleClass().add("finding");
    setText(null);
    setGraphic(content);
    content.setOnMouseClicked(e -> again.run());
    model.selection().addListener(new WeakInvalidationListener(selecting));
  }

  @Override
  protected void updateItem(FindingList.Entry entry, boolean empty) {
    super.updateItem(entry, empty);
    content.setVisible(!empty && entry != null);
    if (!empty && entry instanceof FindingList.Head head) {
      show(head);
    } else if (!empty && entry instanceof FindingList.Row row) {
      show(row);
    } else {
      spoken = "";
    }
    mark();
  }

  private void mark() {
    boolean about =
        !isEmpty()
            && getItem() instanceof FindingList.Row row
            && model.about().touches(row.places());
    pseudoClassStateChanged(ABOUT, about);
    setAccessibleText(about ? spoken + ", about what is selected" : spoken);
  }

  private void show(FindingList.Head head) {
    message.setText(head.words() + " (" + head.count() + ")");
    Seen.say(below, "");
    look("finding-head");
    content.getChildren().get(0).setManaged(false);
    content.getChildren().get(0).setVisible(false);
    pressed.getChildren().clear();
    spoken = head.words() + ", " + head.count();
  }

  private void show(FindingList.Row row) {
    if (row.finding().level() != level) {
      level = row.finding().level();
      content.getChildren().set(0, sign(level));
    }
    content.getChildren().get(0).setManaged(true);
    content.getChildren().get(0).setVisible(true);
    message.setText(row.message());
    Seen.say(below, below(row));
    look(row.standing().isAccepted() ? "accepted" : "open");
    buttons.show(row, pressed.getChildren());
    spoken = level.word() + ": " + row.message() + " " + below(row);
  }

  private void look(String style) {
    List<String> all = List.of("finding", style);
    if (!content.getStyleClass().equals(all)) {
      content.getStyleClass().setAll(all);
    }
  }

  private static String below(FindingList.Row row) {
    String rule = row.finding().rule().id();
    String where = row.where().isEmpty() ? rule : rule + "  ·  " + row.where();
    String answer = row.answer().isEmpty() ? "" : "  ·  " + row.answer();
    String advice = row.standing().isAccepted() ? "" : "  ·  " + row.advice();
    return where + answer + advice;
  }

  /** The sign of a level differs in shape as well as in colour. */
  static FontIcon sign(Level level) {
    FontIcon icon =
        Icons.icon(
            switch (level) {
              case ERROR -> "mdi2a-alert-octagon";
              case WARNING -> "mdi2a-alert";
              case NOTE -> "mdi2i-information-outline";
            });
    icon.getStyleClass().add("level-" + level.word());
    return icon;
  }
}
