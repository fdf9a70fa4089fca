package org.underlee.panel.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Choices;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;

/** The arrangements side by side, one of which can be chosen. */
final class ChoicesView extends BorderPane {
  private final Choices choices;
  private final TableViews table;
  private final Button choose = new Button("Use the selected one", Icons.icon("mdi2c-check"));
  private final Label words = new Label();

  ChoicesView(PanelModel model) {
    choices = model.choices();
    table = new TableViews(model, "options", choices.selected()::set, choices::chooseSelected);
    setCenter(table);
    setBottom(bar());
    choices.comparison().addListener((o, before, now) -> fill());
    choices.busy().addListener((o, before, now) -> fill());
    choices.stale().addListener((o, before, now) -> fill());
    choices.selected().addListener((o, before, now) -> fill());
    model.session().result().addListener((o, before, now) -> fill());
    choices.problem().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private HBox bar() {
    Button compare = new Button("Compare", Icons.icon("mdi2s-scale-balance"));
    compare.setId("compare");
    compare.setMinWidth(Region.USE_PREF_SIZE);
    compare.setOnAction(e -> choices.compare());
    choose.setId("choose");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setTooltip(new Tooltip("Or press Enter in the row, or click it twice"));
    choose.setOnAction(e -> choices.chooseSelected());
    words.setId("options-words");
    words.setWrapText(true);
    HBox bar = new HBox(compare, choose, words);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    return bar;
  }

  @Override
  public void requestFocus() {
    table.requestFocus();
  }

  private void fill() {
    int row = choices.selected().get();
    table.show(choices.comparison().get().isEmpty() ? List.of() : List.of(choices.table()));
    table.select(row);
    choose.setDisable(!choices.canChoose());
    boolean slip = choices.problem().get().isPresent();
    String look = slip ? "slip" : choices.stale().get() ? "stale" : "quiet";
    words.getStyleClass().setAll("label", look);
    words.setText(choices.problem().get().map(Problem::words).orElseGet(choices::words));
  }
}
