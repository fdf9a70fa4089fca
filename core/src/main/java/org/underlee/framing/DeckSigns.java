package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.geom.Interval;

/**
 * What shows that people walk on a field in the rain: boards with open joints, and a guard.
 *
 * @param boards level bars and coverings that may be boards
 * @param posts everything upright
 * @param railings as the author classed them
 */
record DeckSigns(MemberIndex boards, Posts posts, List<BuildingElement> railings) {
  /** The joint between deck boards that lets rain through. */
  private static final Interval OPEN_JOINT = new Interval(0.002, 0.02);

  private static final int FEWEST_JOINTS = 3;

  /** A railing's foot is this near to the joists' tops, or beside the joists. */
  private static final Interval RAILING_FOOT = new Interval(-0.5, 0.3);

  private static final double RAILING_AWAY = 0.2;

  /** Boards with gaps between them that lie on the field. */
  Optional<String> boards(Field field) {
    List<Interval> widths = new ArrayList<>();
    for (Member m : boards.near(field.bounds().grown(0.1))) {
      if (Roles.isBoardOn(m, field)) {
        widths.add(field.shapeOf(m).along());
      }
    }
    widths.sort(Comparator.comparingDouble(Interval::from));
    int open = 0;
    for (int i = 1; i < widths.size(); i++) {
      open += OPEN_JOINT.contains(widths.get(i).from() - widths.get(i - 1).to()) ? 1 : 0;
    }
    return open >= FEWEST_JOINTS
        ? Optional.of(widths.size() + " boards with open joints lie on it")
        : Optional.empty();
  }

  /** Guard posts or a railing at the field's edge. */
  Optional<String> guard(Field field) {
    if (!Roles.guardsOf(field, posts).isEmpty()) {
      return Optional.of("guard posts stand at its edge");
    }
    Interval foot =
        new Interval(field.top() + RAILING_FOOT.from(), field.top() + RAILING_FOOT.to());
    return railings.stream()
            .map(r -> r.shape().bounds())
            .filter(b -> foot.contains(b.min().z()))
            .anyMatch(b -> b.meets(field.bounds().grown(RAILING_AWAY)))
        ? Optional.of("a railing stands at its edge")
        : Optional.empty();
  }
}
