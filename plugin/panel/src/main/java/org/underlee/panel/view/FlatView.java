package org.underlee.panel.view;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.input.KeyEvent;
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
  private final Consumer<Vec2> clicked;
  private final Optional<Handles> handles;
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
  }

  /**
   * @param clicked told the place of the drawing that was clicked
   */
  FlatView(
      String id,
      String words,
      FlatPicture picture,
      Consumer<Vec2> clicked,
      Optional<Handles> handles) {
    this.handles = handles;
    this.picture = picture;
    this.clicked = clicked;
    pane = new ImagePane((w, h) -> picture.resize(w, h, scale()));
    pane.setId(id);
    pane.setAccessibleText(words + "; arrow keys move it, plus and minus zoom, Home shows all");
    picture.image().addListener((o, before, now) -> now.ifPresent(pane::show));
    pane.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
    pane.setOnMouseDragged(this::drag);
    pane.setOnMouseReleased(this::release);
    pane.setOnScroll(this::scroll);
    pane.setOnKeyPressed(this::key);
    getChildren().add(pane);
  }

  private double scale() {
    return pane.scale();
  }

  private void press(MouseEvent e) {
    x = e.getX();
    y = e.getY();
    pressedX = x;
    pressedY = y;
    Vec2 at = place(e);
    Vec2 beside = picture.place((x + REACH) * scale(), y * scale());
    double reach = beside.minus(at).length();
    holds = e.isPrimaryButtonDown() && handles.map(h -> h.grasp(at, reach)).orElse(false);
  }

  private Vec2 place(MouseEvent e) {
    return picture.place(e.getX() * scale(), e.getY() * scale());
  }

  private void drag(MouseEvent e) {
    if (holds) {
      handles.ifPresent(h -> h.drag(place(e)));
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
      clicked.accept(place(e));
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
