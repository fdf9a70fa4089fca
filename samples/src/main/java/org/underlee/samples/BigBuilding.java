package org.underlee.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A tall building for measuring speed: balconies with framing on one front, and in the rooms behind
 * it walls, windows, pipes, ducts, furniture and steel, most of it nowhere near a balcony. Bodies
 * are swept, faceted, tessellated and mapped, and each element has properties, as in exports of
 * common programs. The same arguments give the same bytes.
 *
 * <p>As a program: {@code BigBuilding FILE BALCONIES OTHERS}.
 */
public final class BigBuilding {
  private static final int BALCONIES_A_STOREY = 3;
  private static final double STOREY = 3000;
  private static final double BALCONY_APART = 20_000;

  /** Rooms stand in a grid behind the front: so far apart, and so many in a row. */
  private static final double ROOM = 4000;

  private static final int ROOMS_A_ROW = 15;

  private final BuildingText text;

  private BigBuilding(Writer out) {
    this.text = new BuildingText(out);
  }

  /** The arguments: where to write, how many balconies, how many other elements. */
  public static void main(String[] args) throws IOException {
    if (args.length != 3) {
      throw new IllegalArgumentException("FILE BALCONIES OTHERS, got " + List.of(args));
    }
    write(Path.of(args[0]), Integer.parseInt(args[1]), Integer.parseInt(args[2]));
  }

  /** Writes a building with at least one balcony. */
  public static void write(Path file, int balconies, int others) throws IOException {
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
      new BigBuilding(out).building(balconies, others);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private void building(int balconies, int others) {
    int storeys = (balconies + BALCONIES_A_STOREY - 1) / BALCONIES_A_STOREY;
    text.begin(storeys, STOREY);
    for (int s = 0; s < storeys; s++) {
      List<Integer> inside = new ArrayList<>();
      int last = Math.min(balconies, (s + 1) * BALCONIES_A_STOREY);
      for (int b = s * BALCONIES_A_STOREY; b < last; b++) {
        balcony(b % BALCONIES_A_STOREY * BALCONY_APART, inside);
      }
      for (int i = others * s / storeys; i < others * (s + 1) / storeys; i++) {
        inside.add(other(i, i - others * s / storeys));
      }
      text.endStorey(inside);
    }
    text.end();
  }

  /** Joists from the front wall outwards, along −y; the tops are at the storey's level. */
  private void balcony(double x, List<Integer> inside) {
    inside.add(text.box("IFCBEAM", "Ledger", "LEDGER", x, -45, -200, 3300, 45, 200));
    for (int i = 0; i < 8; i++) {
      inside.add(text.box("IFCBEAM", "Joist", "JOIST", x + 465 * i, -1845, -200, 45, 1800, 200));
    }
    inside.add(text.box("IFCBEAM", "Rim", "BEAM", x, -1890, -200, 3300, 45, 200));
    for (double post : new double[] {x + 100, x + 3100}) {
      inside.add(text.box("IFCCOLUMN", "Post", "COLUMN", post, -1890, -2800, 100, 100, 2600));
    }
    for (int i = 0; i < 13; i++) {
      inside.add(
          text.box("IFCCOVERING", "Board", "FLOORING", x, -1885 + 145 * i, 0, 3300, 140, 28));
    }
    inside.add(text.pipe("Rain pipe", x + 700, -400, -2900, 50, 2950));
    inside.add(text.faceted("IFCRAILING", "Railing", "GUARDRAIL", x, -1930, 0, 3300, 40, 1000));
    inside.add(
        text.box("IFCWALL", "Front wall", "SOLIDWALL", x - 1000, 0, -200, 5300, 300, STOREY));
  }

  /** One thing in a room: mostly what is small and not flat, as in real buildings. */
  private int other(int number, int inStorey) {
    int room = inStorey / 20;
    double x = room % ROOMS_A_ROW * ROOM;
    int row = room / ROOMS_A_ROW;
    double y = 2000 + row * ROOM;
    double step = inStorey % 20 * 150;
    return switch (inStorey % 20) {
      case 0 -> text.box("IFCWALL", "Wall", "SOLIDWALL", x, y, 0, ROOM, 120, 2700);
      case 1 -> text.box("IFCWALL", "Wall", "SOLIDWALL", x, y, 0, 120, ROOM, 2700);
      case 2 -> text.box("IFCSLAB", "Slab", "FLOOR", x, y, -250, ROOM, ROOM, 250);
      case 3 -> text.steel("IFCBEAM", "Girder", x, y, 2650, ROOM);
      case 4 -> text.box("IFCCOLUMN", "Column", "COLUMN", x, y, 0, 300, 300, 2700);
      case 5, 6 -> text.mapped("IFCWINDOW", "Window", 0, x + step, y, 900);
      case 7 -> text.mapped("IFCDOOR", "Door", 1, x + step, y, 0);
      case 8, 9, 10, 11 -> text.pipe("Pipe " + number, x + step, y + 500, 100, 25, 2500);
      case 12 ->
          text.box("IFCDUCTSEGMENT", "Duct", "RIGIDSEGMENT", x, y + step, 2300, ROOM, 300, 200);
      case 13, 14 ->
          text.faceted("IFCFURNITURE", "Cupboard", "SHELF", x + step, y + 900, 0, 800, 400, 2000);
      case 15, 16 -> text.mapped("IFCFURNITURE", "Chair", 2, x + step, y + 1800, 0);
      case 17 -> text.tessellated("Lamp", x + step, y + 2000, 2200, 150);
      case 18 -> text.box("IFCCOVERING", "Ceiling", "CEILING", x, y, 2600, ROOM, ROOM, 30);
      default ->
          text.faceted(
              "IFCBUILDINGELEMENTPROXY",
              "Fitting",
              "NOTDEFINED",
              x + step,
              y + 2500,
              900,
              150,
              150,
              300);
    };
  }
}
