package org.underlee.clash;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Fix;
import org.underlee.finding.StopSign;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Framing;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Transform;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.layout.Layouter;
import org.underlee.layout.Scope;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Finds ways out of issues: the assembly laid out again around the things, at the kit's fall and at
 * gentler ones; the thing moved; the bays left open; the pan made removable. Each is tried, and
 * told with its price, only when the thing is free then.
 */
public final class WaysOut {
  /** The kit's own fall, then gentler ones: 1/10 and 1/16 in per ft; less lets water stand. */
  private static final int[] RUNS_PER_FALL = {0, 120, 192};

  /** Other issues, the gravest first, of which each is taken for settled by itself. */
  private static final int MOST_CONDITIONS = 3;

  private static final Words AT_ONCE = Words.plain("");

  /** Issues, the gravest first, for which the assembly is laid out again. */
  private static final int MOST_TRIED = 20;

  /**
   * What is laid out again.
   *
   * @param fields their crossings include those of the services
   * @param services names of the files of services, as given
   */
  public record Again(Framing framing, List<FieldBays> fields, Kit kit, List<String> services) {
    public Again {
      fields = List.copyOf(fields);
      services = List.copyOf(services);
    }
  }

  private final Again again;
  private final List<Ours> parts;
  private final List<Theirs> things;
  private final Room own;

  private WaysOut(Again again, List<Ours> parts, List<Theirs> things) {
    this.again = again;
    this.parts = parts;
    this.things = things;
    this.own = Room.of(parts);
  }

  /** The issues with the ways out of those that are pending. */
  public static List<Tracked> add(
      List<Tracked> issues, Again again, List<Ours> parts, List<Theirs> things) {
    WaysOut ways = new WaysOut(again, parts, things);
    List<Issue> clashing = issues.stream().flatMap(t -> t.issue().stream()).toList();
    List<Tracked> all = new ArrayList<>();
    StopSign stop = StopSign.here();
    int tried = 0;
    for (Tracked t : issues) {
      stop.obey();
      boolean layOut = t.isPending() && tried++ < MOST_TRIED;
      all.add(t.isPending() ? t.with(ways.of(t.issue().orElseThrow(), clashing, layOut)) : t);
    }
    return all;
  }

  private List<WayOut> of(Issue issue, List<Issue> all, boolean layOut) {
    List<WayOut> found = new ArrayList<>();
    if (issue.cause() == Cause.HIDDEN) {
      found.add(removable(issue));
    } else if (layOut) {
      laidOut(issue, all).ifPresent(found::add);
    }
    if (issue.cause() == Cause.INTERSECT || issue.cause() == Cause.TOO_NEAR) {
      moved(issue).ifPresent(found::add);
    }
    opened(issue).ifPresent(found::add);
    return found;
  }

  /**
   * The assembly laid out again, at once where that leaves the things alone; else once another
   * issue is settled, which the way out then says, as until then it cannot be gone.
   */
  private Optional<WayOut> laidOut(Issue issue, List<Issue> all) {
    List<Issue> others = all.stream().filter(i -> !i.equals(issue)).toList();
    Optional<WayOut> now = laidOutWithout(issue, List.of(), AT_ONCE);
    if (others.isEmpty() || now.isPresent()) {
      return now;
    }
    Optional<WayOut> whenAllAreSettled =
        laidOutWithout(issue, others, Words.plain(", once the other issues are settled"));
    return whenAllAreSettled.flatMap(
        last ->
            others.stream()
                .limit(MOST_CONDITIONS)
                .flatMap(o -> laidOutWithout(issue, List.of(o), once(o)).stream())
                .findFirst()
                .or(() -> Optional.of(last)));
  }

  private static Words once(Issue settled) {
    return Words.of(", once the issue with the %s is settled", settled.worst().thing().words());
  }

  /** The steepest fall at which that is so, as if the things of settled issues were gone. */
  private Optional<WayOut> laidOutWithout(Issue issue, List<Issue> settled, Words condition) {
    Set<BuildingElement> gone =
        settled.stream()
            .flatMap(i -> i.things().stream())
            .map(Theirs::element)
            .collect(Collectors.toCollection(HashSet::new));
    issue.things().forEach(t -> gone.remove(t.element()));
    List<FieldBays> fields = again.fields().stream().map(f -> without(f, gone)).toList();
    for (int run : RUNS_PER_FALL) {
      boolean own = run == 0;
      if (own || run > again.kit().get(DrainValue.RUN_PER_FALL)) {
        Kit kit =
            own
                ? again.kit()
                : again.kit().with(DrainValue.RUN_PER_FALL, run, "a way out that is tried");
        Optional<String> fall = own ? Optional.empty() : Optional.of("1:" + run);
        Optional<WayOut> way = tried(issue, fields, kit, fall, condition);
        if (way.isPresent()) {
          return way;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<WayOut> tried(
      Issue issue, List<FieldBays> fields, Kit kit, Optional<String> fall, Words condition) {
    StopSign.here().obey();
    List<Ours> anew =
        Layouter.layOut(again.framing(), fields, Scope.OUTSIDE, kit).parts().stream()
            .map(Ours::of)
            .toList();
    if (anew.isEmpty() || !ClashFinder.find(fields, anew, issue.things()).clashes().isEmpty()) {
      return Optional.empty();
    }
    List<Fix.Option> options = new ArrayList<>();
    if (!again.services().isEmpty()) {
      options.add(new Fix.Option("--services", String.join(" ", again.services())));
    }
    fall.ifPresent(f -> options.add(new Fix.Option("--fall", f)));
    Words what =
        fall.map(f -> Words.of("lay out again around it with a fall of %s%s", f, condition))
            .orElseGet(() -> Words.of("lay out again around it%s", condition));
    return Optional.of(new WayOut(what, own.price(Room.of(anew)), options));
  }

  private static FieldBays without(FieldBays field, Set<BuildingElement> gone) {
    List<Bay> bays =
        field.bays().stream()
            .map(
                b ->
                    new Bay(
                        b.id(),
                        b.left(),
                        b.right(),
                        b.stretch(),
                        b.high(),
                        b.low(),
                        b.blocking(),
                        b.bridging(),
                        b.crossings().stream().filter(c -> !gone.contains(c.element())).toList()))
            .toList();
    return new FieldBays(field.field(), bays);
  }

  private Optional<WayOut> moved(Issue issue) {
    if (issue.things().stream().anyMatch(t -> t.kind().clearance() == 0)) {
      return Optional.empty(); // framing and the house stay where they are
    }
    return frame(issue)
        .flatMap(f -> Move.of(issue.things(), parts, things, f))
        .map(
            m -> WayOut.byHand(m.words(), Words.of("the assembly stays as it is, %s", run(issue))));
  }

  private static Words run(Issue issue) {
    double length =
        issue.things().stream()
            .mapToDouble(
                t ->
                    BarMeasure.of(t.element().shape())
                        .map(OrientedBox::length)
                        .orElseGet(() -> t.element().shape().bounds().size().length()))
            .sum();
    return Words.of("%s of it to be moved", Quantity.length(length));
  }

  private Optional<Transform> frame(Issue issue) {
    String field = issue.worst().part().field();
    return again.fields().stream()
        .filter(f -> f.field().id().equals(field))
        .map(f -> f.field().frame())
        .findFirst();
  }

  /** Without all parts of the bays that it meets, where it meets nothing else. */
  private Optional<WayOut> opened(Issue issue) {
    Set<String> bays = new LinkedHashSet<>();
    for (Clash c : issue.clashes()) {
      if (!c.part().isInBay()) {
        return Optional.empty();
      }
      bays.add(c.part().bay());
    }
    Room left = Room.of(parts.stream().filter(p -> !bays.contains(p.bay())).toList());
    Words what = Words.of("leave %s open", BayNames.inShort(bays));
    return left.area() > 0 ? Optional.of(WayOut.byHand(what, own.price(left))) : Optional.empty();
  }

  private static WayOut removable(Issue issue) {
    Ours pan = issue.worst().part();
    return WayOut.byHand(
        Words.of(
            "make %s removable: screws that come out, no sealant at its laps, and a mark below",
            pan.id()),
        Words.of("one piece of %s to take down", Quantity.length(length(pan))));
  }

  private static double length(Ours part) {
    return BarMeasure.of(part.shape())
        .map(OrientedBox::length)
        .orElseGet(() -> part.bounds().size().length());
  }
}
