package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.picture.DeckScene;
import org.underlee.picture.Image;
import org.underlee.picture.Png;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Renderer;
import org.underlee.picture.Scene;
import org.underlee.report.DesignJson;
import org.underlee.report.TakeoffCsv;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;

/**
 * What the program makes of each sample, as committed in its {@code expected} folder. After a
 * change that is meant, run with {@code -Dunderlee.rewrite=true} and read the difference.
 */
class ExpectedOutputTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", ".."));

  static Stream<SampleDeck> samples() {
    return SampleDecks.all().stream();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void designAndTakeoffAreAsExpected(SampleDeck sample) throws IOException {
    Design design = design(sample);
    assertSame(sample, "design.json", DesignJson.write(design));
    assertSame(sample, "takeoff.csv", TakeoffCsv.write(design.takeoff()));
  }

  @Test
  void anExpectationFailsWhenOneNumberChanges() throws IOException {
    SampleDeck sample = SampleDecks.all().get(0);
    String right = TakeoffCsv.write(design(sample).takeoff());
    assertThat(right.replaceFirst("(?<metres>\\d+\\.\\d+),m,", "${metres}9,m,"))
        .isNotEqualTo(right)
        .isNotEqualTo(Files.readString(expected(sample, "takeoff.csv")));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void theSameBytesComeOutInAnyLocaleAndTimeZone(SampleDeck sample) throws IOException {
    String here = DesignJson.write(design(sample));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      for (String tag : List.of("de-DE", "tr-TR", "ar-EG", "hi-IN-u-nu-deva")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
        Design there = design(sample);
        assertThat(DesignJson.write(there)).isEqualTo(here);
        assertThat(there.written().bytes()).isEqualTo(design(sample).written().bytes());
      }
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  /** Pixels are compared, not bytes: packing differs from one Java to the next. */
  @Test
  void theReadmesPictureIsWhatTheProgramDraws() throws IOException {
    Design design = design(SampleDecks.all().get(0));
    Scene scene =
        DeckScene.of(
            design.survey().framing(),
            design.survey().model().elements(),
            Optional.of(design.layout()));
    RasterSettings settings = RasterSettings.of(1600, 1000).withThreads(2);
    Image drawn =
        Renderer.draw(
            scene,
            DeckScene.fromBelow(
                design.survey().framing(), Optional.of(design.layout()), scene, settings.aspect()),
            settings);
    Path file = ROOT.resolve("docs/images/pine-deck-below.png");
    byte[] png = Png.encode(drawn);
    rewrite(file, png);
    var committed = ImageIO.read(file.toFile());
    var fresh = ImageIO.read(new ByteArrayInputStream(png));
    int different = 0;
    for (int y = 0; y < fresh.getHeight(); y++) {
      for (int x = 0; x < fresh.getWidth(); x++) {
        different += committed.getRGB(x, y) == fresh.getRGB(x, y) ? 0 : 1;
      }
    }
    assertThat(different).isZero();
  }

  private static void assertSame(SampleDeck sample, String name, String text) throws IOException {
    Path file = expected(sample, name);
    rewrite(file, text.getBytes(StandardCharsets.UTF_8));
    assertThat(Files.readString(file)).isEqualTo(text);
  }

  private static void rewrite(Path file, byte[] bytes) throws IOException {
    if (Boolean.getBoolean("underlee.rewrite")) {
      Files.write(file, bytes);
    }
  }

  private static Path expected(SampleDeck sample, String name) {
    return ROOT.resolve("samples").resolve(sample.name()).resolve("expected").resolve(name);
  }

  private static Design design(SampleDeck sample) {
    Path model = ROOT.resolve("samples").resolve(sample.name()).resolve(sample.name() + ".ifc");
    return DeckRun.design(DeckRun.survey(model), Scope.OUTSIDE, KitReader.builtIn());
  }
}
