package org.underlee.panel.view;

import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.control.ContextMenu;
import javafx.scene.input.ContextMenuEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.StackPane;
import org.underlee.geom.Vec2;
import org.underlee.panel.model.FlatPicture;

/** A plan or a section: drag to move, wheel to zoom, double click to see all of it. */
final class FlatView extends StackPane {
  private static final double STILL = 3;

  /** A hand this many pixels beside something means it. */
  private static final double REACH = 12;

  private static final double WHEEL = 0.0018;
  private static final double KEY_STEP = 60;

  private final FlatPicture picture;
  private final ImagePane pane;
  private final Optional<Handles> handles;
  private Optional<ContextMenu> menu = Optional.empty();
  private boolean holds;
  private double x;
  private double y;
  private double pressedX;
  private double pressedY;

  /** What a hand can take hold of in a drawing. */
  interface Handles {
    /**
     * Takes hold of what is at a place.
     *
     * @param reach how far beside it still counts, metres
     * @return whether something is there
     */
    boolean grasp(Vec2 place, double reach);

    void drag(Vec2 place);

    void drop();

    /** A place is pointed at, with {@code reach} as above. */
    void point(Vec2 place, double reach);

    /** What can be done at the place that was pointed at. */
    ContextMenu menu();
  }

  FlatView(String id, String words, FlatPicture picture, Optional<Handles> handles) {
    this.handles = handles;
    this.picture = picture;
    pane = new ImagePane((w, h) -> picture.resize(w, h, scale()));
    pane.setId(id);
    pane.setAccessibleText(words + "; arrow keys move it, plus and minus zoom, Home shows all");
    picture.image().addListener((o, before, now) -> pane.show(now));
    pane.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
    pane.setOnMouseDragged(this::drag);
    pane.setOnMouseReleased(this::release);
    pane.setOnScroll(this::scroll);
    pane.setOnKeyPressed(this::key);
    pane.setOnContextMenuRequested(this::menu);
    getChildren().add(pane);
  }

  @Override
  public void requestFocus() {
    pane.requestFocus();
  }

  private double scale() {
    return pane.scale();
  }

  private void press(MouseEvent e) {
    x = e.getX();
    y = e.getY();
    pressedX = x;
    pressedY = y;
    closeMenu();
    holds =
        e.isPrimaryButtonDown() && handles.map(h -> h.grasp(place(x, y), reach())).orElse(false);
  }

  private Vec2 place(double onX, double onY) {
    return picture.place(onX * scale(), onY * scale());
  }

  private double reach() {
    return place(REACH, 0).minus(place(0, 0)).length();
  }

  /** A right button that is let go where it was pressed asks what can be done there. */
  private void menu(double onX, double onY) {
    handles.ifPresent(
        h -> {
          ContextMenu shown = h.menu();
          menu = Optional.of(shown);
          Point2D at = pane.localToScreen(onX, onY);
          shown.show(pane, at.getX(), at.getY());
        });
  }

  /** With keys it is asked about what is selected. */
  private void menu(ContextMenuEvent e) {
    if (e.isKeyboardTrigger()) {
      closeMenu();
      menu(pane.getWidth() / 2, pane.getHeight() / 2);
    }
    e.consume();
  }

  private void closeMenu() {
    menu.ifPresent(ContextMenu::hide);
    menu = Optional.empty();
  }

  private void drag(MouseEvent e) {
    if (holds) {
      handles.ifPresent(h -> h.drag(place(e.getX(), e.getY())));
      return;
    }
    picture.move((e.getX() - x) * scale(), (e.getY() - y) * scale());
    x = e.getX();
    y = e.getY();
  }

  private void release(MouseEvent e) {
    if (holds) {
      holds = false;
      handles.ifPresent(Handles::drop);
    } else if (e.getClickCount() == 2) {
      picture.fit();
    } else if (Math.hypot(e.getX() - pressedX, e.getY() - pressedY) < STILL) {
      handles.ifPresent(h -> h.point(place(e.getX(), e.getY()), reach()));
      if (e.getButton() == MouseButton.SECONDARY) {
        menu(e.getX(), e.getY());
      }
    }
  }

  private void scroll(ScrollEvent e) {
    picture.zoom(Math.exp(-e.getDeltaY() * WHEEL), e.getX() * scale(), e.getY() * scale());
  }

  private void key(KeyEvent e) {
    double middleX = pane.getWidth() * scale() / 2;
    double middleY = pane.getHeight() * scale() / 2;
    switch (e.getCode()) {
      case LEFT -> picture.move(KEY_STEP, 0);
      case RIGHT -> picture.move(-KEY_STEP, 0);
      case UP -> picture.move(0, KEY_STEP);
      case DOWN -> picture.move(0, -KEY_STEP);
      case PLUS, ADD, EQUALS -> picture.zoom(1 / 1.15, middleX, middleY);
      case MINUS, SUBTRACT -> picture.zoom(1.15, middleX, middleY);
      case HOME -> picture.fit();
      default -> {
        return;
      }
    }
    e.consume();
  }
}
