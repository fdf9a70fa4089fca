package org.underlee.panel.view;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import org.underlee.panel.model.About;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Table;

/** Several tables, one of them in sight; a row leads to what it is about. */
final class TableViews extends BorderPane {
  /** Characters by which words are told apart. */
  private static final int TELLS_APART = 12;

  private final PanelModel model;
  private final String id;
  private final HBox names = new HBox();
  private List<Table> shown = List.of();
  private int chosen;
  private final IntConsumer selected;
  private final Runnable chose;
  private boolean wanted = true;
  private boolean due;
  private boolean following;
  private Optional<TableView<Table.Line>> inSight = Optional.empty();

  TableViews(PanelModel model, String id) {
    this(model, id, row -> {}, () -> {});
  }

  /**
   * @param selected told the number of a row that is selected
   * @param chose done where a row is taken, with two clicks or Enter
   */
  TableViews(PanelModel model, String id, IntConsumer selected, Runnable chose) {
    this.model = model;
    this.id = id;
    this.selected = selected;
    this.chose = chose;
    names.getStyleClass().add("bar");
    setTop(names);
    model.selection().addListener((o, before, now) -> inSight.ifPresent(this::follow));
    model
        .settings()
        .addListener((o, before, now) -> fillAgain(before.fontPercent() != now.fontPercent()));
  }

  /** Columns are as wide as their letters. */
  private void fillAgain(boolean otherLetters) {
    due |= otherLetters;
    fill();
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
    boolean focused = getCenter() != null && getCenter().isFocused();
    chosen = number;
    TableView<Table.Line> view = view(shown.get(number));
    view.setId(id + "-table");
    inSight = Optional.of(view);
    setCenter(view);
    if (focused) {
      view.requestFocus();
    }
  }

  /** Shows the table of a name, where there is one. */
  void choose(String name) {
    for (int i = 0; i < shown.size(); i++) {
      if (shown.get(i).name().equals(name)
          && names.getChildren().get(i) instanceof ToggleButton button) {
        button.fire();
      }
    }
  }

  /** Selects a row of the table in sight; none below 0. */
  void select(int row) {
    if (getCenter() instanceof TableView<?> view && row >= 0) {
      view.getSelectionModel().clearAndSelect(row);
    }
  }

  @Override
  public void requestFocus() {
    if (getCenter() == null) {
      super.requestFocus();
    } else {
      getCenter().requestFocus();
    }
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
    view.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
    view.getSelectionModel()
        .getSelectedItems()
        .addListener((ListChangeListener<Table.Line>) c -> tell(view));
    view.getSelectionModel()
        .selectedIndexProperty()
        .addListener((o, before, now) -> selected.accept(now.intValue()));
    view.setRowFactory(
        v -> {
          TableRow<Table.Line> row = new TableRow<>();
          row.setOnMouseClicked(e -> tell(view));
          return row;
        });
    view.setOnMouseClicked(e -> choseIf(e.getClickCount() == 2));
    view.setOnKeyPressed(e -> choseIf(e.getCode() == KeyCode.ENTER));
    follow(view);
    return view;
  }

  private void choseIf(boolean taken) {
    if (taken) {
      chose.run();
    }
  }

  /** Goes to all that the chosen lines are about, again where they were chosen already. */
  private void tell(TableView<Table.Line> view) {
    Set<Item> items = new LinkedHashSet<>();
    for (Table.Line line : List.copyOf(view.getSelectionModel().getSelectedItems())) {
      items.addAll(line.items());
    }
    if (!following && !items.isEmpty()) {
      following = true;
      model.selecting().goTo(items);
      following = false;
    }
  }

  /** The lines about the selection are chosen. */
  private void follow(TableView<Table.Line> view) {
    // what leads nowhere is chosen for itself
    if (following || view.getItems().stream().allMatch(l -> l.items().isEmpty())) {
      return;
    }
    following = true;
    About about = model.about();
    view.getSelectionModel().clearSelection();
    int first = -1;
    for (int i = view.getItems().size() - 1; i >= 0; i--) {
      if (about.touches(view.getItems().get(i).items())) {
        view.getSelectionModel().select(i);
        first = i;
      }
    }
    if (first >= 0 && !Sight.has(view, first)) {
      view.scrollTo(first);
    }
    following = false;
  }

  private TableColumn<Table.Line, String> column(Table table, int c) {
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
                      empty || text.length() < TELLS_APART
                          ? null
                          : new javafx.scene.control.Tooltip(text));
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
    int head = table.head().get(c).lines().mapToInt(String::length).max().orElse(0);
    int longest = table.lines().stream().mapToInt(l -> l.cells().get(c).length()).max().orElse(8);
    double em = model.settings().get().letters();
    column.setPrefWidth(em * (30 + 7.0 * Math.min(44, Math.max(longest, head))));
    int least = shortest(number, longest, head);
    column.setMinWidth(em * (number ? 24 + 8.0 * least : 20 + 7.0 * least));
    return column;
  }

  /**
   * Characters that must be seen: the head, all of a number, enough of words to tell a line from
   * others. Words that are cut short have a tooltip.
   */
  private static int shortest(boolean number, int longest, int head) {
    return Math.max(head, number ? longest : Math.min(longest, TELLS_APART));
  }
}
