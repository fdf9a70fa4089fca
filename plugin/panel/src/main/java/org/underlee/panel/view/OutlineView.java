package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import javafx.collections.ListChangeListener;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TreeItem;
import javafx.scene.control.TreeView;
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
    setCellFactory(t -> new OutlineCell(this::tell));
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
    List<OutlineBranch> decks = lists.decks().stream().map(OutlineBranch::new).toList();
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
      if (!(rows.get(i) instanceof OutlineBranch row && row.fits(decks.get(i)))) {
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
  private void show(List<OutlineBranch> decks, int oneByOne) {
    List<Runnable> steps = new ArrayList<>();
    int first = Math.min(decks.size(), oneByOne == decks.size() ? oneByOne : 1);
    steps.add(() -> show(() -> getRoot().getChildren().setAll(decks.subList(0, first))));
    for (int i = first; i < decks.size(); i += i < oneByOne ? 1 : AT_ONCE) {
      List<OutlineBranch> more =
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
}
