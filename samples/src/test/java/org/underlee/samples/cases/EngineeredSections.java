package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** I-joists, cold-formed C and Z sections, laminated veneer: as wide as their flanges. */
final class EngineeredSections implements FramingCase {
  @Override
  public String name() {
    return "I-joists, C and Z steel, LVL";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    int kind = random.nextInt(4);
    // no narrower than the rim, which would else be a beam
    double width = kind == 3 ? deck.w : 60 + random.nextInt(30);
    List<Truth.Line> lines = new ArrayList<>();
    List<Truth.Bay> bays = new ArrayList<>();
    for (int i = 0; i < deck.u.length; i++) {
      deck.joist(
          SimpleDeck.name(i),
          Shapes.alongV(section(kind, deck, deck.u[i], width), List.of(), 0, deck.run));
      lines.add(new Truth.Line(List.of(SimpleDeck.name(i)), 1, width, deck.d));
      if (i > 0) {
        bays.add(Truth.Bay.plain(i - 1, i, deck.run, deck.u[i] - deck.u[i - 1] - width));
      }
    }
    deck.held(60);
    return deck.model(lines, bays);
  }

  private static List<double[]> section(int kind, SimpleDeck deck, double u, double width) {
    double z0 = deck.bottom();
    double z1 = deck.top;
    return switch (kind) {
      case 0 -> moved(iSection(width, deck.d, 10, 38), u, z0);
      case 1 -> moved(cSection(width, deck.d, 2), u, z0);
      case 2 -> moved(zSection(width, deck.d, 2), u, z0);
      default -> Shapes.rectangle(u, z0, u + width, z1);
    };
  }

  private static List<double[]> moved(List<double[]> ring, double u, double z) {
    List<double[]> moved = new ArrayList<>();
    ring.forEach(p -> moved.add(Shapes.at(p[0] + u, p[1] + z)));
    return Collections.unmodifiableList(moved);
  }

  private static List<double[]> iSection(double b, double h, double web, double flange) {
    double left = (b - web) / 2;
    double right = (b + web) / 2;
    return List.of(
        Shapes.at(0, 0),
        Shapes.at(b, 0),
        Shapes.at(b, flange),
        Shapes.at(right, flange),
        Shapes.at(right, h - flange),
        Shapes.at(b, h - flange),
        Shapes.at(b, h),
        Shapes.at(0, h),
        Shapes.at(0, h - flange),
        Shapes.at(left, h - flange),
        Shapes.at(left, flange),
        Shapes.at(0, flange));
  }

  private static List<double[]> cSection(double b, double h, double t) {
    double lip = 15;
    return List.of(
        Shapes.at(0, 0),
        Shapes.at(b, 0),
        Shapes.at(b, lip),
        Shapes.at(b - t, lip),
        Shapes.at(b - t, t),
        Shapes.at(t, t),
        Shapes.at(t, h - t),
        Shapes.at(b - t, h - t),
        Shapes.at(b - t, h - lip),
        Shapes.at(b, h - lip),
        Shapes.at(b, h),
        Shapes.at(0, h));
  }

  private static List<double[]> zSection(double b, double h, double t) {
    double left = (b - t) / 2;
    double right = (b + t) / 2;
    return List.of(
        Shapes.at(left, 0),
        Shapes.at(b, 0),
        Shapes.at(b, t),
        Shapes.at(right, t),
        Shapes.at(right, h),
        Shapes.at(0, h),
        Shapes.at(0, h - t),
        Shapes.at(left, h - t));
  }
}
