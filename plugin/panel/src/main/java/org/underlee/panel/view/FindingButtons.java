package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.List;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import org.underlee.panel.model.FindingDesk;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Standing;

/**
 * What can be done with a finding, as buttons. They are made once: each node that is new has its
 * styles worked out.
 */
final class FindingButtons {
  private final FindingDesk desk;
  private final Node owner;
  private final Button fix = button("", "fix");
  private final Tooltip price = new Tooltip();
  private final Button again = button("Accept again", "accept-again");
  private final Button accept = button("Accept …", "accept");
  private final Button reopen = button("Reopen", "reopen");

  FindingButtons(FindingDesk desk, Node owner) {
    this.desk = desk;
    this.owner = owner;
    fix.setGraphic(Icons.icon("mdi2w-wrench-outline"));
    fix.setTooltip(price);
  }

  private static Button button(String words, String look) {
    Button button = new Button(words);
    button.getStyleClass().add(look);
    button.setMinWidth(Region.USE_PREF_SIZE);
    return button;
  }

  /** Puts those that can be pressed now into a pane. */
  void show(FindingList.Row row, ObservableList<Node> pane) {
    List<Node> now = new ArrayList<>();
    row.fix().ifPresent(words -> now.add(fix(row, words)));
    Standing.State state = row.standing().state();
    if (state == Standing.State.WORSE || state == Standing.State.OTHER_NUMBERS) {
      again.setOnAction(e -> desk.acceptAgain(row));
      now.add(again);
    }
    if (!row.standing().isAccepted()) {
      accept.setOnAction(e -> accept(desk, owner, row));
      now.add(accept);
    }
    if (!row.standing().keys().isEmpty()) {
      reopen.setOnAction(e -> desk.reopen(row));
      now.add(reopen);
    }
    if (!pane.equals(now)) {
      pane.setAll(now);
    }
  }

  private Button fix(FindingList.Row row, String words) {
    fix.setText(words);
    fix.setOnAction(e -> desk.fix(row));
    price.setText(row.price().orElse(""));
    fix.setAccessibleText(words + row.price().map(p -> ": then " + p).orElse(""));
    return fix;
  }

  /** Asks for the reason. */
  static void accept(FindingDesk desk, Node owner, FindingList.Row row) {
    TextAsk.reason(owner, "Accept a finding", row.message()).ifPresent(r -> desk.accept(row, r));
  }
}
