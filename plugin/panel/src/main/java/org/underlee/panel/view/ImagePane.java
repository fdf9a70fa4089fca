package org.underlee.panel.view;

import java.nio.IntBuffer;
import java.util.Optional;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;
import org.underlee.picture.Image;

/** Shows pictures that were drawn elsewhere, pixel for pixel, and says how large they should be. */
final class ImagePane extends Region {
  /** Told the size in pixels of the screen. */
  interface Resized {
    void to(int pixelsWide, int pixelsHigh);
  }

  private static final double GREATEST_SCALE = 8;

  private final ImageView view = new ImageView();

  /** Over the picture, to be seen where keys go to it. */
  private final Region ring = new Region();

  private final Resized resized;
  private @Nullable PixelBuffer<IntBuffer> pixels;

  ImagePane(Resized resized) {
    this.resized = resized;
    view.setSmooth(false);
    ring.getStyleClass().add("ring");
    ring.setMouseTransparent(true);
    getStyleClass().add("image-pane");
    getChildren().addAll(view, ring);
    setMinSize(80, 60);
    setFocusTraversable(true);
    setOnMousePressed(e -> requestFocus());
  }

  @Override
  protected void layoutChildren() {
    double scale = scale();
    view.setFitWidth(getWidth());
    view.setFitHeight(getHeight());
    ring.resizeRelocate(0, 0, getWidth(), getHeight());
    resized.to((int) Math.floor(getWidth() * scale), (int) Math.floor(getHeight() * scale));
  }

  /** Pixels a unit: above 1 on screens of high resolution. */
  double scale() {
    double scale =
        getScene() == null || getScene().getWindow() == null
            ? 1
            : getScene().getWindow().getOutputScaleX();
    // a window that is not yet on a screen has no scale to speak of
    return scale >= 1 && scale <= GREATEST_SCALE ? scale : 1;
  }

  /** Loads what a first picture needs. */
  static void rehearse() {
    ImagePane unseen = new ImagePane((w, h) -> {});
    unseen.show(Image.of(1, 1, new int[1]));
  }

  /** Shows a picture, or nothing. */
  void show(Optional<Image> image) {
    image.ifPresentOrElse(
        this::show,
        () -> {
          pixels = null;
          view.setImage(null);
        });
  }

  private void show(Image image) {
    PixelBuffer<IntBuffer> buffer = pixels;
    if (buffer == null
        || buffer.getWidth() != image.width()
        || buffer.getHeight() != image.height()) {
      buffer =
          new PixelBuffer<>(
              image.width(),
              image.height(),
              IntBuffer.allocate(image.width() * image.height()),
              PixelFormat.getIntArgbPreInstance());
      pixels = buffer;
      view.setImage(new WritableImage(buffer));
    }
    image.copyPixels(buffer.getBuffer().array());
    buffer.updateBuffer(b -> null);
  }
}
