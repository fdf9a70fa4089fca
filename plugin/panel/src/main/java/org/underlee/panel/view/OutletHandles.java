package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import org.underlee.geom.Vec2;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.PanelModel;

/** Outlets in the plan, for a hand to set, to move along their gutters and to take away. */
record OutletHandles(PanelModel model, Actions actions) implements FlatView.Handles {
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

  @Override
  public void point(Vec2 place, double reach) {
    model
        .outlets()
        .outletAt(place, reach)
        .ifPresentOrElse(o -> model.select(Set.of(o)), () -> model.selecting().pickInPlan(place));
    model.outlets().point(place);
  }

  @Override
  public ContextMenu menu() {
    List<MenuItem> items =
        Stream.of("outlet-add", "outlet-remove", "outlet-own").map(this::item).toList();
    return new ContextMenu(items.toArray(MenuItem[]::new));
  }

  private MenuItem item(String id) {
    Command command = actions.named(id);
    MenuItem item = new MenuItem(command.words(), Icons.icon(command.icon()));
    item.setId("menu-" + id);
    item.setDisable(!command.can().getAsBoolean());
    item.setOnAction(e -> actions.run(id));
    return item;
  }
}
