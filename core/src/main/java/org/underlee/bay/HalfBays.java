package org.underlee.bay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;

/**
 * The bays of one half, in its frame.
 *
 * @param onward whether it falls as the whole field did; else it is turned round
 */
record HalfBays(Field whole, Field half, boolean onward) {
  FieldBays of(List<Bay> bays, double line) {
    Map<String, JoistLine> lines = new HashMap<>();
    half.lines().forEach(l -> lines.put(l.id(), l));
    List<Bay> own = new ArrayList<>();
    for (Bay bay : bays) {
      Interval stretch = turned(bay.stretch()).meet(new Interval(0, Double.POSITIVE_INFINITY));
      Optional<JoistLine> left = Optional.ofNullable(lines.get(first(bay).id()));
      Optional<JoistLine> right = Optional.ofNullable(lines.get(second(bay).id()));
      if (stretch.length() > BayFinder.SHORTEST && left.isPresent() && right.isPresent()) {
        own.add(bay(bay, line, stretch, left.get(), right.get()));
      }
    }
    return new FieldBays(half, own);
  }

  private JoistLine first(Bay bay) {
    return onward ? bay.left() : bay.right();
  }

  private JoistLine second(Bay bay) {
    return onward ? bay.right() : bay.left();
  }

  private Bay bay(Bay bay, double line, Interval shared, JoistLine left, JoistLine right) {
    Optional<Block> closing =
        shared.from() > 0 ? Optional.empty() : HighLinePlaces.closing(bay, line);
    Interval stretch =
        closing.map(c -> new Interval(turned(c.stretch()).to(), shared.to())).orElse(shared);
    Optional<Support> before = onward ? bay.low() : bay.high();
    Optional<Support> behind = onward ? bay.high() : bay.low();
    Optional<Support> high =
        shared.from() > 0
            ? behind.flatMap(this::support)
            : closing.flatMap(c -> half.high().stream().filter(s -> is(s, c)).findFirst());
    Bay bare =
        new Bay(
            bay.id(),
            left,
            right,
            stretch,
            high,
            before.flatMap(this::support),
            List.of(),
            List.of(),
            List.of());
    return bare.with(
        bay.id(),
        blocks(bare, bay.blocking()),
        blocks(bare, bay.bridging()),
        crossings(bare, bay.crossings()));
  }

  private static boolean is(Support support, Block block) {
    return support.member().equals(block.member());
  }

  private Optional<Support> support(Support given) {
    return Stream.concat(half.high().stream(), half.low().stream())
        .filter(s -> s.member().equals(given.member()))
        .findFirst();
  }

  private List<Block> blocks(Bay bay, List<Block> given) {
    return given.stream()
        .map(b -> block(bay, b))
        .filter(b -> bay.stretch().contains(b.stretch().middle()))
        .sorted(Comparator.comparingDouble(Block::at))
        .toList();
  }

  private Block block(Bay bay, Block b) {
    Interval stretch = turned(b.stretch());
    return new Block(
        b.member(), stretch, lifted(b.heights()), b.bottom(), stretch.middle() - start(bay));
  }

  private List<Crossing> crossings(Bay bay, List<Crossing> given) {
    return given.stream()
        .filter(c -> !turned(c.stretch()).meet(bay.stretch()).isEmpty())
        .map(c -> crossing(bay, c))
        .sorted(Comparator.comparingDouble(Crossing::at))
        .toList();
  }

  private Crossing crossing(Bay bay, Crossing c) {
    Interval stretch = turned(c.stretch()).meet(bay.stretch());
    Interval across = shifted(c.acrossStretch());
    return new Crossing(
        c.element(),
        c.insulation(),
        c.way(),
        c.size(),
        c.round(),
        stretch.middle() - start(bay),
        across.middle() - bay.left().rightAt(stretch.middle()),
        stretch,
        across,
        lifted(c.heights()));
  }

  private static double start(Bay bay) {
    return bay.stretch().from();
  }

  /** Stations of the whole field in the half's frame. */
  private Interval turned(Interval along) {
    double line = whole.frame().toLocal(half.frame().origin()).y();
    return onward
        ? new Interval(along.from() - line, along.to() - line)
        : new Interval(line - along.to(), line - along.from());
  }

  private Interval shifted(Interval across) {
    double u = whole.frame().toLocal(half.frame().origin()).x();
    return onward
        ? new Interval(across.from() - u, across.to() - u)
        : new Interval(u - across.to(), u - across.from());
  }

  private Interval lifted(Interval heights) {
    double w = whole.frame().toLocal(half.frame().origin()).z();
    return new Interval(heights.from() - w, heights.to() - w);
  }
}
