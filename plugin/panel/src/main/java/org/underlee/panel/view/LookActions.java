package org.underlee.panel.view;

import java.util.List;
import java.util.Locale;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Command.Need;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Picture3d;
import org.underlee.panel.model.Section;
import org.underlee.panel.model.Tone;
import org.underlee.panel.model.Viewpoint;
import org.underlee.units.Lengths.UnitSystem;

/** What is looked at, from where, and in which colours, letters and units. */
final class LookActions {
  private final PanelModel model;
  private final PanelView view;
  private final List<Command> all;

  /**
   * @param all where its commands go
   */
  LookActions(PanelModel model, PanelView view, List<Command> all) {
    this.model = model;
    this.view = view;
    this.all = all;
    looking();
    appearance();
  }

  private void add(String id, String words, String icon, String keys, Need need, Runnable run) {
    all.add(new Command(id, words, icon, keys, need, run));
  }

  private void looking() {
    for (Place place : Place.values()) {
      add(
          "show-" + place.name().toLowerCase(Locale.ROOT),
          "Show " + place.words(),
          place.icon(),
          place.keys(),
          Need.NONE,
          () -> view.show(place));
    }
    for (Viewpoint from : Viewpoint.values()) {
      add(
          "look-" + from.name().toLowerCase(Locale.ROOT),
          "Look: " + from,
          "mdi2e-eye-outline",
          "",
          new Need("open a model", () -> model.session().result().get().isPresent()),
          () -> model.picture().look(from));
    }
    add(
        "show-all",
        "Show all in 3-D, from where it is looked at now",
        "mdi2a-arrow-expand-all",
        "",
        new Need("open a model", () -> model.picture().orbit().isPresent()),
        model.picture()::showAll);
    add(
        "look-selection",
        "Look at the selection, in every picture",
        "mdi2i-image-filter-center-focus",
        "Shortcut+J",
        new Need("select something", model.picture()::hasSelection),
        model.selecting()::look);
    lookingInto(model.picture());
  }

  private void lookingInto(Picture3d picture) {
    add(
        "section-box",
        "Look into the deck in 3-D, with a section box: on or off",
        "mdi2c-cube-scan",
        "Shortcut+I",
        Need.NONE,
        () -> picture.cut(picture.section().get().turned(!picture.section().get().on()), true));
    add(
        "section-selected",
        "Section box around what is selected",
        "mdi2s-select-group",
        "Shortcut+Shift+I",
        new Need("select something", picture::hasSelection),
        picture::lookInto);
    add(
        "section-whole",
        "Section box around all of it",
        "mdi2a-arrow-expand-all",
        "",
        new Need("turn the section box on", () -> picture.section().get().on()),
        () -> picture.cut(Section.OFF.turned(true), true));
    add(
        "labels",
        "Names of bays and pieces in 3-D: on or off",
        "mdi2l-label-outline",
        "Shortcut+T",
        Need.NONE,
        () -> picture.labels().set(!picture.labels().get()));
  }

  private void appearance() {
    for (Tone tone : Tone.values()) {
      add(
          "tone-" + tone.name().toLowerCase(Locale.ROOT),
          "Colours: " + tone.words(),
          "mdi2t-theme-light-dark",
          "",
          new Need("in use", () -> model.settings().get().tone() != tone),
          () -> model.setTone(tone));
    }
    add(
        "larger",
        "Larger letters",
        "mdi2f-format-font-size-increase",
        "Shortcut+Plus",
        Need.NONE,
        () -> font(10));
    add(
        "smaller",
        "Smaller letters",
        "mdi2f-format-font-size-decrease",
        "Shortcut+Minus",
        Need.NONE,
        () -> font(-10));
    add(
        "metric",
        "Units: millimetres",
        "mdi2r-ruler",
        "",
        Need.NONE,
        () -> model.setUnits(UnitSystem.METRIC));
    add(
        "imperial",
        "Units: feet and inches",
        "mdi2r-ruler",
        "",
        Need.NONE,
        () -> model.setUnits(UnitSystem.IMPERIAL));
  }

  private void font(int percent) {
    model
        .settings()
        .set(
            model.settings().get().withFontPercent(model.settings().get().fontPercent() + percent));
  }
}
