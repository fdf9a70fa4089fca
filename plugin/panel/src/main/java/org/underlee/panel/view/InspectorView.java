package org.underlee.panel.view;

import java.util.Optional;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.Inspection;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.PanelModel;

/** What there is to know of the selected thing, and why it is so. */
final class InspectorView extends ScrollPane {
  private static final String AS_RECOGNISED = "as recognised";

  private final PanelModel model;
  private final VBox content = new VBox();
  private Optional<Inspection> shown = Optional.empty();

  InspectorView(PanelModel model) {
    this.model = model;
    setId("inspector");
    setAccessibleText("Inspector: what is selected, its numbers and why they are so");
    setFitToWidth(true);
    content.getStyleClass().add("inspector");
    setContent(content);
    model.selection().addListener((o, before, now) -> fill());
    model.session().result().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private void fill() {
    Optional<Inspection> first =
        model.selection().get().stream().findFirst().flatMap(this::inspection);
    if (first.isEmpty() && shown.isEmpty() && !content.getChildren().isEmpty()) {
      return; // while a hand drags, the same hint again and again
    }
    shown = first;
    content.getChildren().clear();
    if (first.isEmpty()) {
      Label hint = text("Select a part, a bay or a member to see its numbers and why they are so.");
      hint.getStyleClass().add("quiet");
      content.getChildren().add(hint);
      return;
    }
    show(first.get());
    model.selecting().element().ifPresent(e -> content.getChildren().add(said(e.globalId())));
    int more = model.selection().get().size() - 1;
    if (more > 0) {
      content.getChildren().add(text("and " + more + " more selected"));
    }
  }

  private Optional<Inspection> inspection(Item item) {
    return model.session().result().get().flatMap(r -> Inspection.of(item, r, model.units().get()));
  }

  private void show(Inspection inspection) {
    Label name = text(inspection.name());
    name.getStyleClass().add("inspector-name");
    Label kind = text(inspection.kind());
    kind.getStyleClass().add("quiet");
    content.getChildren().addAll(name, kind, rows(inspection));
    if (!inspection.why().isEmpty()) {
      Label head = new Label("Why");
      head.getStyleClass().add("section-head");
      content.getChildren().add(head);
      inspection.why().forEach(w -> content.getChildren().add(because(w)));
    }
  }

  /** What the element is said to be, where it was misread. */
  private Node said(String globalId) {
    ComboBox<String> role = new ComboBox<>();
    role.setId("role");
    role.setAccessibleText("What the element is");
    role.setMaxWidth(Double.MAX_VALUE);
    role.getItems().add(AS_RECOGNISED);
    role.getItems().addAll(model.roles().words());
    role.setValue(model.roles().of(globalId).orElse(AS_RECOGNISED));
    role.valueProperty()
        .addListener(
            (o, before, now) ->
                model
                    .roles()
                    .say(globalId, Optional.of(now).filter(w -> !w.equals(AS_RECOGNISED))));
    Label head = new Label("What it is");
    head.getStyleClass().add("section-head");
    head.setLabelFor(role);
    return new VBox(head, role);
  }

  private static GridPane rows(Inspection inspection) {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("rows");
    ColumnConstraints names = new ColumnConstraints();
    names.setPercentWidth(42);
    ColumnConstraints values = new ColumnConstraints();
    values.setHgrow(Priority.ALWAYS);
    grid.getColumnConstraints().addAll(names, values);
    int at = 0;
    for (Inspection.Row row : inspection.rows()) {
      Label name = text(row.name());
      name.getStyleClass().add("quiet");
      Label value = text(row.value());
      value.getStyleClass().add("value");
      grid.addRow(at++, name, value);
    }
    return grid;
  }

  private static Node because(Inspection.Because because) {
    VBox box = new VBox();
    box.getStyleClass().add("because");
    Label what = text(because.what());
    box.getChildren().add(what);
    if (!because.steps().isEmpty()) {
      what.getStyleClass().add("because-what");
    }
    for (String step : because.steps()) {
      Label line = text(step);
      line.getStyleClass().add("because-step");
      line.setPadding(new Insets(0, 0, 0, 10));
      box.getChildren().add(line);
    }
    return box;
  }

  private static Label text(String words) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(Label.USE_PREF_SIZE);
    return label;
  }
}
