package org.underlee.panel.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TableView;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Choices;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
import org.underlee.panel.model.Table;

/** The arrangements side by side, one of which can be chosen. */
final class ChoicesView extends BorderPane {
  private final Choices choices;
  private final TableViews table;
  private final Label words = new Label();

  ChoicesView(PanelModel model) {
    choices = model.choices();
    table = new TableViews(model, "options");
    setCenter(table);
    setBottom(bar());
    choices.comparison().addListener((o, before, now) -> fill());
    choices.busy().addListener((o, before, now) -> fill());
    choices.problem().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private HBox bar() {
    Button compare = new Button("Compare", Icons.icon("mdi2s-scale-balance"));
    compare.setId("compare");
    compare.setMinWidth(Region.USE_PREF_SIZE);
    compare.setOnAction(e -> choices.compare());
    Button choose = new Button("Use the selected one", Icons.icon("mdi2c-check"));
    choose.setId("choose");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setOnAction(e -> choose());
    words.getStyleClass().add("quiet");
    words.setWrapText(true);
    HBox bar = new HBox(compare, choose, words);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    return bar;
  }

  private void choose() {
    if (lookup("#options-table") instanceof TableView<?> rows) {
      choices.choose(rows.getSelectionModel().getSelectedIndex());
    }
  }

  private void fill() {
    Table made = choices.table();
    table.show(choices.comparison().get().isEmpty() ? List.of() : List.of(made));
    words.setText(
        choices
            .problem()
            .get()
            .map(Problem::words)
            .orElse(
                choices.busy().get()
                    ? "Laying out and proving every kit and low end …"
                    : "Every kit and low end is laid out and proved; the best is in the first row."));
  }
}
