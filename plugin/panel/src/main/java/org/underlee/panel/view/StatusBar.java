package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
import org.underlee.units.Lengths.UnitSystem;

/** What is going on, how the design stands, and the units. */
final class StatusBar extends HBox {
  private final PanelModel model;
  private final Label words = new Label();
  private final Label stale = new Label();
  private final ProgressBar progress = new ProgressBar(ProgressBar.INDETERMINATE_PROGRESS);
  private final Button cancel;
  private final Label summary = new Label();
  private final Button units = new Button();

  StatusBar(PanelModel model) {
    this.model = model;
    setId("status");
    getStyleClass().add("status");
    setAlignment(Pos.CENTER_LEFT);
    words.setId("status-words");
    words.setTooltip(new Tooltip()); // a long one is cut off
    summary.setId("summary");
    progress.setId("progress");
    progress.setAccessibleText("Progress");
    cancel = new Button("Cancel  Esc");
    cancel.setId("cancel");
    cancel.setAccessibleText("Cancel what is running");
    cancel.setMinWidth(Region.USE_PREF_SIZE);
    cancel.setOnAction(e -> model.running().cancel());
    stale.getStyleClass().add("stale");
    stale.setId("stale");
    units.setId("units");
    units.setOnAction(e -> toggleUnits());
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    getChildren().addAll(progress, words, cancel, stale, gap, summary, units);
    model.running().words().addListener((o, before, now) -> fill());
    model.running().stopped().addListener((o, before, now) -> fill());
    model.session().stale().addListener((o, before, now) -> fill());
    model.session().problem().addListener((o, before, now) -> fill());
    model.session().result().addListener((o, before, now) -> fill());
    model.session().leftOut().addListener((o, before, now) -> fill());
    model.dropped().problem().addListener((o, before, now) -> fill());
    model.saving().message().addListener((o, before, now) -> fill());
    model.saving().problem().addListener((o, before, now) -> fill());
    model.notKept().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private void toggleUnits() {
    UnitSystem next =
        model.units().get() == UnitSystem.METRIC ? UnitSystem.IMPERIAL : UnitSystem.METRIC;
    model.setUnits(next);
  }

  private void fill() {
    String busy = model.running().words().get();
    // what moves under a hand is sign enough; a bar that runs beside it would be drawn 60 times a
    // second
    boolean waited = !busy.isEmpty() && !model.session().isDragging();
    Seen.set(progress, waited);
    Seen.set(cancel, waited);
    Seen.set(stale, model.session().stale().get());
    stale.setText(busy.isEmpty() ? "Out of date" : "Out of date while this runs");
    Optional<String> problem =
        model
            .saving()
            .problem()
            .get()
            .or(() -> model.session().problem().get())
            .or(() -> model.dropped().problem().get())
            .map(Problem::words)
            .or(() -> Optional.of(model.notKept().get()).filter(w -> !w.isEmpty()));
    words.setText(problem.orElseGet(() -> busy.isEmpty() ? atRest() : busy));
    boolean slip =
        problem.isPresent() || (busy.isEmpty() && !model.serviceFiles().notRead().isEmpty());
    List<String> look = List.of("label", slip ? "slip" : "plain");
    if (!words.getStyleClass().equals(look)) {
      words.getStyleClass().setAll(look);
    }
    words.getTooltip().setText(words.getText());
    progress.setAccessibleHelp(busy);
    summary.setText(model.summary());
    boolean metric = model.units().get() == UnitSystem.METRIC;
    units.setText(metric ? "mm" : "ft-in");
    units.setAccessibleText(metric ? "Units: metric" : "Units: feet and inches");
  }

  private String atRest() {
    String stopped = model.running().stopped().get();
    String said = stopped.isEmpty() ? model.saving().message().get() : stopped;
    return (said + " " + model.serviceFiles().notRead()).strip();
  }
}
