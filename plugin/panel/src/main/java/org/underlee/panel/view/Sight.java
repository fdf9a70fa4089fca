package org.underlee.panel.view;

import javafx.scene.control.Control;
import javafx.scene.control.IndexedCell;
import javafx.scene.control.skin.VirtualFlow;

/** Rows of a list that are in sight. */
final class Sight {
  private Sight() {}

  /** Whether a row is seen; one of a list that is not shown yet is not. */
  static boolean has(Control list, int row) {
    if (list.lookup(".virtual-flow") instanceof VirtualFlow<?> flow) {
      IndexedCell<?> first = flow.getFirstVisibleCell();
      IndexedCell<?> last = flow.getLastVisibleCell();
      return first != null && last != null && row >= first.getIndex() && row <= last.getIndex();
    }
    return false;
  }
}
