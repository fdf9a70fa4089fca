package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.packet.pdf.PdfWriter;
import org.underlee.run.DeckRun;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The pages as another program paints them, small and grey, beside those that were looked at and
 * kept. With {@code -Dunderlee.rewrite=true} they are written anew, to be looked at again.
 */
class PacketPagesTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Path KEPT =
      ROOT.resolve("core/src/test/resources/org/underlee/report/packet/pages");
  private static final boolean REWRITE = Boolean.getBoolean("underlee.rewrite");
  private static final String DOTS_PER_INCH = "25";

  /** Versions of the painter smooth edges differently: squares of pixels are compared. */
  private static final int SQUARE = 5;

  /** Of 255: what one missing line of small text changes in a square is some 40. */
  private static final double MOST = 18;

  private Packet packet;

  @BeforeEach
  void makeThePacketOfTheSample() {
    assumeTrue(Tools.starts("pdftoppm", "-v"), "skipped: pdftoppm (poppler-utils) is not there");
    packet =
        PacketBuilder.of(
            DeckRun.design(
                DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
                Scope.OUTSIDE,
                KitReader.builtIn()),
            new Writing(UnitSystem.IMPERIAL, "en"));
  }

  @Test
  void everyPageLooksAsItDidWhenItWasLookedAtAndNotWhenARowIsMissing(@TempDir Path home)
      throws IOException, InterruptedException {
    List<Path> pages = painted(packet, Files.createDirectory(home.resolve("now")));
    if (REWRITE) {
      keep(pages);
    }
    List<Path> kept = list(KEPT);
    assertThat(pages).hasSameSizeAs(kept);
    for (int i = 0; i < kept.size(); i++) {
      assertThat(furthest(kept.get(i), pages.get(i))).as("page " + (i + 1)).isLessThan(MOST);
    }
    List<Path> altered = painted(withoutARow("plan"), Files.createDirectory(home.resolve("less")));
    assertThat(altered).hasSameSizeAs(kept);
    List<Integer> other = new ArrayList<>();
    for (int i = 0; i < kept.size(); i++) {
      if (furthest(kept.get(i), altered.get(i)) >= MOST) {
        other.add(i);
      }
    }
    assertThat(other).as("pages that differ where a row of one table is missing").hasSize(1);
  }

  private static List<Path> painted(Packet packet, Path home)
      throws IOException, InterruptedException {
    Path pdf = Files.write(home.resolve("packet.pdf"), PdfWriter.write(packet, Paper.LETTER));
    Tools.run(
        home,
        List.of("pdftoppm", "-r", DOTS_PER_INCH, "-gray", "-png", pdf.toString(), "page"),
        "");
    return list(home);
  }

  private static List<Path> list(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(".png")).sorted().toList();
    }
  }

  private static void keep(List<Path> pages) throws IOException {
    Files.createDirectories(KEPT);
    for (Path old : list(KEPT)) {
      Files.delete(old);
    }
    for (Path page : pages) {
      Files.copy(page, KEPT.resolve(page.getFileName()), StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /**
   * The greatest difference of two pages in the mean of a square; all there is where sizes differ.
   */
  private static double furthest(Path a, Path b) throws IOException {
    BufferedImage first = ImageIO.read(a.toFile());
    BufferedImage second = ImageIO.read(b.toFile());
    if (first.getWidth() != second.getWidth() || first.getHeight() != second.getHeight()) {
      return Double.POSITIVE_INFINITY;
    }
    double most = 0;
    for (int x = 0; x + SQUARE <= first.getWidth(); x++) {
      for (int y = 0; y + SQUARE <= first.getHeight(); y++) {
        most = Math.max(most, Math.abs(sum(first, x, y) - sum(second, x, y)));
      }
    }
    return most / (SQUARE * SQUARE);
  }

  private static int sum(BufferedImage image, int left, int top) {
    int sum = 0;
    for (int x = left; x < left + SQUARE; x++) {
      for (int y = top; y < top + SQUARE; y++) {
        sum += image.getRaster().getSample(x, y, 0);
      }
    }
    return sum;
  }

  private Packet withoutARow(String id) {
    List<Sheet> sheets =
        packet.sheets().stream()
            .map(
                s ->
                    s.id().equals(id)
                        ? new Sheet(
                            id,
                            s.title(),
                            s.wide(),
                            s.blocks().stream().map(PacketPagesTest::shorter).toList())
                        : s)
            .toList();
    return new Packet(
        packet.writing(),
        packet.title(),
        packet.source(),
        packet.key(),
        sheets,
        packet.bays(),
        packet.marks(),
        packet.scene(),
        packet.camera());
  }

  private static Block shorter(Block block) {
    return block instanceof Block.Table table
        ? new Block.Table(table.columns(), table.rows().subList(0, table.rows().size() - 1))
        : block;
  }
}
