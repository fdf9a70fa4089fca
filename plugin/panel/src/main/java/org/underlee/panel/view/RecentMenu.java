package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.Tooltip;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.RecentFiles.Recent;

/** Models that were open before, to be opened again; those that are gone are grey. */
final class RecentMenu extends MenuButton {
  private static final String WORDS = "Models that were open before";

  private final PanelModel model;

  RecentMenu(PanelModel model) {
    super("", Icons.icon("mdi2h-history"));
    this.model = model;
    setId("recent");
    getStyleClass().add("icon-button");
    setTooltip(new Tooltip(WORDS));
    setAccessibleText(WORDS);
    setOnShowing(e -> model.recent().look());
    model.recent().files().addListener((o, before, now) -> fill(now));
    fill(model.recent().files().get());
  }

  private void fill(List<Recent> files) {
    List<MenuItem> items = new ArrayList<>();
    for (Recent recent : files) {
      MenuItem item = new MenuItem(recent.words());
      item.setMnemonicParsing(false);
      item.setId("recent-" + items.size());
      item.setDisable(!recent.there());
      item.setOnAction(e -> model.recent().open(recent));
      items.add(item);
    }
    if (model.recent().someAreGone()) {
      MenuItem forget = new MenuItem("Forget those that are no longer there");
      forget.setId("recent-forget");
      forget.setOnAction(e -> model.recent().forgetGone());
      items.add(new SeparatorMenuItem());
      items.add(forget);
    }
    getItems().setAll(items);
    setDisable(files.isEmpty());
  }
}
