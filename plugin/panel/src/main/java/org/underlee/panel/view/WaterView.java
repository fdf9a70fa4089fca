package org.underlee.panel.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
import org.underlee.panel.model.Table;

/** Where the water goes, and by which tables gutters and downspouts are rated for it. */
final class WaterView extends BorderPane {
  private final PanelModel model;
  private final TableViews tables;
  private final Label rain = new Label();
  private final Label rated = new Label();
  private final Button giveUp;

  WaterView(PanelModel model, Actions actions) {
    this.model = model;
    tables = new TableViews(model, "water");
    rated.setId("rated-by");
    rated.setMinWidth(0);
    HBox.setHgrow(rated, Priority.ALWAYS);
    Button own = actions.button("capacity-own", "capacity-own");
    own.setText("Your own table …");
    giveUp = actions.button("capacity-off", "capacity-off");
    giveUp.setText("Program's tables alone");
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.SOMETIMES);
    HBox bar = new HBox(rated, gap, own, giveUp);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    getStyleClass().add("water");
    rain.setId("rain-taken");
    rain.getStyleClass().add("rain-taken");
    rain.setMinWidth(0);
    setTop(rain);
    setCenter(tables);
    setBottom(bar);
    model.units().addListener((o, before, now) -> fill());
    model.session().decisions().addListener((o, before, now) -> fill());
    model.ratings().problem().addListener((o, before, now) -> fill());
    fill();
  }

  TableViews tables() {
    return tables;
  }

  void show(List<Table> made) {
    tables.show(made);
  }

  /** Whether someone looks. */
  void want(boolean now) {
    tables.want(now);
  }

  @Override
  public void requestFocus() {
    tables.requestFocus();
  }

  private void fill() {
    rain.setText(model.offer().rainTaken(model.units().get()));
    String words =
        model.ratings().problem().get().map(Problem::words).orElseGet(model.ratings()::words);
    boolean slip = model.ratings().problem().get().isPresent();
    rated.setText(words);
    rated.getStyleClass().setAll("label", slip ? "slip" : "quiet");
    rated.setWrapText(true);
    boolean own = model.ratings().isOwn();
    giveUp.setVisible(own);
    giveUp.setManaged(own);
  }
}
