package org.underlee.framing;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.finding.StopSign;
import org.underlee.geom.Interval;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;

/** Turns a set of joists into a field: which way it falls, its lines, and what holds them. */
final class FieldFinder {
  /** Joists that meet over a beam, end to end or lapped, end this near to it. */
  private static final double SPLICE = 0.4;

  private final MemberIndex all;
  private final MemberIndex level;
  private final Posts posts;
  private final HouseWalls walls;
  private final Set<Member> allJoists;
  private final Supports supports;
  private final Tolerance tolerance;

  FieldFinder(
      MemberIndex all,
      MemberIndex level,
      Posts posts,
      HouseWalls walls,
      Set<Member> allJoists,
      Tolerance tolerance) {
    this.all = all;
    this.level = level;
    this.posts = posts;
    this.walls = walls;
    this.allJoists = allJoists;
    this.tolerance = tolerance;
    this.supports =
        new Supports(
            level, posts, walls, allJoists, new MemberIndex(List.copyOf(allJoists)), tolerance);
  }

  /** What stands around the joists, told in a first frame whose y runs along them. */
  private record Around(Set<Member> tail, Set<Member> tip, Map<Member, Interval> beams) {}

  /** A set of joists with what stands around it; told once. */
  private record Prepared(
      List<Member> joists, Transform along, Around around, FallDirection.Ends ends) {}

  /** The fields, in the order of their sets. Those on a wall are settled first, outward from it. */
  List<Field> findAll(List<List<Member>> sets) {
    StopSign stop = StopSign.here();
    List<Prepared> prepared =
        sets.parallelStream().peek(s -> stop.obey()).map(this::prepared).toList();
    Waiting waiting = new Waiting(prepared);
    Map<Integer, Field> found = new TreeMap<>();
    Set<Member> lowEnds = new HashSet<>();
    waiting.ask(IntStream.range(0, sets.size()).boxed().toList(), lowEnds);
    for (int next = waiting.next(); next >= 0; next = waiting.next()) {
      stop.obey();
      Field field = find(prepared.get(next), lowEnds);
      Set<Member> added = new HashSet<>();
      addLowEnds(field, added);
      lowEnds.addAll(added);
      waiting.ask(waiting.besides(added), lowEnds);
      found.put(next, field);
    }
    return List.copyOf(found.values());
  }

  /**
   * The sets that are not yet fields. Which of them have a known direction is asked again only
   * where another field has ended on what stands around them.
   */
  private final class Waiting {
    private final List<Prepared> sets;
    private final TreeSet<Integer> left = new TreeSet<>();
    private final TreeSet<Integer> known = new TreeSet<>();
    private final Map<Member, Set<Integer>> beside = new HashMap<>();

    Waiting(List<Prepared> sets) {
      this.sets = sets;
      for (int i = 0; i < sets.size(); i++) {
        int own = i;
        left.add(i);
        FallDirection.Ends ends = sets.get(i).ends;
        Stream.of(ends.bounds(), ends.beams())
            .flatMap(List::stream)
            .flatMap(Set::stream)
            .forEach(m -> beside.computeIfAbsent(m, k -> new TreeSet<>()).add(own));
      }
    }

    Set<Integer> besides(Set<Member> members) {
      Set<Integer> asked = new TreeSet<>();
      members.forEach(m -> asked.addAll(beside.getOrDefault(m, Set.of())));
      return asked;
    }

    void ask(Collection<Integer> asked, Set<Member> lowEnds) {
      for (int i : asked) {
        if (left.contains(i)
            && FallDirection.isKnown(sets.get(i).ends, walls, lowEnds, sets.get(i).along)) {
          known.add(i);
        } else {
          known.remove(i);
        }
      }
    }

    /** The first set whose direction is known by now, else the first one left; −1 for none. */
    int next() {
      Integer next = known.isEmpty() ? left.pollFirst() : known.pollFirst();
      if (next == null) {
        return -1;
      }
      left.remove(next);
      return next;
    }
  }

  private Prepared prepared(List<Member> joists) {
    Transform along = FieldFrame.along(joists);
    Around around = around(joists, along);
    return new Prepared(joists, along, around, ends(joists, around, along));
  }

  /**
   * What joists further from the house may end on: the rim, or a beam below the joists' low end.
   */
  private static void addLowEnds(Field field, Set<Member> lowEnds) {
    double end = field.lines().stream().mapToDouble(l -> l.stretch().to()).max().orElse(0);
    field.low().forEach(s -> lowEnds.add(s.member()));
    field.dropBeams().stream()
        .filter(s -> s.shape().along().to() >= end - SPLICE)
        .forEach(s -> lowEnds.add(s.member()));
  }

  private Field find(Prepared set, Set<Member> lowEnds) {
    List<Member> joists = set.joists;
    Transform along = set.along;
    Around around = set.around;
    FallDirection fall = FallDirection.decide(set.ends, walls, lowEnds, posts, along);
    Transform turned = fall.tipIsHigh() ? FieldFrame.turnedRound(along) : along;
    Set<Member> high = fall.tipIsHigh() ? around.tip : around.tail;
    Set<Member> low = fall.tipIsHigh() ? around.tail : around.tip;
    Transform squared = FieldFrame.squaredTo(high.isEmpty() ? low : high, turned);
    Transform frame = FieldFrame.placed(squared, joists, high, tolerance);
    List<JoistLine> lines = new JoistLines(frame, tolerance).of(joists);
    low = continuing(low, high, joists, frame);
    List<Support> highSupports = supports.bounding(high, true, joists, frame);
    List<Support> lowSupports = supports.bounding(low, false, joists, frame);
    List<Support> drop = Supports.drops(around.beams.keySet(), frame);
    List<Support> carriers =
        new Carriers(level, allJoists, tolerance).of(highSupports, lowSupports, drop, frame);
    return new Field(
        "",
        frame,
        lines,
        highSupports,
        lowSupports,
        drop,
        carriers,
        postsUnder(high, low, carrying(drop, carriers), joists),
        Blocking.between(lines, all, Set.copyOf(joists), frame),
        joists.get(0).element().storey(),
        fall.why(),
        fall.assumed(),
        Optional.empty());
  }

  private static Set<Member> carrying(List<Support> drop, List<Support> carriers) {
    return Stream.of(drop, carriers)
        .flatMap(List::stream)
        .map(Support::member)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private Set<Member> continuing(
      Set<Member> low, Set<Member> high, List<Member> joists, Transform frame) {
    Set<Member> found =
        new Bounds(level, Set.copyOf(joists), tolerance)
            .continuing(low, FieldFrame.across(joists, frame), frame);
    found.removeIf(m -> high.contains(m) && !low.contains(m));
    return found;
  }

  private Around around(List<Member> joists, Transform frame) {
    Bounds bounds = new Bounds(level, Set.copyOf(joists), tolerance);
    Set<Member> tail = new LinkedHashSet<>();
    Set<Member> tip = new LinkedHashSet<>();
    Map<Member, Interval> beams = new LinkedHashMap<>();
    for (Member joist : joists) {
      tail.addAll(bounds.at(joist, -1, frame));
      tip.addAll(bounds.at(joist, 1, frame));
      for (Member beam : bounds.below(joist, frame)) {
        beams.put(beam, PlanShape.of(beam.element().shape(), frame).along());
      }
    }
    return new Around(tail, tip, beams);
  }

  private static FallDirection.Ends ends(List<Member> joists, Around around, Transform frame) {
    Interval run = FieldFrame.stretch(joists, frame);
    double share =
        around.beams.values().stream()
            .mapToDouble(i -> (i.middle() - run.from()) / run.length())
            .average()
            .orElse(0.5);
    Set<Member> nearTail = new LinkedHashSet<>();
    Set<Member> nearTip = new LinkedHashSet<>();
    around.beams.forEach(
        (beam, along) -> {
          if (along.from() <= run.from() + SPLICE) {
            nearTail.add(beam);
          }
          if (along.to() >= run.to() - SPLICE) {
            nearTip.add(beam);
          }
        });
    return new FallDirection.Ends(
        List.of(around.tail, around.tip),
        List.of(nearTail, nearTip),
        share,
        !around.beams.isEmpty());
  }

  private List<Member> postsUnder(
      Set<Member> high, Set<Member> low, Set<Member> beams, List<Member> joists) {
    Set<Member> carried = new LinkedHashSet<>(beams);
    carried.addAll(low);
    carried.addAll(high);
    carried.addAll(joists);
    double top = joists.stream().mapToDouble(j -> j.box().top()).max().orElse(0);
    Set<Member> found = new LinkedHashSet<>();
    for (Member m : carried) {
      posts.carrying(m).stream()
          .filter(p -> !posts.isGuardOn(p, m, top))
          .filter(p -> rootedBelow(p.box(), m.box()))
          .forEach(found::add);
    }
    return List.copyOf(found);
  }

  private static boolean rootedBelow(OrientedBox post, OrientedBox carried) {
    return post.bottom() < carried.bottom();
  }
}
