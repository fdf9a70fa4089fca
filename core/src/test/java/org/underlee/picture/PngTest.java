package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class PngTest {
  @Test
  void anotherReaderFindsTheSamePixels() throws IOException {
    Scene scene = DemoDeck.scene();
    RasterSettings settings = RasterSettings.of(161, 99);
    assertReads(Renderer.draw(scene, Camera.fromBelow(scene, settings.aspect()), settings));
    assertReads(noise(1, 1));
    assertReads(noise(37, 53));
  }

  @Test
  void theSamePictureHasTheSameBytes() {
    assertThat(Png.encode(noise(20, 20))).isEqualTo(Png.encode(noise(20, 20)));
  }

  private static void assertReads(Image image) throws IOException {
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(Png.encode(image)));
    assertThat(read.getWidth()).isEqualTo(image.width());
    assertThat(read.getHeight()).isEqualTo(image.height());
    int[] pixels = read.getRGB(0, 0, image.width(), image.height(), null, 0, image.width());
    assertThat(pixels).isEqualTo(image.pixels());
  }

  private static Image noise(int width, int height) {
    int[] pixels = new Random(3).ints((long) width * height).map(c -> c | Colours.OPAQUE).toArray();
    return new Image(width, height, pixels, new int[width * height]);
  }
}
