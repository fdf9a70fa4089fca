package org.underlee.panel.view;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Resyncing;

/** What a new export has changed, before the assembly of the old one is written into it. */
final class ResyncView extends BorderPane {
  private final Resyncing resyncing;
  private final TableViews tables;
  private final Label words = new Label();

  ResyncView(PanelModel model, Actions actions) {
    resyncing = model.resyncing();
    tables = new TableViews(model, "changes");
    words.setId("resync-words");
    words.getStyleClass().add("quiet");
    words.setWrapText(true);
    HBox bar =
        new HBox(button(actions.named("resync")), button(actions.named("resync-write")), words);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    setCenter(tables);
    setBottom(bar);
    resyncing.resynced().addListener((o, before, now) -> fill());
    resyncing.busy().addListener((o, before, now) -> fill());
    resyncing.problem().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private static Button button(Command command) {
    Button button = new Button(command.words(), Icons.icon(command.icon()));
    button.setId(command.id());
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(
        e -> {
          if (command.can().getAsBoolean()) {
            command.run().run();
          }
        });
    return button;
  }

  private void fill() {
    tables.show(resyncing.tables());
    words.setText(
        resyncing.problem().get().map(p -> p.message() + " " + p.advice()).orElseGet(this::state));
  }

  private String state() {
    if (resyncing.busy().get()) {
      return "Knowing the framing again …";
    }
    return resyncing.resynced().get().isPresent()
        ? "Bays: " + resyncing.summary() + "."
        : "The open model is the new export; name the old one, with the assembly in it.";
  }
}
