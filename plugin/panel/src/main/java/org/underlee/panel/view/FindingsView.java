package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.javafx.FontIcon;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Lists;
import org.underlee.panel.model.PanelModel;

/** What the program noticed: filter it, go there, put it right, or answer for it. */
final class FindingsView extends BorderPane {
  private static final int FEW = 2;
  private static final int IN_SIGHT = 12;

  private final PanelModel model;
  private final ListView<FindingList.Row> list = new ListView<>();
  private final TextField filter = new TextField();
  private final ChoiceBox<FindingList.Grouping> grouping = new ChoiceBox<>();
  private final Set<Level> levels = EnumSet.allOf(Level.class);
  private final Label count = new Label();
  private final Portions portions = new Portions();
  private List<FindingList.Row> shown = List.of();

  FindingsView(PanelModel model) {
    this.model = model;
    list.setId("findings");
    list.setAccessibleText("Findings");
    list.setCellFactory(v -> new Cell());
    list.setPlaceholder(new Label("Nothing was found to be wrong."));
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (o, before, now) ->
                Optional.ofNullable(now).ifPresent(r -> model.selecting().goTo(r.finding())));
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
  }

  @Override
  public void requestFocus() {
    list.requestFocus();
  }

  private HBox bar() {
    filter.setId("findings-filter");
    filter.setPromptText("Filter findings");
    filter.setAccessibleText("Filter findings");
    filter.textProperty().addListener((o, before, now) -> fill());
    HBox bar = new HBox(filter);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    for (Level level : List.of(Level.ERROR, Level.WARNING, Level.NOTE)) {
      ToggleButton button = new ToggleButton(plural(level), sign(level));
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
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    count.getStyleClass().add("quiet");
    bar.getChildren().addAll(grouping, gap, count);
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
    List<FindingList.Row> rows =
        FindingList.of(
            lists.findings(),
            model.session().decisions().get(),
            model.units().get(),
            filter.getText(),
            levels,
            grouping.getValue());
    if (!rows.equals(shown)) {
      shown = rows;
      show(rows);
    }
    count.setText(rows.size() == 1 ? "1 finding" : rows.size() + " findings");
  }

  /** Rows in sight are costly to make: a few at a time where there were none. */
  private void show(List<FindingList.Row> rows) {
    if (!list.getItems().isEmpty() || rows.size() <= FEW) {
      portions.begin(List.of(() -> list.getItems().setAll(rows)));
      return;
    }
    List<Runnable> steps = new ArrayList<>();
    for (int i = 0; i < rows.size() && i < IN_SIGHT; i += FEW) {
      List<FindingList.Row> some = rows.subList(i, Math.min(rows.size(), i + FEW));
      steps.add(() -> list.getItems().addAll(some));
    }
    if (rows.size() > IN_SIGHT) {
      steps.add(() -> list.getItems().addAll(rows.subList(IN_SIGHT, rows.size())));
    }
    portions.begin(steps);
  }

  /** The sign of a level differs in shape as well as in colour. */
  private static FontIcon sign(Level level) {
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

  Optional<FindingList.Row> selected() {
    return Optional.ofNullable(list.getSelectionModel().getSelectedItem());
  }

  /** The selected one, where it can be put right by a decision. */
  Optional<FindingList.Row> selectedFix() {
    return selected().filter(r -> model.canFix(r.finding()));
  }

  void group(FindingList.Grouping by) {
    grouping.setValue(by);
  }

  void accept(FindingList.Row row) {
    TextAsk.reason(this, "Accept a finding", row.message(), row.accepted())
        .ifPresent(
            reason ->
                model
                    .session()
                    .decide(
                        reason.isBlank() ? "Reopen a finding" : "Accept a finding",
                        d -> d.accepting(row.key(), reason)));
  }

  /** Its row is made once: each node that is new has its styles worked out. */
  private final class Cell extends ListCell<FindingList.Row> {
    private final Label message = new Label();
    private final Label below = new Label();
    private final Button fix = new Button("", Icons.icon("mdi2w-wrench-outline"));
    private final Button accept = new Button("Accept …");
    private final HBox content = new HBox();
    private Level level = Level.NOTE;

    Cell() {
      setPrefWidth(0);
      message.setWrapText(true);
      below.getStyleClass().add("quiet");
      below.setWrapText(true);
      VBox words = new VBox(message, below);
      HBox.setHgrow(words, Priority.ALWAYS);
      words.setMinWidth(0);
      fix.getStyleClass().add("fix");
      fix.setMinWidth(Region.USE_PREF_SIZE);
      fix.setTooltip(new Tooltip());
      accept.getStyleClass().add("accept");
      accept.setMinWidth(Region.USE_PREF_SIZE);
      content.getChildren().addAll(sign(level), words, accept);
      content.getStyleClass().add("finding");
      setText(null);
      setGraphic(content);
    }

    @Override
    protected void updateItem(FindingList.Row row, boolean empty) {
      super.updateItem(row, empty);
      content.setVisible(!empty && row != null);
      if (empty || row == null) {
        setAccessibleText(null);
        return;
      }
      setAccessibleText(
          row.finding().level().word()
              + ": "
              + row.message()
              + " "
              + row.where()
              + ". "
              + row.advice());
      show(row);
    }

    private void show(FindingList.Row row) {
      if (row.finding().level() != level) {
        level = row.finding().level();
        content.getChildren().set(0, sign(level));
      }
      message.setText(row.message());
      below.setText(below(row));
      boolean accepted = row.accepted().isPresent();
      if (content.getStyleClass().contains("accepted") != accepted) {
        content
            .getStyleClass()
            .setAll(accepted ? List.of("finding", "accepted") : List.of("finding"));
      }
      content.getChildren().remove(fix);
      row.action().filter(a -> model.canFix(row.finding())).ifPresent(a -> offer(a, row));
      accept.setText(accepted ? "Accepted" : "Accept …");
      accept.setAccessibleText((accepted ? "Accepted: " : "Accept: ") + row.message());
      accept.setOnAction(e -> accept(row));
    }

    private void offer(Fix.Action action, FindingList.Row row) {
      fix.setText(FindingList.words(action));
      fix.setAccessibleText(fix.getText() + ", for: " + row.message());
      fix.getTooltip().setText(action.preview().in(model.units().get()));
      fix.setOnAction(e -> model.fix(row.finding()));
      content.getChildren().add(content.getChildren().indexOf(accept), fix);
    }

    private String below(FindingList.Row row) {
      String rule = row.finding().rule().id();
      String where = row.where().isEmpty() ? rule : rule + "  ·  " + row.where();
      return row.accepted()
          .map(r -> where + "  ·  accepted: " + r)
          .orElse(where + "  ·  " + row.advice());
    }
  }
}
