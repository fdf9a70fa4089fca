package org.underlee.panel.view;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
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
        new HBox(
            actions.button("resync", "resync"),
            actions.button("resync-write", "resync-write"),
            words);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    setCenter(tables);
    setBottom(bar);
    resyncing.resynced().addListener((o, before, now) -> fill());
    resyncing.busy().addListener((o, before, now) -> fill());
    resyncing.problem().addListener((o, before, now) -> fill());
    model.session().decisions().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  @Override
  public void requestFocus() {
    tables.requestFocus();
  }

  private void fill() {
    tables.show(resyncing.tables());
    words.setText(resyncing.problem().get().map(Problem::words).orElseGet(this::state));
  }

  private String state() {
    if (resyncing.busy().get()) {
      return "Knowing the framing again …";
    }
    if (resyncing.resynced().get().isEmpty()) {
      return "The open model is the new export; name the old one, with the assembly in it.";
    }
    return "Bays: "
        + resyncing.summary()
        + "."
        + (resyncing.mayWrite()
            ? ""
            : " You have decided otherwise since: undo that to write what was taken over, or write"
                + " the assembly as it is now, with bays counted anew.");
  }
}
