package org.underlee.panel.view;

import java.util.Optional;
import javafx.animation.PauseTransition;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.control.Button;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.underlee.panel.model.Orbit;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Picture3d;
import org.underlee.panel.model.Viewpoint;
import org.underlee.picture.DeckPicture.Family;

/** The 3-D picture: drag to turn, drag with the right or middle button to move, wheel to zoom. */
final class Picture3dView extends BorderPane {
  private static final double STILL = 3;
  private static final double WHEEL = 0.0018;
  private static final double KEY_STEP = 0.05;

  private final PanelModel model;
  private final Picture3d picture;
  private final ImagePane pane;

  /** Kept here: what only listens to a property is forgotten by it. */
  private final BooleanBinding sectionOn;

  private final PauseTransition settle = new PauseTransition(Duration.millis(140));
  private double x;
  private double y;
  private double pressedX;
  private double pressedY;

  Picture3dView(PanelModel model, Actions actions) {
    this.model = model;
    this.picture = model.picture();
    this.sectionOn =
        Bindings.createBooleanBinding(
            () -> model.picture().section().get().on(), picture.section());
    this.pane = new ImagePane((w, h) -> picture.resize(w, h, scale()));
    pane.setId("picture3d");
    pane.setAccessibleText(
        "The deck in 3-D; arrow keys turn it, with Shift they move it, plus and minus zoom, Home"
            + " shows all");
    picture.image().addListener((o, before, now) -> pane.show(now));
    settle.setOnFinished(e -> picture.settle());
    pane.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
    pane.setOnMouseDragged(this::drag);
    pane.setOnMouseReleased(this::release);
    pane.setOnScroll(this::scroll);
    pane.setOnKeyPressed(this::key);
    setTop(new VBox(tools(actions), new SectionView(model, actions)));
    setCenter(new PicturePlace(model, pane));
  }

  @Override
  public void requestFocus() {
    pane.requestFocus();
  }

  private double scale() {
    return pane.scale();
  }

  /** In lines, as many as large letters need. */
  private FlowPane tools(Actions actions) {
    FlowPane tools = new FlowPane();
    tools.getStyleClass().add("picture-tools");
    for (Viewpoint view : Viewpoint.values()) {
      Button button = new Button(view.toString());
      button.setId("view-" + view.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
      button.getStyleClass().add("icon-button");
      button.setAccessibleText("Look at the deck: " + view);
      button.setOnAction(e -> picture.look(view));
      tools.getChildren().add(button);
    }
    MenuButton shown = new MenuButton("Show", Icons.icon("mdi2l-layers-outline"));
    shown.setId("families");
    for (Family family : Family.values()) {
      CheckMenuItem item = new CheckMenuItem(family.words());
      item.setId(family.name());
      item.setSelected(picture.isShown(family));
      item.selectedProperty().addListener((o, before, now) -> picture.show(family, now));
      shown.getItems().add(item);
    }
    shown.setOnShowing(e -> shown.getItems().forEach(this::follow));
    ToggleButton labels = actions.toggle("labels", "Labels", picture.labels());
    ToggleButton section = actions.toggle("section-box", "Section box", sectionOn);
    tools.getChildren().addAll(shown, section, labels);
    return tools;
  }

  /** Families are shown and hidden from the list of commands, too. */
  private void follow(MenuItem item) {
    if (item instanceof CheckMenuItem check) {
      check.setSelected(picture.isShown(Family.valueOf(check.getId())));
    }
  }

  private void press(MouseEvent e) {
    x = e.getX();
    y = e.getY();
    pressedX = x;
    pressedY = y;
  }

  private void drag(MouseEvent e) {
    double right = (e.getX() - x) / pane.getHeight();
    double down = (e.getY() - y) / pane.getHeight();
    x = e.getX();
    y = e.getY();
    boolean turn = e.getButton() == MouseButton.PRIMARY && !e.isShiftDown();
    move(picture.orbit().map(o -> turn ? o.turned(right, down) : o.moved(right, down)));
  }

  private void move(Optional<Orbit> next) {
    next.ifPresent(
        o -> {
          picture.move(o);
          settle.playFromStart();
        });
  }

  private void release(MouseEvent e) {
    boolean still = Math.hypot(e.getX() - pressedX, e.getY() - pressedY) < STILL;
    if (still && e.getButton() == MouseButton.PRIMARY) {
      double scale = pane.scale();
      model.selecting().pickIn3d((int) (e.getX() * scale), (int) (e.getY() * scale));
    }
  }

  private void scroll(ScrollEvent e) {
    double h = pane.getHeight();
    double right = (e.getX() - pane.getWidth() / 2) / h;
    double up = (h / 2 - e.getY()) / h;
    move(picture.orbit().map(o -> o.zoomed(Math.exp(-e.getDeltaY() * WHEEL), right, up)));
  }

  private void key(KeyEvent e) {
    if (e.getCode() == KeyCode.HOME) {
      picture.showAll();
      e.consume();
      return;
    }
    Optional<Orbit> next = picture.orbit().flatMap(o -> next(o, e));
    if (next.isPresent()) {
      move(next);
      e.consume();
    }
  }

  private static Optional<Orbit> next(Orbit o, KeyEvent e) {
    boolean shift = e.isShiftDown();
    return Optional.ofNullable(
        switch (e.getCode()) {
          case LEFT -> shift ? o.moved(KEY_STEP, 0) : o.turned(-KEY_STEP, 0);
          case RIGHT -> shift ? o.moved(-KEY_STEP, 0) : o.turned(KEY_STEP, 0);
          case UP -> shift ? o.moved(0, KEY_STEP) : o.turned(0, -KEY_STEP);
          case DOWN -> shift ? o.moved(0, -KEY_STEP) : o.turned(0, KEY_STEP);
          case PLUS, ADD, EQUALS -> o.zoomed(1 / 1.15, 0, 0);
          case MINUS, SUBTRACT -> o.zoomed(1.15, 0, 0);
          default -> null;
        });
  }
}
