package org.underlee.panel.view;

import java.util.Optional;
import java.util.Set;
import org.underlee.geom.Vec2;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.PanelModel;

/** Outlets in the plan, for a hand to move along their gutters. */
record OutletHandles(PanelModel model) implements FlatView.Handles {
  @Override
  public boolean grasp(Vec2 place, double reach) {
    Optional<Item> outlet = model.outlets().grasp(place, reach);
    outlet.ifPresent(o -> model.select(Set.of(o)));
    return outlet.isPresent();
  }

  @Override
  public void drag(Vec2 place) {
    model.outlets().drag(place);
  }

  @Override
  public void drop() {
    model.outlets().drop();
  }
}
