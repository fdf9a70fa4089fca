package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.About;
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
  private boolean following;

  ServicesView(PanelModel model) {
    this.model = model;
    list.setId("services");
    list.setAccessibleText("Issues with services");
    list.setCellFactory(v -> new Cell());
    empty.setWrapText(true);
    list.setPlaceholder(empty);
    list.getSelectionModel().selectedItemProperty().addListener((o, before, now) -> tell());
    list.setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            tell();
          }
        });
    model.selection().addListener((o, before, now) -> follow());
    setCenter(list);
    model.services().coordination().addListener((o, before, now) -> fill());
    model.services().busy().addListener((o, before, now) -> fill());
    model.services().problem().addListener((o, before, now) -> fill());
    model.session().decisions().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  @Override
  public void requestFocus() {
    list.requestFocus();
  }

  /** Puts what can be done with all of them above the list. */
  void fillBar(Actions actions) {
    setTop(new VBox(bar(actions), new ServiceFilesView(model)));
  }

  /** Goes to the chosen one, again where it was chosen already. */
  private void tell() {
    ServiceIssue chosen = list.getSelectionModel().getSelectedItem();
    if (!following && chosen != null) {
      following = true;
      model.selecting().goTo(chosen.places());
      following = false;
    }
  }

  /** An issue about the selection is chosen and comes into sight. */
  private void follow() {
    ServiceIssue chosen = list.getSelectionModel().getSelectedItem();
    About about = model.about();
    if (following || (chosen != null && about.touches(chosen.places()))) {
      return;
    }
    following = true;
    list.getSelectionModel().clearSelection();
    for (int i = 0; i < list.getItems().size(); i++) {
      if (about.touches(list.getItems().get(i).places())) {
        list.getSelectionModel().select(i);
        if (!Sight.has(list, i)) {
          list.scrollTo(i);
        }
        break;
      }
    }
    following = false;
  }

  private HBox bar(Actions actions) {
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    count.setId("services-count");
    count.setMinWidth(Region.USE_PREF_SIZE);
    count.getStyleClass().add("quiet");
    Button add = actions.button("services", "add-services");
    add.setText("Add a model …");
    add.setAccessibleText(actions.named("services").words());
    Button export = actions.button("bcf", "export-bcf");
    export.setText("Export as BCF …");
    export.setAccessibleText(actions.named("bcf").words());
    HBox bar = new HBox(add, export, gap, count);
    bar.getStyleClass().add("bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    return bar;
  }

  private void fill() {
    List<ServiceIssue> issues = model.services().issues();
    if (!issues.equals(list.getItems())) {
      following = true;
      list.getItems().setAll(issues);
      following = false;
      follow();
    }
    count.setText(model.services().count());
    empty.setText(
        model.services().problem().get().map(Problem::words).orElse(model.services().state()));
  }

  Optional<ServiceIssue> selected() {
    return Optional.ofNullable(list.getSelectionModel().getSelectedItem());
  }

  void accept(ServiceIssue issue) {
    TextAsk.reason(this, "Accept an issue", issue.title())
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
      boolean isOpen = issue.accepted().isEmpty();
      Button accept = new Button(isOpen ? "Accept …" : "Reopen");
      accept.getStyleClass().add(isOpen ? "accept" : "reopen");
      accept.setMinWidth(Region.USE_PREF_SIZE);
      accept.setAccessibleText((isOpen ? "Accept: " : "Reopen: ") + issue.title());
      accept.setOnAction(
          e -> {
            if (isOpen) {
              accept(issue);
            } else {
              model.services().accept(issue, "");
            }
          });
      HBox content = new WrappedRow(list, words, accept);
      content.getStyleClass().add("finding");
      content.setOnMouseClicked(e -> tell());
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
      label.setMinHeight(Region.USE_PREF_SIZE);
      return label;
    }
  }
}
