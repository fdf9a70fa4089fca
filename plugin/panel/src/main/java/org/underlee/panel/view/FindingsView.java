package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import javafx.geometry.Pos;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import org.underlee.finding.Level;
import org.underlee.panel.model.About;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Lists;
import org.underlee.panel.model.PanelModel;

/** What the program noticed: filter it, go there, put it right, or answer for it. */
final class FindingsView extends BorderPane {
  private static final int FEW = 2;
  private static final int IN_SIGHT = 12;

  private final PanelModel model;
  private final ListView<FindingList.Entry> list = new ListView<>();
  private final TextField filter = new TextField();
  private final ChoiceBox<FindingList.Grouping> grouping = new ChoiceBox<>();
  private final Set<Level> levels = EnumSet.allOf(Level.class);
  private final Label count = new Label();
  private final Label nothing = new Label();
  private final Portions portions = new Portions();
  private List<FindingList.Entry> shown = List.of();
  private boolean following;

  FindingsView(PanelModel model) {
    this.model = model;
    list.setId("findings");
    list.setAccessibleText("Findings");
    list.setCellFactory(v -> new FindingCell(v, model, this::tell));
    list.setPlaceholder(nothing);
    list.getSelectionModel().selectedItemProperty().addListener((o, before, now) -> tell());
    list.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    setTop(bar());
    setCenter(list);
    model.lists().addListener((o, before, now) -> fill());
    model
        .session()
        .decisions()
        .addListener(
            (o, before, now) -> {
              if (!before.accepted().equals(now.accepted())) {
                fill();
              }
            });
    model.units().addListener((o, before, now) -> fill());
    model.selecting().finding().addListener((o, before, now) -> follow(true));
    model.selection().addListener((o, before, now) -> follow(true));
  }

  /** Goes to the chosen one, again where it was chosen already. */
  private void tell() {
    if (!following && list.getSelectionModel().getSelectedItem() instanceof FindingList.Row row) {
      following = true;
      model.findings().goTo(row);
      following = false;
    }
  }

  private void key(KeyEvent e) {
    switch (e.getCode()) {
      case ENTER -> tell();
      case DOWN -> step(1);
      case UP -> step(-1);
      default -> {
        return;
      }
    }
    e.consume();
  }

  /** To the next finding, over heads. */
  private void step(int by) {
    int row = list.getSelectionModel().getSelectedIndex() + by;
    while (row >= 0
        && row < list.getItems().size()
        && list.getItems().get(row) instanceof FindingList.Head) {
      row += by;
    }
    if (row >= 0 && row < list.getItems().size()) {
      list.getSelectionModel().select(row);
      if (!Sight.has(list, row)) {
        list.scrollTo(row);
      }
    }
  }

  /**
   * The finding in hand is chosen; without one, those about the selection are what is looked for.
   *
   * @param look whether it comes into sight
   */
  private void follow(boolean look) {
    if (following) {
      return;
    }
    following = true;
    Optional<FindingList.Row> inHand = model.findings().inHand();
    int row = row(e -> inHand.filter(e::equals).isPresent());
    if (row >= 0) {
      list.getSelectionModel().select(row);
    } else {
      list.getSelectionModel().clearSelection();
    }
    About about = model.about();
    int first = row >= 0 ? row : row(e -> about.touches(e.places()));
    if (look && first >= 0 && !Sight.has(list, first)) {
      list.scrollTo(first);
    }
    following = false;
  }

  private int row(Predicate<FindingList.Row> which) {
    for (int i = 0; i < list.getItems().size(); i++) {
      if (list.getItems().get(i) instanceof FindingList.Row row && which.test(row)) {
        return i;
      }
    }
    return -1;
  }

  @Override
  public void requestFocus() {
    list.requestFocus();
  }

  /** In lines, as many as large letters need. */
  private FlowPane bar() {
    filter.setId("findings-filter");
    filter.setPromptText("Filter findings");
    filter.setAccessibleText("Filter findings");
    filter.textProperty().addListener((o, before, now) -> fill());
    FlowPane bar = new FlowPane(filter);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    for (Level level : List.of(Level.ERROR, Level.WARNING, Level.NOTE)) {
      ToggleButton button = new ToggleButton(plural(level), FindingCell.sign(level));
      button.setId("show-" + level.word());
      button.setSelected(true);
      button
          .selectedProperty()
          .addListener(
              (o, before, now) -> {
                if (now ? levels.add(level) : levels.remove(level)) {
                  fill();
                }
              });
      bar.getChildren().add(button);
    }
    grouping.setId("findings-grouping");
    grouping.setAccessibleText("Order of the findings");
    grouping.getItems().setAll(FindingList.Grouping.values());
    grouping.setValue(FindingList.Grouping.BY_LEVEL);
    grouping.valueProperty().addListener((o, before, now) -> fill());
    count.getStyleClass().add("quiet");
    bar.getChildren().addAll(grouping, count);
    return bar;
  }

  private static String plural(Level level) {
    return switch (level) {
      case ERROR -> "Errors";
      case WARNING -> "Warnings";
      case NOTE -> "Notes";
    };
  }

  /** Makes rows and takes them away again. */
  void rehearse(Lists lists) {
    fill(lists);
    portions.finish();
    applyCss();
    layout();
    fill();
  }

  private void fill() {
    fill(model.lists().get());
  }

  private void fill(Lists lists) {
    FindingList.Filter filtered =
        new FindingList.Filter(filter.getText(), levels, grouping.getValue());
    List<FindingList.Entry> entries = FindingList.entries(model.findings().rows(lists), filtered);
    if (!entries.equals(shown)) {
      shown = entries;
      show(entries);
    }
    long rows = entries.stream().filter(FindingList.Row.class::isInstance).count();
    nothing.setText(model.findings().instead(lists));
    count.setText(rows == 1 ? "1 finding" : rows + " findings");
  }

  /** Rows in sight are costly to make: a few at a time where there were none. */
  private void show(List<FindingList.Entry> rows) {
    if (!list.getItems().isEmpty() || rows.size() <= FEW) {
      portions.begin(List.of(() -> put(() -> list.getItems().setAll(rows))));
      return;
    }
    List<Runnable> steps = new ArrayList<>();
    for (int i = 0; i < rows.size() && i < IN_SIGHT; i += FEW) {
      List<FindingList.Entry> some = rows.subList(i, Math.min(rows.size(), i + FEW));
      steps.add(() -> put(() -> list.getItems().addAll(some)));
    }
    if (rows.size() > IN_SIGHT) {
      steps.add(() -> put(() -> list.getItems().addAll(rows.subList(IN_SIGHT, rows.size()))));
    }
    portions.begin(steps);
  }

  void group(FindingList.Grouping by) {
    grouping.setValue(by);
  }

  /** What is chosen stays chosen, and nobody goes anywhere. */
  private void put(Runnable change) {
    boolean before = following;
    following = true;
    change.run();
    following = before;
    follow(false);
  }
}
