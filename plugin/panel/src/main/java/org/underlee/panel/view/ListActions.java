package org.underlee.panel.view;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Command.Need;
import org.underlee.panel.model.FindingDesk;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Table;
import org.underlee.picture.DeckPicture.Family;

/** What is done in lists and tables, and where things are decided and shown. */
final class ListActions {
  private final PanelModel model;
  private final PanelView view;
  private final List<Command> all;

  /**
   * @param all where its commands go
   */
  ListActions(PanelModel model, PanelView view, List<Command> all) {
    this.model = model;
    this.view = view;
    this.all = all;
    arrangements();
    findings();
    tables();
    fields();
    families();
  }

  private void add(String id, String words, String icon, Need need, Runnable run) {
    all.add(new Command(id, words, icon, "", need, run));
  }

  private void arrangements() {
    add(
        "compare",
        "Compare all kits and low ends",
        "mdi2s-scale-balance",
        new Need("open a model", model.choices()::canCompare),
        () -> {
          view.show(Place.OPTIONS);
          model.choices().compare();
        });
    add(
        "choose-arrangement",
        "Use the selected arrangement",
        "mdi2c-check",
        new Need("select an arrangement", model.choices()::canChoose),
        model.choices()::chooseSelected);
  }

  private void findings() {
    FindingsView findings = view.findings();
    FindingDesk desk = model.findings();
    ServicesView services = view.services();
    add(
        "accept-finding",
        "Accept the selected finding …",
        "mdi2c-check-decagram-outline",
        inHand("select a finding that is not accepted", r -> !r.standing().isAccepted()),
        () -> desk.inHand().ifPresent(r -> FindingButtons.accept(desk, view, r)));
    add(
        "accept-finding-again",
        "Accept the selected finding with its numbers of now",
        "mdi2c-check-decagram-outline",
        inHand("select a finding that was accepted", r -> r.standing().kept().isPresent()),
        () -> desk.inHand().ifPresent(desk::acceptAgain));
    add(
        "reopen-finding",
        "Reopen the selected finding",
        "mdi2u-undo-variant",
        inHand("select a finding that was accepted", r -> r.standing().kept().isPresent()),
        () -> desk.inHand().ifPresent(desk::reopen));
    add(
        "fix-finding",
        "Apply the fix of the selected finding",
        "mdi2w-wrench-outline",
        inHand("select a finding with a fix", r -> r.fix().isPresent()),
        () -> desk.inHand().ifPresent(desk::fix));
    add(
        "accept-issue",
        "Accept the selected issue with services …",
        "mdi2c-check-decagram-outline",
        new Need("select an issue", () -> services.selected().isPresent()),
        () -> services.selected().ifPresent(services::accept));
    for (FindingList.Grouping grouping : FindingList.Grouping.values()) {
      add(
          "group-" + grouping.name().toLowerCase(Locale.ROOT),
          "Put the findings in order: " + grouping.toString().toLowerCase(Locale.ROOT),
          "mdi2s-sort-variant",
          Need.NONE,
          () -> {
            view.show(Place.FINDINGS);
            findings.group(grouping);
          });
    }
  }

  private Need inHand(String words, Predicate<FindingList.Row> which) {
    return new Need(words, () -> model.findings().inHand().filter(which).isPresent());
  }

  private void tables() {
    for (String name : Table.TAKEOFF) {
      add("table-" + name, "Show the table: " + name, "mdi2t-table", Need.NONE, takeoff(name));
    }
    for (String name : Table.WATER) {
      add("table-" + name, "Show the table: " + name, "mdi2t-table", Need.NONE, water(name));
    }
  }

  private Runnable takeoff(String name) {
    return () -> view.showTable(Place.TAKEOFF, name);
  }

  private Runnable water(String name) {
    return () -> view.showTable(Place.WATER, name);
  }

  private void fields() {
    field("deck", "Choose the deck");
    field("low-end", "Choose the low end");
    field("seat", "Set the seat");
    field("rain", "Set the rain");
  }

  private void field(String id, String words) {
    add("edit-" + id, words, "mdi2p-pencil-outline", Need.NONE, () -> view.edit(id));
  }

  private void families() {
    for (Family family : Family.values()) {
      add(
          "family-" + family.name().toLowerCase(Locale.ROOT),
          "Show or hide in 3-D: " + family.words(),
          "mdi2l-layers-outline",
          Need.NONE,
          () -> model.picture().show(family, !model.picture().isShown(family)));
    }
  }
}
