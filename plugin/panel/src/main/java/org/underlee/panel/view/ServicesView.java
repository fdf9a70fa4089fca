package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
import org.underlee.panel.model.ServiceIssue;
import org.underlee.panel.model.Services;

/** What the assembly meets: go there, take a way out, or accept it for a reason. */
final class ServicesView extends BorderPane {
  private final PanelModel model;
  private final ListView<ServiceIssue> list = new ListView<>();
  private final Label count = new Label();
  private final Label empty = new Label();

  ServicesView(PanelModel model, Actions actions) {
    this.model = model;
    list.setId("services");
    list.setAccessibleText("Issues with services");
    list.setCellFactory(v -> new Cell());
    empty.setWrapText(true);
    list.setPlaceholder(empty);
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (o, before, now) -> Optional.ofNullable(now).ifPresent(i -> model.select(i.places())));
    setTop(bar(actions));
    setCenter(list);
    model.services().coordination().addListener((o, before, now) -> fill());
    model.services().busy().addListener((o, before, now) -> fill());
    model.services().problem().addListener((o, before, now) -> fill());
    model.session().decisions().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private HBox bar(Actions actions) {
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    count.setId("services-count");
    count.getStyleClass().add("quiet");
    HBox bar =
        new HBox(
            actions.button("services", "add-services"),
            actions.button("bcf", "export-bcf"),
            gap,
            count);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    return bar;
  }

  private void fill() {
    List<ServiceIssue> issues = model.services().issues();
    if (!issues.equals(list.getItems())) {
      list.getItems().setAll(issues);
    }
    long open = issues.stream().filter(i -> i.accepted().isEmpty()).count();
    boolean busy = model.services().busy().get();
    count.setText(
        busy
            ? "Looking for issues …"
            : open + " to be dealt with, " + (issues.size() - open) + " accepted");
    empty.setText(
        model
            .services()
            .problem()
            .get()
            .map(Problem::words)
            .orElse(busy ? "Looking for issues …" : "The assembly meets nothing."));
  }

  private void accept(ServiceIssue issue) {
    TextAsk.reason(this, "Accept an issue", issue.title(), issue.accepted())
        .ifPresent(reason -> model.services().accept(issue, reason));
  }

  private final class Cell extends ListCell<ServiceIssue> {
    Cell() {
      setPrefWidth(0);
    }

    @Override
    protected void updateItem(ServiceIssue issue, boolean none) {
      super.updateItem(issue, none);
      setText(null);
      if (none || issue == null) {
        setGraphic(null);
        setAccessibleText(null);
        return;
      }
      setAccessibleText(issue.state() + ": " + issue.title());
      setGraphic(content(issue));
    }

    private HBox content(ServiceIssue issue) {
      VBox words = new VBox(wrapped(issue.title()));
      words.setMinWidth(0);
      HBox.setHgrow(words, Priority.ALWAYS);
      Label state =
          quiet(
              Services.words(issue.cause())
                  + "  ·  "
                  + issue.accepted().map(r -> "accepted: " + r).orElse(issue.state()));
      words.getChildren().add(state);
      if (issue.accepted().isEmpty()) {
        issue.ways().forEach(w -> words.getChildren().add(way(w)));
      }
      Button accept = new Button(issue.accepted().isPresent() ? "Accepted" : "Accept …");
      accept.getStyleClass().add("accept");
      accept.setMinWidth(Region.USE_PREF_SIZE);
      accept.setOnAction(e -> accept(issue));
      HBox content = new HBox(words, accept);
      content.getStyleClass().add("finding");
      if (issue.accepted().isPresent()) {
        content.getStyleClass().add("accepted");
      }
      return content;
    }

    private HBox way(ServiceIssue.Way way) {
      Label words = wrapped("→ " + way.words());
      HBox.setHgrow(words, Priority.ALWAYS);
      HBox row = new HBox(words);
      row.setAlignment(Pos.CENTER_LEFT);
      if (way.decisions().isPresent()) {
        Button take = new Button("Do it", Icons.icon("mdi2w-wrench-outline"));
        take.getStyleClass().add("fix");
        take.setMinWidth(Region.USE_PREF_SIZE);
        take.setAccessibleText("Do it: " + way.words());
        take.setOnAction(e -> model.services().take(way));
        row.getChildren().add(take);
      }
      return row;
    }

    private static Label quiet(String text) {
      Label label = wrapped(text);
      label.getStyleClass().add("quiet");
      return label;
    }

    private static Label wrapped(String text) {
      Label label = new Label(text);
      label.setWrapText(true);
      label.setMinWidth(0);
      return label;
    }
  }
}
