package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Separator;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Inspection;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.PanelModel;

/** What there is to know of the selected thing, and why it is so. */
final class InspectorView extends ScrollPane {
  private static final String AS_RECOGNISED = "as recognised";

  private final PanelModel model;
  private final VBox content = new VBox();
  private boolean isHint;

  InspectorView(PanelModel model) {
    this.model = model;
    setId("inspector");
    setAccessibleText("Inspector: what is selected, its numbers and why they are so");
    setFitToWidth(true);
    content.getStyleClass().add("inspector");
    setContent(content);
    model.selection().addListener((o, before, now) -> fill());
    model.selecting().finding().addListener((o, before, now) -> fill());
    model.lists().addListener((o, before, now) -> fill());
    model.session().result().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private void fill() {
    Optional<FindingList.Row> inHand = model.findings().inHand();
    Optional<Item> item = model.selection().get().stream().findFirst();
    Optional<Inspection> first = item.flatMap(this::inspection);
    boolean isNothing = first.isEmpty() && inHand.isEmpty();
    if (isNothing && isHint && !content.getChildren().isEmpty()) {
      return; // while a hand drags, the same hint again and again
    }
    isHint = isNothing;
    content.getChildren().clear();
    if (isNothing) {
      Label hint = text("Select a part, a bay or a member to see its numbers and why they are so.");
      hint.getStyleClass().add("quiet");
      content.getChildren().add(hint);
      return;
    }
    inHand.ifPresent(this::show);
    first.ifPresent(this::show);
    model.selecting().element().ifPresent(e -> content.getChildren().add(said(e.globalId())));
    int more = model.selection().get().size() - 1;
    if (more > 0) {
      content.getChildren().add(text("and " + more + " more selected"));
    }
    if (inHand.isEmpty() && !model.session().isDragging()) {
      item.map(model.findings()::about).filter(f -> !f.isEmpty()).ifPresent(this::list);
    }
  }

  /** A finding in full, with what can be done about it, before the place that it is about. */
  private void show(FindingList.Row row) {
    Inspection inspection = Inspection.of(row, model.units().get());
    Label name = text(inspection.name());
    name.setId("inspector-finding");
    name.getStyleClass().add("inspector-finding");
    name.setGraphic(FindingCell.sign(row.finding().level()));
    Label kind = text(inspection.kind());
    kind.getStyleClass().add("quiet");
    content.getChildren().addAll(name, kind);
    inspection.why().forEach(w -> content.getChildren().add(because(w)));
    FlowPane buttons = new FlowPane();
    buttons.setId("inspector-buttons");
    buttons.getStyleClass().add("inspector-buttons");
    new FindingButtons(model.findings(), this).show(row, buttons.getChildren());
    content.getChildren().addAll(buttons, rows(inspection), new Separator());
  }

  /** What was found about the selected thing, to go to. */
  private void list(List<FindingList.Row> rows) {
    Label head = new Label("Findings");
    head.getStyleClass().add("section-head");
    content.getChildren().add(head);
    for (FindingList.Row row : rows) {
      Hyperlink link = new Hyperlink(row.message());
      link.setWrapText(true);
      link.setMinHeight(Label.USE_PREF_SIZE);
      link.setGraphic(FindingCell.sign(row.finding().level()));
      link.setAccessibleText(row.finding().level().word() + ": " + row.message());
      link.setOnAction(e -> model.findings().goTo(row));
      content.getChildren().add(link);
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
