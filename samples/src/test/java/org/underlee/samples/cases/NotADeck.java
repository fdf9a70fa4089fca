package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/**
 * Framing that is no deck: a floor between storeys, a floor above a crawl space, a flat roof, a
 * pitched roof, trusses, sleepers on a slab. Nothing of it may be said to be an outside deck.
 */
final class NotADeck implements FramingCase {
  private enum Kinds {
    FLOOR,
    CRAWL_SPACE,
    FLAT_ROOF,
    PITCHED_ROOF,
    TRUSSES,
    SLEEPERS
  }

  @Override
  public String name() {
    return "floors, roofs, trusses and sleepers are no decks";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 6 + random.nextInt(6);
    double run = 3000 + random.nextInt(2000);
    double width = (n - 1) * yard.spacing + yard.w;
    Kinds kind = Kinds.values()[random.nextInt(Kinds.values().length)];
    switch (kind) {
      case FLOOR -> {
        joists(yard, n, -100, run + 100, yard.top);
        house(yard, width, run, 0, yard.top + 2500);
      }
      case CRAWL_SPACE -> {
        joists(yard, n, 0, run, yard.d + 150);
        house(yard, width, run, -300, 2700);
      }
      case FLAT_ROOF -> {
        joists(yard, n, -100, run + 100, yard.top);
        house(yard, width, run, 0, yard.bottom());
        house(yard, "parapet-", width, run, yard.bottom(), yard.top + 300);
      }
      case PITCHED_ROOF -> {
        for (int i = 0; i < n; i++) {
          rafter(yard, "rafter-" + i, i * yard.spacing, run, yard.pick(8, 20, 35));
        }
        house(yard, width, run, 0, yard.bottom());
      }
      case TRUSSES -> {
        joists(yard, n, 0, run, yard.top);
        for (int i = 0; i < n; i++) {
          rafter(yard, "left-" + i, i * yard.spacing, run / 2, 30);
        }
        house(yard, width, run, 0, yard.bottom());
      }
      case SLEEPERS -> {
        joists(yard, n, 0, run, yard.d);
        yard.slab("slab", -500, -500, width + 500, run + 500, -150, 0);
      }
    }
    return yard.model();
  }

  private static void joists(Yard yard, int n, double from, double to, double top) {
    for (int i = 0; i < n; i++) {
      double u = i * yard.spacing;
      Body body = Shapes.box(yard.random.nextInt(3), u, from, top - yard.d, u + yard.w, to, top);
      yard.add("bar-" + i, Kind.BAR, "joist|sleeper|none", Yard.UPSTAIRS, body);
    }
  }

  private static void rafter(Yard yard, String key, double u, double run, double degrees) {
    double rise = run * Math.tan(Math.toRadians(degrees));
    Xyz axis = new Xyz(0, run, rise).unit();
    List<double[]> section = Shapes.rectangle(-yard.w / 2, -yard.d / 2, yard.w / 2, yard.d / 2);
    Xyz start = new Xyz(u, 0, yard.top);
    Xyz end = start.plus(axis.times(Math.hypot(run, rise)));
    yard.add(key, Kind.BAR, "none", Yard.UPSTAIRS, Shapes.between(section, start, end));
  }

  private static void house(Yard yard, double width, double run, double z0, double z1) {
    house(yard, "wall-", width, run, z0, z1);
  }

  private static void house(Yard yard, String key, double width, double run, double z0, double z1) {
    double a = -400;
    double b = width + 400;
    yard.wall(key + "south", a - 200, -200, b + 200, 0, z0, z1);
    yard.wall(key + "north", a - 200, run, b + 200, run + 200, z0, z1);
    yard.wall(key + "west", a - 200, 0, a, run, z0, z1);
    yard.wall(key + "east", b, 0, b + 200, run, z0, z1);
  }
}
