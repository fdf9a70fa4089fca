package org.underlee.panel.view;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TreeCell;
import javafx.scene.control.TreeItem;
import javafx.scene.control.TreeView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Outline;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Result;

/** Decks, fields, bays and parts as a tree. */
final class OutlineView extends TreeView<Outline> {
  private final PanelModel model;
  private Map<Item, TreeItem<Outline>> items = new HashMap<>();
  private boolean following;

  OutlineView(PanelModel model) {
    this.model = model;
    setId("outline");
    setAccessibleText("Outline of decks, fields, bays and parts");
    setShowRoot(false);
    setRoot(new TreeItem<>());
    setCellFactory(t -> new Cell());
    getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
    getSelectionModel()
        .getSelectedItems()
        .addListener((ListChangeListener<TreeItem<Outline>>) c -> tell());
    // a hand that drags has no eye for the tree: it follows when the design is whole
    model
        .session()
        .result()
        .addListener(
            (o, before, now) -> {
              if (items.isEmpty() || now.map(Result::isWhole).orElse(true)) {
                fill();
              }
            });
    model.units().addListener((o, before, now) -> fill());
    model.selection().addListener((o, before, now) -> follow(now));
  }

  private void fill() {
    Set<Item> open = new LinkedHashSet<>();
    items.forEach(
        (item, node) -> {
          if (node.isExpanded()) {
            open.add(item);
          }
        });
    boolean first = items.isEmpty();
    items = new HashMap<>();
    List<Outline> decks =
        model
            .session()
            .result()
            .get()
            .map(r -> Outline.of(r, model.units().get()))
            .orElse(List.of());
    following = true;
    getRoot().getChildren().setAll(decks.stream().map(d -> node(d, open, first)).toList());
    following = false;
    follow(model.selection().get());
  }

  private TreeItem<Outline> node(Outline outline, Set<Item> open, boolean first) {
    TreeItem<Outline> node = new TreeItem<>(outline);
    items.put(outline.item(), node);
    outline.inside().forEach(o -> node.getChildren().add(node(o, open, first)));
    boolean high = outline.item() instanceof Item.OfDeck || outline.item() instanceof Item.OfField;
    node.setExpanded(
        first ? high && outline.state() != Outline.State.OUT : open.contains(outline.item()));
    return node;
  }

  private void tell() {
    if (following) {
      return;
    }
    Set<Item> chosen = new LinkedHashSet<>();
    for (TreeItem<Outline> node : List.copyOf(getSelectionModel().getSelectedItems())) {
      if (node != null && node.getValue() != null) {
        chosen.add(node.getValue().item());
      }
    }
    model.select(chosen);
  }

  private void follow(Set<Item> chosen) {
    following = true;
    getSelectionModel().clearSelection();
    for (Item item : chosen) {
      TreeItem<Outline> node = items.get(item);
      if (node != null) {
        for (TreeItem<Outline> up = node.getParent(); up != null; up = up.getParent()) {
          up.setExpanded(true);
        }
        getSelectionModel().select(node);
      }
    }
    int row = getSelectionModel().getSelectedIndex();
    if (row >= 0 && !isFocused()) {
      scrollTo(Math.max(0, row - 3));
    }
    following = false;
  }

  private static final class Cell extends TreeCell<Outline> {
    private final Label name = new Label();
    private final Label note = new Label();
    private final Label state = new Label();
    private final Region gap = new Region();
    private final HBox row = new HBox(name, note, gap, state);

    Cell() {
      row.setAlignment(Pos.CENTER_LEFT);
      row.getStyleClass().add("outline-row");
      note.getStyleClass().add("quiet");
      name.setMinWidth(Region.USE_PREF_SIZE);
      state.setMinWidth(Region.USE_PREF_SIZE);
      HBox.setHgrow(gap, Priority.ALWAYS);
      setPrefWidth(0);
    }

    @Override
    protected void updateItem(Outline item, boolean empty) {
      super.updateItem(item, empty);
      setText(null);
      if (empty || item == null) {
        setGraphic(null);
        setAccessibleText(null);
        return;
      }
      name.setText(item.name());
      note.setText(item.note());
      state.setText(item.state().words());
      state
          .getStyleClass()
          .setAll(
              "label", "state", "state-" + item.state().name().toLowerCase(java.util.Locale.ROOT));
      state.setVisible(!item.state().words().isEmpty());
      state.setManaged(state.isVisible());
      setAccessibleText(item.name() + ", " + item.note() + ", " + item.state().words());
      setGraphic(row);
    }
  }
}
