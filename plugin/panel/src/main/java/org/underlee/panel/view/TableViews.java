package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Table;

/** Several tables, one of them in sight; a row leads to what it is about. */
final class TableViews extends BorderPane {
  private final PanelModel model;
  private final String id;
  private final HBox names = new HBox();
  private List<Table> shown = List.of();
  private int chosen;
  private boolean wanted = true;
  private boolean due;

  TableViews(PanelModel model, String id) {
    this.model = model;
    this.id = id;
    names.getStyleClass().add("bar");
    setTop(names);
  }

  void show(List<Table> tables) {
    if (tables.equals(shown)) {
      return;
    }
    shown = tables;
    due = true;
    fill();
  }

  /** Whether someone looks: the screen's thread is not kept busy with tables that nobody sees. */
  void want(boolean now) {
    wanted = now;
    fill();
  }

  private void fill() {
    if (!wanted || !due) {
      return;
    }
    due = false;
    names.getChildren().clear();
    ToggleGroup group = new ToggleGroup();
    for (int i = 0; i < shown.size(); i++) {
      names.getChildren().add(name(i, group));
    }
    if (!shown.isEmpty()) {
      choose(Math.min(chosen, shown.size() - 1));
    }
  }

  private ToggleButton name(int number, ToggleGroup group) {
    Table table = shown.get(number);
    ToggleButton button = new ToggleButton(table.name() + " (" + table.lines().size() + ")");
    button.setId(id + "-show-" + (number + 1));
    button.setToggleGroup(group);
    button.setSelected(number == chosen);
    button.setOnAction(
        e -> {
          button.setSelected(true);
          choose(number);
        });
    return button;
  }

  private void choose(int number) {
    chosen = number;
    TableView<Table.Line> view = view(shown.get(number));
    view.setId(id + "-table");
    setCenter(view);
  }

  private TableView<Table.Line> view(Table table) {
    TableView<Table.Line> view = new TableView<>();
    view.setAccessibleText(table.name());
    view.setPlaceholder(new Label("None"));
    view.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_SUBSEQUENT_COLUMNS);
    for (int c = 0; c < table.head().size(); c++) {
      view.getColumns().add(column(table, c));
    }
    view.getItems().setAll(table.lines());
    view.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (o, before, now) ->
                Optional.ofNullable(now)
                    .flatMap(Table.Line::item)
                    .ifPresent(i -> model.select(Set.of(i))));
    return view;
  }

  private static TableColumn<Table.Line, String> column(Table table, int c) {
    TableColumn<Table.Line, String> column = new TableColumn<>(table.head().get(c));
    column.setCellValueFactory(l -> new ReadOnlyStringWrapper(l.getValue().cells().get(c)));
    column.setSortable(false);
    boolean number = table.numbers().contains(c);
    column.setCellFactory(
        t -> {
          TableCell<Table.Line, String> cell =
              new TableCell<>() {
                @Override
                protected void updateItem(String text, boolean empty) {
                  super.updateItem(text, empty);
                  setText(empty ? null : text);
                  setTooltip(
                      empty || text.length() < 18 ? null : new javafx.scene.control.Tooltip(text));
                }
              };
          if (number) {
            cell.getStyleClass().add("number");
          }
          return cell;
        });
    if (number) {
      column.getStyleClass().add("number");
    }
    int head = table.head().get(c).length();
    int longest = table.lines().stream().mapToInt(l -> l.cells().get(c).length()).max().orElse(8);
    column.setPrefWidth(30 + 7.0 * Math.min(44, Math.max(longest, head)));
    column.setMinWidth(24 + 8.0 * shortest(c, number, longest, head));
    return column;
  }

  /**
   * Characters that must be seen: all of a number, enough of what a line is called by to tell it
   * from others, and else the head. Words that are cut short have a tooltip.
   */
  private static int shortest(int column, boolean number, int longest, int head) {
    if (number) {
      return Math.max(longest, head);
    }
    return column == 0 ? Math.max(head, Math.min(longest, 10)) : head;
  }
}
