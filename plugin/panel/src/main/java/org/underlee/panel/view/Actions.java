package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Command.Need;
import org.underlee.panel.model.OutletHand;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.RecentFiles.Recent;
import org.underlee.run.HighLineAsked;

/** Everything that can be done in the panel, in one list: for buttons, keys and the search. */
final class Actions {
  private final PanelModel model;
  private final PanelView view;
  private final Runnable open;
  private final List<Command> all = new ArrayList<>();

  Actions(PanelModel model, PanelView view, FileAsk ask) {
    this.model = model;
    this.view = view;
    FileActions files = new FileActions(model, view, ask, all);
    open = files::open;
    editing();
    deciding();
    layingOut();
    outlets();
    new LookActions(model, view, all);
    new ListActions(model, view, all);
  }

  /** Those that are there at any time, whether they can be done or not. */
  List<Command> all() {
    return List.copyOf(all);
  }

  /** All that a search may find now: files and kits, too, that became known meanwhile. */
  List<Command> found() {
    List<Command> found = new ArrayList<>(all);
    model.recent().look();
    model.recent().files().get().forEach(r -> found.add(recent(r)));
    model.offer().kits().forEach(k -> found.add(kit(k)));
    return found;
  }

  private Command recent(Recent recent) {
    return new Command(
        "recent-" + recent.file(),
        "Open again " + recent.words(),
        "mdi2h-history",
        "",
        new Need("no longer there", recent::there),
        () -> model.recent().open(recent));
  }

  private Command kit(String kit) {
    return new Command(
        "kit-" + kit,
        "Use the kit: " + model.offer().kitWords(kit),
        "mdi2t-toolbox-outline",
        "",
        new Need("in use", () -> !model.session().decisions().get().kit().equals(kit)),
        () -> model.session().decide("Choose the kit", d -> d.withKit(kit)));
  }

  Command named(String id) {
    return all.stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
  }

  /** Does it, where it can be done now. */
  void run(String id) {
    named(id).runIfItCan();
  }

  /**
   * A button with its words and its sign.
   *
   * @param node what it is called in the scene
   */
  Button button(String id, String node) {
    Command command = named(id);
    Button button = new Button(command.words(), Icons.icon(command.icon()));
    button.setId(node);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(e -> run(id));
    return button;
  }

  /**
   * A button that stays down while something is on.
   *
   * @param id of the command that turns it on and off; the button is called the same
   */
  ToggleButton toggle(String id, String words, ObservableBooleanValue on) {
    Command command = named(id);
    ToggleButton button = new ToggleButton(words, Icons.icon(command.icon()));
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.getStyleClass().add("icon-button");
    button.setAccessibleText(command.words());
    button.setTooltip(new Tooltip(command.words()));
    button.setSelected(on.get());
    on.addListener((o, before, now) -> button.setSelected(now));
    button.setOnAction(e -> run(id));
    return button;
  }

  void open() {
    open.run();
  }

  private void add(String id, String words, String icon, String keys, Need need, Runnable run) {
    all.add(new Command(id, words, icon, keys, need, run));
  }

  private void editing() {
    add(
        "undo",
        "Undo",
        "mdi2u-undo",
        "Shortcut+Z",
        new Need("nothing to undo", () -> model.session().toUndo().get().isPresent()),
        model.session()::undo);
    add(
        "redo",
        "Redo",
        "mdi2r-redo",
        "Shortcut+Y",
        new Need("nothing to redo", () -> model.session().toRedo().get().isPresent()),
        model.session()::redo);
    add(
        "cancel",
        "Cancel what is running",
        "mdi2c-close-circle-outline",
        "Esc",
        new Need("nothing is running", model.running()::isRunning),
        model.running()::cancel);
    add(
        "go-on",
        "Go on with what was stopped",
        "mdi2p-play-circle-outline",
        "F5",
        new Need("nothing was stopped", model.running()::canGoOn),
        model.running()::goOn);
  }

  private void deciding() {
    add(
        "edit-fall",
        "Set the fall",
        "mdi2s-slope-downhill",
        "Shortcut+F",
        Need.NONE,
        () -> view.edit("fall-text"));
    add(
        "say-role",
        "Say what the selected element is",
        "mdi2t-tag-outline",
        "Shortcut+R",
        new Need("select an element of the model", () -> model.selecting().element().isPresent()),
        () -> view.edit("role"));
    add(
        "stay-dry",
        "Say what must stay dry",
        "mdi2u-umbrella-outline",
        "",
        new Need("open a model", () -> model.session().result().get().isPresent()),
        () -> view.edit("dry-zone"));
  }

  private void layingOut() {
    Need free = new Need("select a field that stands free", model.selecting()::mayTurnWays);
    add(
        "leave-open",
        "Leave the selected bay open, or not",
        "mdi2c-checkbox-blank-outline",
        "Shortcut+L",
        new Need("select a bay", model.selecting()::hasBay),
        model.selecting()::turnBay);
    add(
        "both-ways",
        "Let the field at hand fall both ways from a high line inside it, or one way",
        "mdi2c-call-split",
        "",
        free,
        model.selecting()::turnWays);
    add(
        "high-line",
        "Put the high line of the field at hand",
        "mdi2c-call-split",
        "",
        free,
        () -> model.selecting().turning().ifPresent(this::askHighLine));
    add(
        "boards-off",
        "The boards are off, or not yet laid",
        "mdi2l-layers-off-outline",
        "",
        new Need("that is decided", () -> !model.session().decisions().get().boardsOff()),
        () -> model.session().decide("The boards are off", d -> d.withBoardsOff(true)));
    add(
        "boards-on",
        "The boards are in place",
        "mdi2l-layers-outline",
        "",
        new Need("that is decided", () -> model.session().decisions().get().boardsOff()),
        () -> model.session().decide("The boards are in place", d -> d.withBoardsOff(false)));
    add(
        "find",
        "Filter the findings",
        "mdi2f-filter-outline",
        "Shortcut+Shift+F",
        Need.NONE,
        view::filterFindings);
  }

  private void askHighLine(HighLineAsked now) {
    TextAsk.length(
            view,
            "The high line of " + model.offer().fieldWords(now.field()),
            "How far from its high end it is to be, such as 7' 9 1/2\" or 2.36 m; empty for where the"
                + " program puts it",
            now.station(),
            model.units().get())
        .ifPresent(model.selecting()::turnWaysAt);
  }

  private void outlets() {
    OutletHand hand = model.outlets();
    Need selected = new Need("select an outlet", hand::canMove);
    add(
        "outlet-add",
        "Add an outlet here: where the plan was pressed, or at what is selected",
        "mdi2p-plus-circle-outline",
        "Alt+O",
        new Need("press in the plan, or select a field, a bay or a piece", hand::canAdd),
        hand::add);
    add(
        "outlet-remove",
        "Remove the selected outlet",
        "mdi2m-minus-circle-outline",
        "Alt+Delete",
        new Need("select an outlet; the last one stays", hand::canRemove),
        hand::remove);
    add(
        "outlet-on",
        "Move the selected outlet along its gutter",
        "mdi2a-arrow-right",
        "Alt+Right",
        selected,
        () -> hand.step(true));
    add(
        "outlet-back",
        "Move the selected outlet back along its gutter",
        "mdi2a-arrow-left",
        "Alt+Left",
        selected,
        () -> hand.step(false));
    add(
        "outlet-post",
        "Move the selected outlet to the next post",
        "mdi2a-arrow-collapse-right",
        "Alt+P",
        selected,
        hand::toNextPost);
    add(
        "outlet-own",
        "Let the program place the outlets of this gutter",
        "mdi2a-auto-fix",
        "",
        selected,
        hand::giveBack);
  }
}
