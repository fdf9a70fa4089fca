package org.underlee.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.StopSign;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.geom.Vec3;
import org.underlee.run.BayChange.MatchedBy;

/**
 * Which bay of a new export is which of the old one: first by the GlobalIds of the joists on both
 * sides, then by place in the world, then, where a whole field has moved under new GlobalIds, by
 * the sequence of its bays. Each bay is matched once, the nearest first.
 */
final class FramingMatch {
  /** Two fields are alike in shape when widths and lengths agree to this: a saw, a unit. */
  private static final double ALIKE = 0.005;

  /** Levels further apart than this are other decks. */
  private static final double SAME_LEVEL = 0.15;

  /** A bay in its field. */
  record Placed(FieldBays field, Bay bay) {
    /** Of the names alone: geometry is much to go through each time that a bay is looked up. */
    @Override
    public int hashCode() {
      return name().hashCode();
    }

    /** {@code deck-1/field-1/B3} */
    String name() {
      return field.field().id() + "/" + bay.id();
    }

    Vec3 centre() {
      double v = bay.stretch().middle();
      double u = (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2;
      return field.field().frame().apply(new Vec3(u, v, 0));
    }

    double width() {
      return Math.min(bay.clearWidthHigh(), bay.clearWidthLow());
    }
  }

  /** A bay of the old export, and how it was known again. */
  record Found(Placed old, MatchedBy by) {}

  private record Pair(Placed old, Placed now, double distance) {}

  private final List<Placed> olds;
  private final List<Placed> news;
  private final Map<Placed, Found> found = new LinkedHashMap<>();
  private final Set<Placed> taken = new HashSet<>();

  private FramingMatch(List<FieldBays> olds, List<FieldBays> news) {
    this.olds = placed(olds);
    this.news = placed(news);
  }

  /** The old bay of each new one that has one. */
  static Map<Placed, Found> of(List<FieldBays> olds, List<FieldBays> news) {
    FramingMatch match = new FramingMatch(olds, news);
    match.nearest(FramingMatch::betweenTheSameJoists, MatchedBy.GLOBAL_ID);
    match.nearest(FramingMatch::inTheSamePlace, MatchedBy.PLACE);
    match.byShape(olds, news);
    return match.found;
  }

  static List<Placed> placed(List<FieldBays> fields) {
    return fields.stream().flatMap(f -> f.bays().stream().map(b -> new Placed(f, b))).toList();
  }

  private void nearest(BiPredicate<Placed, Placed> same, MatchedBy by) {
    StopSign stop = StopSign.here();
    List<Pair> pairs = new ArrayList<>();
    for (Placed now : news) {
      stop.obey();
      for (Placed old : olds) {
        if (!found.containsKey(now) && !taken.contains(old) && same.test(old, now)) {
          pairs.add(new Pair(old, now, old.centre().minus(now.centre()).length()));
        }
      }
    }
    pairs.sort(Comparator.comparingDouble(Pair::distance));
    pairs.forEach(p -> take(p.old, p.now, by));
  }

  private void take(Placed old, Placed now, MatchedBy by) {
    if (!found.containsKey(now) && taken.add(old)) {
      found.put(now, new Found(old, by));
    }
  }

  private static boolean betweenTheSameJoists(Placed old, Placed now) {
    boolean along =
        shared(old.bay.left(), now.bay.left()) && shared(old.bay.right(), now.bay.right());
    boolean turned =
        shared(old.bay.left(), now.bay.right()) && shared(old.bay.right(), now.bay.left());
    return along || turned;
  }

  private static boolean shared(JoistLine a, JoistLine b) {
    Set<String> ids = a.plies().stream().map(Member::id).collect(Collectors.toSet());
    return b.plies().stream().map(Member::id).anyMatch(ids::contains);
  }

  /** Whether each has its middle in the other, as good as. */
  private static boolean inTheSamePlace(Placed old, Placed now) {
    Vec3 apart = old.centre().minus(now.centre());
    double half = Math.min(old.width(), now.width()) / 2;
    double across = Math.abs(apart.dot(now.field.field().frame().x()));
    double along = Math.abs(apart.dot(now.field.field().frame().y()));
    double run = Math.min(old.bay.length(), now.bay.length()) / 2;
    return across < half && along < run && Math.abs(apart.z()) < SAME_LEVEL;
  }

  private void byShape(List<FieldBays> oldFields, List<FieldBays> newFields) {
    for (FieldBays now : newFields) {
      oldFields.stream()
          .filter(old -> free(old, now) && alike(old, now))
          .findFirst()
          .ifPresent(old -> inSequence(old, now));
    }
  }

  private boolean free(FieldBays old, FieldBays now) {
    return placed(List.of(now)).stream().noneMatch(found::containsKey)
        && placed(List.of(old)).stream().noneMatch(taken::contains);
  }

  private static boolean alike(FieldBays old, FieldBays now) {
    boolean alike = old.bays().size() == now.bays().size();
    for (int i = 0; alike && i < old.bays().size(); i++) {
      Bay a = old.bays().get(i);
      Bay b = now.bays().get(i);
      alike =
          Math.abs(a.clearWidthHigh() - b.clearWidthHigh()) < ALIKE
              && Math.abs(a.clearWidthLow() - b.clearWidthLow()) < ALIKE
              && Math.abs(a.length() - b.length()) < ALIKE;
    }
    return alike;
  }

  private void inSequence(FieldBays old, FieldBays now) {
    for (int i = 0; i < now.bays().size(); i++) {
      take(new Placed(old, old.bays().get(i)), new Placed(now, now.bays().get(i)), MatchedBy.SHAPE);
    }
  }

  /** The old line of each line beside a matched bay, by the old field's lines. */
  static Map<JoistLine, JoistLine> lines(Map<Placed, Found> matched) {
    Map<JoistLine, JoistLine> lines = new HashMap<>();
    matched.forEach(
        (now, f) -> {
          lines.putIfAbsent(now.bay.left(), f.old.bay.left());
          lines.putIfAbsent(now.bay.right(), f.old.bay.right());
        });
    return lines;
  }

  /** The old field that most bays of a new one come from. */
  static Optional<FieldBays> fieldOf(FieldBays now, Map<Placed, Found> matched) {
    Map<FieldBays, Long> votes =
        placed(List.of(now)).stream()
            .flatMap(p -> Optional.ofNullable(matched.get(p)).stream())
            .collect(
                Collectors.groupingBy(f -> f.old.field, LinkedHashMap::new, Collectors.counting()));
    return votes.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
  }
}
