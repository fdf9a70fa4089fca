package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.Tooltip;
import javafx.scene.control.TreeCell;
import javafx.scene.control.TreeItem;
import javafx.scene.control.TreeView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.underlee.finding.Level;
import org.underlee.panel.model.FindingCount;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Lists;
import org.underlee.panel.model.Outline;
import org.underlee.panel.model.PanelModel;

/** Decks, fields, bays and parts as a tree. */
final class OutlineView extends TreeView<Outline> {
  /** More are not in sight at first. */
  private static final int FIRST_DECKS = 4;

  private static final int AT_ONCE = 8;

  private final PanelModel model;
  private Lists shown;
  private boolean following;
  private final Portions portions = new Portions();

  OutlineView(PanelModel model) {
    this.model = model;
    shown = model.lists().get();
    setId("outline");
    setAccessibleText("Outline of decks, fields, bays and parts");
    setShowRoot(false);
    setRoot(new TreeItem<>());
    setCellFactory(t -> new Cell(this::tell));
    getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
    getSelectionModel()
        .getSelectedItems()
        .addListener((ListChangeListener<TreeItem<Outline>>) c -> tell());
    model.lists().addListener((o, before, now) -> fill(now));
    model.selection().addListener((o, before, now) -> follow(now));
  }

  private void fill(Lists lists) {
    if (lists.decks().equals(shown.decks())) {
      shown = lists;
      return;
    }
    List<Runnable> renewing = renewing(lists.decks());
    if (!renewing.isEmpty()) {
      shown = lists;
      portions.begin(renewing);
      return;
    }
    boolean first = shown.decks().isEmpty();
    Set<Item> open = new LinkedHashSet<>();
    getRoot().getChildren().forEach(d -> collectOpen(d, open));
    shown = lists;
    List<Branch> decks = lists.decks().stream().map(Branch::new).toList();
    decks.forEach(d -> open(d, first ? OutlineView::isOpenAtFirst : o -> open.contains(o.item())));
    show(decks, first ? FIRST_DECKS : decks.size());
  }

  /**
   * What gives the rows that are there what they say now, some at a time; nothing where there are
   * other rows now.
   */
  private List<Runnable> renewing(List<Outline> decks) {
    List<TreeItem<Outline>> rows = getRoot().getChildren();
    if (rows.size() != decks.size()) {
      return List.of();
    }
    List<Runnable> changes = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (!(rows.get(i) instanceof Branch row && row.fits(decks.get(i)))) {
        return List.of();
      }
      row.renew(decks.get(i), changes);
    }
    List<Runnable> steps = new ArrayList<>();
    for (int i = 0; i < changes.size(); i += AT_ONCE) {
      List<Runnable> some = changes.subList(i, Math.min(changes.size(), i + AT_ONCE));
      steps.add(() -> show(() -> some.forEach(Runnable::run)));
    }
    return steps;
  }

  /** The rows in sight are made for one deck after the other, and those out of sight then. */
  private void show(List<Branch> decks, int oneByOne) {
    List<Runnable> steps = new ArrayList<>();
    int first = Math.min(decks.size(), oneByOne == decks.size() ? oneByOne : 1);
    steps.add(() -> show(() -> getRoot().getChildren().setAll(decks.subList(0, first))));
    for (int i = first; i < decks.size(); i += i < oneByOne ? 1 : AT_ONCE) {
      List<Branch> more =
          decks.subList(i, Math.min(decks.size(), i < oneByOne ? i + 1 : i + AT_ONCE));
      steps.add(() -> show(() -> getRoot().getChildren().addAll(more)));
    }
    portions.begin(steps);
    follow(model.selection().get());
  }

  private void show(Runnable change) {
    following = true;
    change.run();
    following = false;
  }

  /** Makes rows of a tree and takes them away again. */
  void rehearse(Lists lists) {
    fill(lists);
    portions.finish();
    applyCss();
    layout();
    fill(model.lists().get());
    portions.finish();
  }

  private static boolean isOpenAtFirst(Outline outline) {
    boolean high = outline.item() instanceof Item.OfDeck || outline.item() instanceof Item.OfField;
    return high && outline.state() != Outline.State.OUT;
  }

  private static void collectOpen(TreeItem<Outline> node, Set<Item> open) {
    if (node.isExpanded()) {
      open.add(node.getValue().item());
      node.getChildren().forEach(c -> collectOpen(c, open));
    }
  }

  private static void open(TreeItem<Outline> node, Predicate<Outline> isOpen) {
    if (isOpen.test(node.getValue())) {
      node.getChildren().forEach(c -> open(c, isOpen));
      node.setExpanded(true);
    }
  }

  /** The node of an item, with the branches on its way; empty when the outline has none. */
  private Optional<TreeItem<Outline>> node(Item item) {
    Item above = shown.above().get(item);
    List<TreeItem<Outline>> beside =
        above == null
            ? getRoot().getChildren()
            : node(above).map(n -> List.copyOf(n.getChildren())).orElse(List.of());
    return beside.stream().filter(n -> n.getValue().item().equals(item)).findFirst();
  }

  /** A node whose children are made when someone looks at them. */
  private static final class Branch extends TreeItem<Outline> {
    private boolean filled;

    Branch(Outline outline) {
      super(outline);
    }

    /** Whether another outline has the same rows, as far as they are made. */
    boolean fits(Outline next) {
      if (!getValue().item().equals(next.item())
          || getValue().inside().isEmpty() != next.inside().isEmpty()) {
        return false;
      }
      List<TreeItem<Outline>> rows = filled ? getChildren() : List.of();
      if (filled && rows.size() != next.inside().size()) {
        return false;
      }
      for (int i = 0; i < rows.size(); i++) {
        if (!((Branch) rows.get(i)).fits(next.inside().get(i))) {
          return false;
        }
      }
      return true;
    }

    /** Collects what makes its rows say what another outline that fits says. */
    void renew(Outline next, List<Runnable> changes) {
      if (!getValue().equals(next)) {
        changes.add(() -> setValue(next));
        List<TreeItem<Outline>> rows = filled ? getChildren() : List.of();
        for (int i = 0; i < rows.size(); i++) {
          ((Branch) rows.get(i)).renew(next.inside().get(i), changes);
        }
      }
    }

    @Override
    public boolean isLeaf() {
      return getValue() == null || getValue().inside().isEmpty();
    }

    @Override
    public ObservableList<TreeItem<Outline>> getChildren() {
      if (!filled && getValue() != null) {
        filled = true;
        super.getChildren().setAll(getValue().inside().stream().map(Branch::new).toList());
      }
      return super.getChildren();
    }
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
    model.selecting().goTo(chosen);
  }

  private void follow(Set<Item> chosen) {
    if (!chosen.isEmpty()) {
      portions.finish();
    }
    following = true;
    getSelectionModel().clearSelection();
    for (Item item : chosen) {
      node(item).ifPresent(this::chooseInSight);
    }
    int row = getSelectionModel().getSelectedIndex();
    if (row >= 0 && !isFocused()) {
      scrollTo(Math.max(0, row - 3));
    }
    following = false;
  }

  private void chooseInSight(TreeItem<Outline> node) {
    for (TreeItem<Outline> up = node.getParent(); up != null; up = up.getParent()) {
      up.setExpanded(true);
    }
    getSelectionModel().select(node);
  }

  private static final class Cell extends TreeCell<Outline> {
    private final Label name = new Label();
    private final Label note = new Label();
    private final Label found = new Label();
    private final Label state = new Label();
    private final Region gap = new Region();
    private final HBox row = new HBox(name, note, gap, found, state);
    private final Tooltip words = new Tooltip();
    private Optional<Level> worst = Optional.empty();

    /**
     * @param again what a click on a row that is chosen already does
     */
    Cell(Runnable again) {
      row.setAlignment(Pos.CENTER_LEFT);
      row.getStyleClass().add("outline-row");
      row.setOnMouseClicked(e -> again.run());
      note.getStyleClass().add("quiet");
      name.setMinWidth(Region.USE_PREF_SIZE);
      found.setMinWidth(Region.USE_PREF_SIZE);
      state.setMinWidth(Region.USE_PREF_SIZE);
      HBox.setHgrow(gap, Priority.ALWAYS);
      setPrefWidth(0);
      setText(null);
      setGraphic(row);
    }

    @Override
    protected void updateItem(Outline item, boolean empty) {
      super.updateItem(item, empty);
      boolean none = empty || item == null;
      // the row stays: taken away and put back, its styles would be worked out anew
      name.setText(none ? "" : item.name());
      note.setText(none ? "" : item.note());
      show(state, none ? "" : item.state().words());
      Optional.ofNullable(getDisclosureNode())
          .ifPresent(arrow -> arrow.setVisible(!none && !getTreeItem().isLeaf()));
      if (none) {
        show(found, "");
        setAccessibleText(null);
        setTooltip(null);
        return;
      }
      List<String> look =
          List.of(
              "label", "state", "state-" + item.state().name().toLowerCase(java.util.Locale.ROOT));
      if (!state.getStyleClass().equals(look)) {
        state.getStyleClass().setAll(look);
      }
      show(item.found());
      String all = item.spoken();
      setAccessibleText(all);
      words.setText(all);
      setTooltip(words);
    }

    /** How many findings, with the sign of the worst, which differs in shape. */
    private void show(FindingCount count) {
      show(found, count.count() == 0 ? "" : Integer.toString(count.count()));
      if (!count.worst().equals(worst)) {
        worst = count.worst();
        found.setGraphic(worst.map(FindingCell::sign).orElse(null));
      }
    }

    private static void show(Label label, String text) {
      label.setText(text);
      label.setVisible(!text.isEmpty());
      label.setManaged(!text.isEmpty());
    }
  }
}
