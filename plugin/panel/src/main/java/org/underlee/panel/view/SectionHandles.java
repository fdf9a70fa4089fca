package org.underlee.panel.view;

import javafx.scene.control.ContextMenu;
import org.underlee.geom.Vec2;
import org.underlee.panel.model.PanelModel;

/** What is in the section, for a hand to point at. */
record SectionHandles(PanelModel model) implements FlatView.Handles {
  @Override
  public boolean grasp(Vec2 place, double reach) {
    return false;
  }

  @Override
  public void drag(Vec2 place) {}

  @Override
  public void drop() {}

  @Override
  public void point(Vec2 place, double reach) {
    model.selecting().pickInSection(place);
  }

  /** An empty one is not shown. */
  @Override
  public ContextMenu menu() {
    return new ContextMenu();
  }
}
