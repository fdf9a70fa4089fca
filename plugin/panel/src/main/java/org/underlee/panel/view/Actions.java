package org.underlee.panel.view;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.stage.Window;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Picture3d;
import org.underlee.panel.model.Tone;
import org.underlee.panel.model.Writing;
import org.underlee.units.Lengths.UnitSystem;

/** Everything that can be done in the panel, in one list: for buttons, keys and the search. */
final class Actions {
  private static final List<String> MODELS = List.of(".ifc", ".ifczip", ".zip");

  private final PanelModel model;
  private final PanelView view;
  private final FileAsk ask;
  private final List<Command> all = new ArrayList<>();

  Actions(PanelModel model, PanelView view, FileAsk ask) {
    this.model = model;
    this.view = view;
    this.ask = ask;
    files();
    coordination();
    editing();
    looking();
    appearance();
  }

  List<Command> all() {
    return List.copyOf(all);
  }

  Command named(String id) {
    return all.stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
  }

  private void add(
      String id, String words, String icon, String keys, BooleanSupplier can, Runnable run) {
    all.add(new Command(id, words, icon, keys, can, run));
  }

  private void files() {
    BooleanSupplier open = () -> model.session().model().get().isPresent();
    BooleanSupplier whole = () -> model.saving().preview().isPresent();
    add(
        "open",
        "Open a model …",
        "mdi2f-folder-open-outline",
        "Shortcut+O",
        () -> true,
        this::open);
    add(
        "services",
        "Add a model of pipes, ducts and cables …",
        "mdi2p-pipe",
        "",
        open,
        this::addServices);
    add(
        "write",
        "Write the assembly …",
        "mdi2c-content-save-outline",
        "Shortcut+S",
        whole,
        this::write);
    add(
        "unwrite",
        "Take the last write back",
        "mdi2u-undo-variant",
        "",
        open,
        model.saving()::undoWrite);
    add(
        "strip",
        "Write the model without the assembly (strip) …",
        "mdi2e-eraser",
        "",
        open,
        this::strip);
    add(
        "export",
        "Export the takeoff: CSV, XLSX or JSON …",
        "mdi2t-table-arrow-right",
        "Shortcut+E",
        whole,
        this::export);
  }

  private void coordination() {
    add(
        "bcf",
        "Export the issues as BCF …",
        "mdi2m-message-text-outline",
        "Shortcut+B",
        () -> model.services().coordination().get().isPresent(),
        this::exportBcf);
  }

  private void editing() {
    add(
        "undo",
        "Undo",
        "mdi2u-undo",
        "Shortcut+Z",
        () -> model.session().toUndo().get().isPresent(),
        model.session()::undo);
    add(
        "redo",
        "Redo",
        "mdi2r-redo",
        "Shortcut+Y",
        () -> model.session().toRedo().get().isPresent(),
        model.session()::redo);
    add(
        "cancel",
        "Cancel what is running",
        "mdi2c-close-circle-outline",
        "",
        () -> !model.session().busyWith().get().isEmpty(),
        model.session()::cancel);
    for (String kit : model.kits()) {
      add(
          "kit-" + kit,
          "Use the kit " + kit,
          "mdi2t-toolbox-outline",
          "",
          () -> !model.session().decisions().get().kit().equals(kit),
          () -> model.session().decide("Choose the kit", d -> d.withKit(kit)));
    }
    add(
        "edit-fall",
        "Set the fall",
        "mdi2s-slope-downhill",
        "Shortcut+F",
        () -> true,
        view::editFall);
    add(
        "leave-open",
        "Leave the selected bay open, or not",
        "mdi2c-checkbox-blank-outline",
        "Shortcut+L",
        model::hasSelectedBay,
        model::turnSelectedBay);
    add(
        "boards-off",
        "The boards are off, or not yet laid: on or off",
        "mdi2l-layers-off-outline",
        "",
        () -> true,
        () -> model.session().decide("Boards on or off", d -> d.withBoardsOff(!d.boardsOff())));
    add(
        "find",
        "Filter the findings",
        "mdi2f-filter-outline",
        "Shortcut+Shift+F",
        () -> true,
        view::filterFindings);
  }

  private void looking() {
    for (PanelView.Place place : PanelView.Place.values()) {
      add(
          "show-" + place.name().toLowerCase(java.util.Locale.ROOT),
          "Show " + place.words(),
          place.icon(),
          place.keys(),
          () -> true,
          () -> view.show(place));
    }
    for (Picture3d.View from : Picture3d.View.values()) {
      add(
          "look-" + from.name().toLowerCase(java.util.Locale.ROOT),
          "Look: " + from,
          "mdi2e-eye-outline",
          "",
          () -> model.session().result().get().isPresent(),
          () -> model.picture().look(from));
    }
  }

  private void appearance() {
    for (Tone tone : Tone.values()) {
      add(
          "tone-" + tone.name().toLowerCase(java.util.Locale.ROOT),
          "Colours: " + tone.words(),
          "mdi2t-theme-light-dark",
          "",
          () -> model.settings().get().tone() != tone,
          () -> model.setTone(tone));
    }
    add(
        "larger",
        "Larger letters",
        "mdi2f-format-font-size-increase",
        "Shortcut+Plus",
        () -> true,
        () -> font(10));
    add(
        "smaller",
        "Smaller letters",
        "mdi2f-format-font-size-decrease",
        "Shortcut+Minus",
        () -> true,
        () -> font(-10));
    add(
        "metric",
        "Units: millimetres",
        "mdi2r-ruler",
        "",
        () -> true,
        () -> model.setUnits(UnitSystem.METRIC));
    add(
        "imperial",
        "Units: feet and inches",
        "mdi2r-ruler",
        "",
        () -> true,
        () -> model.setUnits(UnitSystem.IMPERIAL));
  }

  private void font(int percent) {
    model
        .settings()
        .set(
            model.settings().get().withFontPercent(model.settings().get().fontPercent() + percent));
  }

  void open() {
    ask.toOpen("Open a model", MODELS).ifPresent(model::open);
  }

  private void addServices() {
    ask.toOpen("A model of services", MODELS)
        .ifPresent(f -> model.session().decide("Add services", d -> d.withService(f)));
  }

  private void write() {
    Optional<Path> file = model.session().model().get();
    Optional<Writing> writing = model.saving().preview();
    if (file.isPresent() && writing.isPresent()) {
      WriteDialog dialog = new WriteDialog(model, writing.get(), file.get());
      Window window = view.getScene().getWindow();
      dialog.initOwner(window);
      view.dress(dialog.getDialogPane());
      dialog.show();
    }
  }

  private void strip() {
    model
        .session()
        .model()
        .get()
        .flatMap(
            m -> ask.toSave("The model without the assembly", m.resolveSibling("stripped.ifc")))
        .ifPresent(model.saving()::strip);
  }

  private void exportBcf() {
    model
        .session()
        .model()
        .get()
        .flatMap(m -> ask.toSave("Issues", m.resolveSibling("issues.bcf")))
        .ifPresent(model.services()::exportBcf);
  }

  private void export() {
    model
        .session()
        .model()
        .get()
        .flatMap(m -> ask.toSave("Takeoff", m.resolveSibling("takeoff.xlsx")))
        .ifPresent(model.saving()::export);
  }
}
