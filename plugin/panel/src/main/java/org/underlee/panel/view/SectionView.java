package org.underlee.panel.view;

import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Picture3d;
import org.underlee.panel.model.Section.Axis;
import org.underlee.panel.model.Section.Range;
import org.underlee.units.Lengths;

/** The six sides of the section box, by slider, while it is on. */
final class SectionView extends FlowPane {
  private static final double STEP = 0.02;
  private static final double SLIDER_WIDTH = 78;

  private final PanelModel model;
  private final Picture3d picture;
  private boolean showing;

  SectionView(PanelModel model, Actions actions) {
    this.model = model;
    this.picture = model.picture();
    setId("section-sides");
    getStyleClass().add("section-sides");
    for (Axis axis : Axis.values()) {
      getChildren().add(axis(axis));
    }
    getChildren()
        .add(
            new HBox(
                button(actions, "section-selected", "Selected"),
                button(actions, "section-whole", "All")));
    managedProperty().bind(visibleProperty());
    picture.section().addListener((o, before, now) -> setVisible(now.on()));
    setVisible(picture.section().get().on());
  }

  private static Button button(Actions actions, String id, String words) {
    Button button = actions.button(id, id);
    button.setText(words);
    button.setAccessibleText(actions.named(id).words());
    button.getStyleClass().add("icon-button");
    return button;
  }

  private VBox axis(Axis axis) {
    Label words = new Label();
    Slider from = slider(axis, "from", 0);
    Slider to = slider(axis, "to", 1);
    from.valueProperty()
        .addListener((o, before, now) -> cut(axis, from, range(axis).withFrom(now.doubleValue())));
    to.valueProperty()
        .addListener((o, before, now) -> cut(axis, to, range(axis).withTo(now.doubleValue())));
    picture.section().addListener((o, before, now) -> show(axis, from, to, words));
    model.units().addListener((o, before, now) -> show(axis, from, to, words));
    show(axis, from, to, words);
    HBox sliders = new HBox(from, to);
    sliders.setAlignment(Pos.CENTER_LEFT);
    return new VBox(words, sliders);
  }

  private Slider slider(Axis axis, String end, double value) {
    Slider slider = new Slider(0, 1, value);
    slider.setId("section-" + axis.name().toLowerCase(Locale.ROOT) + "-" + end);
    slider.setBlockIncrement(STEP);
    slider.setPrefWidth(SLIDER_WIDTH);
    slider.setAccessibleText("Section box, kept " + axis.words() + ", " + end);
    slider
        .valueChangingProperty()
        .addListener(
            (o, before, now) -> {
              if (!now) {
                picture.settle();
              }
            });
    return slider;
  }

  private Range range(Axis axis) {
    return picture.section().get().range(axis);
  }

  private void cut(Axis axis, Slider moved, Range next) {
    if (!showing && !next.equals(range(axis))) {
      picture.cut(picture.section().get().with(axis, next), !moved.isValueChanging());
    }
  }

  private void show(Axis axis, Slider from, Slider to, Label words) {
    showing = true;
    Range range = range(axis);
    from.setValue(range.from());
    to.setValue(range.to());
    showing = false;
    words.setText(
        "Kept "
            + axis.words()
            + ": "
            + length(axis, range.from())
            + " to "
            + length(axis, range.to()));
  }

  private String length(Axis axis, double share) {
    return Lengths.format(share * picture.size(axis), model.units().get());
  }
}
