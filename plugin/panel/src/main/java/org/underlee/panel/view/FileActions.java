package org.underlee.panel.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.stage.Window;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Command.Need;
import org.underlee.panel.model.Dropped;
import org.underlee.panel.model.FileKind;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Writing;

/** What is done with files: opened, added, written, taken over. */
final class FileActions {
  private final PanelModel model;
  private final PanelView view;
  private final FileAsk ask;
  private final List<Command> all;

  /**
   * @param all where its commands go
   */
  FileActions(PanelModel model, PanelView view, FileAsk ask, List<Command> all) {
    this.model = model;
    this.view = view;
    this.ask = ask;
    this.all = all;
    files();
    kits();
    ratings();
    exports();
    resync();
  }

  private void add(String id, String words, String icon, String keys, Need need, Runnable run) {
    all.add(new Command(id, words, icon, keys, need, run));
  }

  private Need openModel() {
    return new Need("open a model", () -> model.session().model().get().isPresent());
  }

  private void files() {
    Need open = openModel();
    Need whole = new Need("needs a design that is worked out", model.saving()::canWrite);
    add("open", "Open a model …", "mdi2f-folder-open-outline", "Shortcut+O", Need.NONE, this::open);
    add(
        "recent-forget",
        "Forget recent models that are no longer there",
        "mdi2h-history",
        "",
        new Need("all are still there", model.recent()::someAreGone),
        model.recent()::forgetGone);
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
        new Need("write something", model.saving()::canUndoWrite),
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

  private void kits() {
    add(
        "own-kit",
        "Use a kit of your own …",
        "mdi2t-toolbox-outline",
        "",
        openModel(),
        () -> ask.toOpen("A kit", List.of(".json")).ifPresent(model.ownKit()::choose));
  }

  private void ratings() {
    add(
        "capacity-own",
        "Rate gutters and downspouts by a table of your own …",
        "mdi2t-table-large-plus",
        "",
        openModel(),
        this::rateByOwn);
    add(
        "capacity-off",
        "Rate gutters and downspouts by the program's tables alone",
        "mdi2t-table-large-remove",
        "",
        new Need("no table of your own is in use", model.ratings()::isOwn),
        model.ratings()::giveUp);
  }

  private void rateByOwn() {
    view.show(Place.WATER);
    ask.toOpen("A table of capacities", List.of(".json")).ifPresent(model.ratings()::choose);
  }

  private void exports() {
    add(
        "bcf",
        "Export the issues as BCF …",
        "mdi2m-message-text-outline",
        "Shortcut+B",
        new Need("needs a design that is worked out", model.services()::canExport),
        this::exportBcf);
    for (String language : model.forTheSite().languages()) {
      boolean usual = language.equals(model.forTheSite().languages().get(0));
      add(
          usual ? "packet" : "packet-" + language,
          "Export the packet for the site"
              + (usual ? "" : " in " + model.forTheSite().words(language))
              + ": PDF, page, drawings …",
          "mdi2f-file-document-multiple-outline",
          usual ? "Shortcut+P" : "",
          new Need("needs a design with something laid out", model.forTheSite()::canExport),
          () -> exportPacket(language));
    }
    add(
        "checklist",
        "Export the checklist for the site …",
        "mdi2c-clipboard-check-outline",
        "",
        new Need("needs a design with something laid out", model.forTheSite()::canExport),
        () ->
            save(
                "Checklist", "checklist.txt", FileKind.TEXTS, model.forTheSite()::exportChecklist));
  }

  private void exportPacket(String language) {
    model
        .session()
        .model()
        .get()
        .flatMap(m -> ask.toFill("A folder for the packet", m))
        .ifPresent(f -> model.forTheSite().exportPacket(f, language));
  }

  private void resync() {
    add(
        "resync",
        "Take the assembly over from the old model (resync) …",
        "mdi2c-compare",
        "",
        openModel(),
        this::takeOver);
    add(
        "resync-write",
        "Write the new export with the assembly …",
        "mdi2c-content-save-move-outline",
        "",
        new Need("take an assembly over, and decide nothing else", model.resyncing()::mayWrite),
        () ->
            save(
                "The new export with the assembly",
                "drained.ifc",
                FileKind.MODELS,
                model.resyncing()::write));
  }

  private void takeOver() {
    view.show(Place.CHANGES);
    ask.toOpen("The old model, with the assembly in it", Dropped.MODELS)
        .ifPresent(model.resyncing()::from);
  }

  void open() {
    ask.toOpen("Open a model", Dropped.MODELS).ifPresent(model::open);
  }

  private void addServices() {
    view.show(Place.SERVICES);
    ask.toOpen("A model of services", Dropped.MODELS)
        .ifPresent(f -> model.serviceFiles().add(List.of(f)));
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
    save("The model without the assembly", "stripped.ifc", FileKind.MODELS, model.saving()::strip);
  }

  private void exportBcf() {
    save("Issues", "issues.bcf", FileKind.BCF, model.services()::exportBcf);
  }

  private void export() {
    save("Takeoff", "takeoff.xlsx", FileKind.TAKEOFFS, model.saving()::export);
  }

  private void save(String words, String name, List<FileKind> kinds, Consumer<Path> to) {
    model
        .session()
        .model()
        .get()
        .flatMap(m -> ask.toSave(words, m.resolveSibling(name), kinds))
        .ifPresent(to);
  }
}
