package org.underlee.panel.view;

import java.util.List;
import javafx.collections.ObservableList;
import javafx.scene.control.TreeItem;
import org.underlee.panel.model.Outline;

/** A row of the outline, whose children are made when someone looks at them. */
final class OutlineBranch extends TreeItem<Outline> {
  private boolean filled;

  OutlineBranch(Outline outline) {
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
      if (!((OutlineBranch) rows.get(i)).fits(next.inside().get(i))) {
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
        ((OutlineBranch) rows.get(i)).renew(next.inside().get(i), changes);
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
      super.getChildren().setAll(getValue().inside().stream().map(OutlineBranch::new).toList());
    }
    return super.getChildren();
  }
}
