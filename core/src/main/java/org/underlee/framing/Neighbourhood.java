package org.underlee.framing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.finding.StopSign;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.Box;
import org.underlee.geom.Tolerance;

/**
 * Where in a model deck framing may lie, told from its bars alone: what is anywhere else has no say
 * in {@link Framer} and need not be measured. Errs towards more: the framing of what reaches into
 * the neighbourhood is the framing of the whole model.
 *
 * <p>Method: the sets of bars that lie side by side as joists do; then what touches them, as beams
 * and ledgers do, and what touches that, as plies, posts and walls do; around each as much room as
 * any rule of this package looks over.
 */
public final class Neighbourhood {
  /** What holds a joist, or what it lies on, is no further from it than this. */
  private static final double TOUCH = 0.2;

  /** From the joists to what holds them, and from there to its plies. */
  private static final int STEPS = 2;

  /** Walls beside a field and boards upon it stand no further than this from its joists. */
  private static final double BESIDE = 1;

  /** A joist is half a metre long or longer, and level to within 5°. */
  private static final double SHORTEST_IN_PLAN = 0.49;

  private static final Set<String> BOARDS = Set.of("IfcCovering");

  private final STRtree places = new STRtree();

  private Neighbourhood(List<Box> boxes) {
    boxes.forEach(box -> places.insert(envelope(box), box));
    places.build();
  }

  /** Whether framing is made of elements of this class, by their places and measures alone. */
  public static boolean isMadeOf(String ifcClass) {
    return Members.CLASSES.contains(ifcClass);
  }

  /**
   * Whether an element inside of this box may be a joist, or what joins joists to anything away
   * from them: a column or a fitting is not long enough in plan.
   */
  public static boolean mayTell(Box body) {
    return body.size().horizontal().length() >= SHORTEST_IN_PLAN;
  }

  /**
   * The neighbourhood of all sets of joists.
   *
   * @param bars every element of a class that framing {@link #isMadeOf} and that {@link #mayTell};
   *     others are passed over
   */
  public static Neighbourhood of(List<BuildingElement> bars, Told told) {
    // Measured by all processors; the bars keep what was found.
    StopSign stop = StopSign.here();
    bars.parallelStream()
        .forEach(
            bar -> {
              stop.obey();
              BarMeasure.of(bar.shape());
            });
    Members members = Members.of(bars, told);
    List<Member> level = members.level().toList();
    Box all = Box.around(members.all().stream().map(Neighbourhood::around).toList());
    double far = all.isEmpty() ? 0 : Math.max(all.min().length(), all.max().length());
    List<List<Member>> sets = JoistSets.find(level, Tolerance.forCoordinates(far)).sets();
    MemberIndex index = new MemberIndex(members.all());
    List<Box> boxes = new ArrayList<>();
    for (List<Member> set : sets) {
      stop.obey();
      Box joists = Box.around(set.stream().map(Neighbourhood::around).toList());
      // A field is a rectangle turned with its joists: its corners may leave their box.
      Box field = joists.grown(BESIDE + joists.size().horizontal().length() / 2);
      boxes.add(field);
      touching(set, index).stream()
          .map(m -> around(m).grown(TOUCH))
          .filter(box -> !field.holds(box))
          .forEach(boxes::add);
    }
    return new Neighbourhood(boxes);
  }

  private static Set<Member> touching(List<Member> joists, MemberIndex index) {
    Set<Member> found = new LinkedHashSet<>(joists);
    List<Member> edge = joists;
    for (int step = 0; step < STEPS; step++) {
      List<Member> next = new ArrayList<>();
      for (Member member : edge) {
        index.near(member, TOUCH).stream().filter(found::add).forEach(next::add);
      }
      edge = next;
    }
    return found;
  }

  private static Box around(Member member) {
    Box box = Box.EMPTY;
    for (var corner : member.box().corners()) {
      box = box.with(corner);
    }
    return box;
  }

  /** Whether there are no joists, and so nothing that could be near them. */
  public boolean isEmpty() {
    return places.isEmpty();
  }

  /** Whether an element inside of this box may have a say in the framing, or in its bays. */
  public boolean concerns(String ifcClass, Box body) {
    boolean judgedByItsOwnBox =
        isMadeOf(ifcClass) || HouseWalls.CLASSES.contains(ifcClass) || BOARDS.contains(ifcClass);
    Box own = judgedByItsOwnBox ? turned(body) : body;
    Box reach = Surroundings.isStanding(ifcClass) ? own.grown(Surroundings.SIGHT) : own;
    for (Object near : places.query(envelope(reach))) {
      if (((Box) near).meets(reach)) {
        return true;
      }
    }
    return false;
  }

  /** Holds every turned box that is the tightest in its direction around a body inside of this. */
  private static Box turned(Box body) {
    // Each side of such a box is at most the diagonal long, and so its half diagonal √3/2 of that.
    double half = body.size().length() * Math.sqrt(3) / 2;
    return new Box(body.centre(), body.centre()).grown(half);
  }

  private static Envelope envelope(Box box) {
    return new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
  }
}
