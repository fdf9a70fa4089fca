package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Frame;
import org.underlee.samples.Xyz;

/**
 * A deck that falls by up to 3 % away from the house, as a whole: with one span, or with two that
 * meet at a flush beam.
 */
final class SlopedDeck implements FramingCase {
  @Override
  public String name() {
    return "decks that slope, one span or two";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 5 + random.nextInt(4);
    double width = (n - 1) * yard.spacing + yard.w;
    double run = 2000 + random.nextInt(1500);
    boolean two = random.nextBoolean();
    double fall = yard.between(0.002, 0.03);
    double cosine = 1 / Math.hypot(1, fall);
    Xyz v = new Xyz(0, cosine, -fall * cosine);
    Frame tilt = Frame.of(new Xyz(0, 0, yard.top), Xyz.X, v);
    // level and free over the whole depth: the faces at both ends lean
    double clear = (run - yard.d * fall) * cosine;
    List<Truth.Field> fields = new ArrayList<>();
    Plot near = yard.plot("near", 0, 0, Xyz.Y);
    double beam = 2 * yard.w;
    for (int i = 0; i < n; i++) {
      near.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
    }
    near.ledger(0, width);
    if (two) {
      near.support("beam", "flush-beam", "beams", 0, run, width, run + beam);
    } else {
      near.rim(run, 0, width);
    }
    fields.add(near.field(near.bays(Plot.at(0), Plot.at(clear))));
    if (two) {
      Plot far = yard.plot("far", 0, run + beam, Xyz.Y);
      for (int i = 0; i < n; i++) {
        far.line("k" + i, "joist", 1, i * yard.spacing, 0, run);
      }
      far.rim(run, 0, width).listsKey("beams", "near/beam");
      fields.add(far.field(far.bays(Plot.at(0), Plot.at(clear))));
    }
    return tilted(yard, tilt, width, run, fields);
  }

  /** The whole deck tilted; the posts under the middle beam stay plumb. */
  private static Model tilted(
      Yard yard, Frame tilt, double width, double run, List<Truth.Field> fields) {
    List<Piece> pieces = new ArrayList<>(yard.pieces);
    yard.pieces.clear();
    Frame down = Frame.at(new Xyz(0, 0, -yard.top));
    for (Piece p : pieces) {
      List<Body> bodies = p.bodies().stream().map(b -> b.in(down).in(tilt)).toList();
      yard.pieces.add(new Piece(p.key(), p.kind(), p.role(), p.level(), bodies));
    }
    Plot ground = yard.plot("ground", 0, 0, Xyz.Y);
    if (fields.size() == 2) {
      for (double u : new double[] {300, width - 300}) {
        Xyz at = tilt.point(new Xyz(u, run + yard.w, -yard.d));
        ground.post("post-" + u, at.x(), at.y(), at.z());
      }
      fields.forEach(f -> f.supports().put("posts", ground.supports.get("posts")));
    }
    yard.wall("house", -1500, -yard.w - 230, width + 1500, -yard.w - 5, 0, yard.top + 2400);
    return yard.model(new Truth.Deck(true, fields));
  }
}
