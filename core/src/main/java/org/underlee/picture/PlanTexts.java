package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Interval;
import org.underlee.geom.Vec2;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** What is written into the bays of a plan, each text where there is room for it. */
record PlanTexts(
    List<FieldBays> fields,
    Optional<Layout> layout,
    PlanPlaces places,
    UnitSystem units,
    Catchments catchments) {
  /** Where along a bay each usually stands, as a share of its length. */
  private static final double NAME = 0.3;

  private static final double TAG = 0.09;
  private static final double ARROW = 0.51;
  private static final double FALL = 0.7;
  private static final double WIDTH = 0.26;
  private static final double OUTLET = 0.92;

  /** Half the length of the arrow, likewise; a shorter one where there is no room. */
  private static final List<Double> HALF_ARROWS = List.of(0.09, 0.06, 0.04);

  /** From one place that is tried to the next, likewise. */
  private static final double STEP = 0.015;

  /** Names stay near the high end, and nothing comes nearer than this to an end. */
  private static final Interval NAMES = new Interval(0.04, 0.3);

  private static final Interval ALL = new Interval(0.04, 0.96);
  private static final int TRIES = 64;

  void write(PlanBuilder to, PlanRoom room, double mm) {
    if (fields.size() > 1) {
      fields.forEach(f -> to.add(room.place(name(f)))); // names of bays make way for it
    }
    fields.forEach(f -> f.bays().forEach(b -> to.add(room.place(tag(f, b)))));
    for (FieldBays field : fields) {
      Optional<FieldLayout> own = PlanFraming.of(layout, field);
      own.ifPresent(l -> new GutterTexts(field, l, places, catchments).write(to, room, mm));
      field.bays().forEach(b -> outlets(field, b, to, room));
      field.bays().forEach(b -> to.add(room.place(width(field, b))));
      field.bays().forEach(b -> own.ifPresent(l -> fall(field, b, l, to, room)));
    }
  }

  private List<PlanItem.Label> name(FieldBays field) {
    Bay middle = field.bays().get(field.bays().size() / 2);
    String name = PlanFraming.of(layout, field).map(FieldLayout::mark).orElse(field.field().id());
    return along(NAME, ALL).stream()
        .map(
            share ->
                new PlanItem.Label(
                    at(field, middle, share),
                    name,
                    PlanBuilder.TEXT_MM,
                    PlanItem.Anchor.MIDDLE,
                    0,
                    PlanStyle.TAG))
        .toList();
  }

  private List<PlanItem.Label> tag(FieldBays field, Bay bay) {
    return along(TAG, NAMES).stream()
        .map(share -> text(at(field, bay, share), bay.id(), 0, PlanStyle.TAG))
        .toList();
  }

  private void fall(FieldBays field, Bay bay, FieldLayout l, PlanBuilder to, PlanRoom room) {
    if (l.bays().contains(bay.id())) {
      String fall = "1:" + Math.round(1 / l.fall());
      to.add(room.place(turned(field, bay, FALL, within(bay, l), text(fall, PlanStyle.FALL))));
      to.add(room.place(arrows(field, bay, within(bay, l))));
    }
  }

  /** Along the bay, longer ones first. */
  private List<PlanItem.Arrow> arrows(FieldBays field, Bay bay, Interval within) {
    return HALF_ARROWS.stream()
        .flatMap(
            half ->
                along(ARROW, new Interval(within.from() + half, within.to() - half)).stream()
                    .map(
                        s ->
                            new PlanItem.Arrow(
                                at(field, bay, s - half),
                                at(field, bay, s + half),
                                false,
                                PlanStyle.FALL)))
        .toList();
  }

  /** What of a bay is drained, as shares of its length: texts about its water stand there. */
  private static Interval within(Bay bay, FieldLayout layout) {
    return new Interval(
        ALL.from(), Math.max(FALL, Math.min(1, layout.run() / bay.length()) - ALL.from()));
  }

  /** Where a field has several, which of them a bay feeds. */
  private void outlets(FieldBays field, Bay bay, PlanBuilder to, PlanRoom room) {
    if (catchments.of(field.field().id()).size() > 1) {
      List<String> marks =
          catchments.of(field.field().id(), bay.id()).stream().map(Catchments.Own::mark).toList();
      if (!marks.isEmpty()) {
        String text = String.join("+", marks);
        to.add(room.place(turned(field, bay, OUTLET, ALL, text(text, PlanStyle.NOTE))));
      }
    }
  }

  private List<PlanItem.Label> width(FieldBays field, Bay bay) {
    String width = Lengths.format(bay.clearWidthHigh(), units);
    Interval within =
        PlanFraming.of(layout, field)
            .filter(l -> l.bays().contains(bay.id()))
            .map(l -> within(bay, l))
            .orElse(ALL);
    return turned(field, bay, WIDTH, within, text(width, PlanStyle.NOTE));
  }

  /** A text at a place, along a way. */
  private interface TextAt {
    PlanItem.Label at(Vec2 place, double turn);
  }

  private static TextAt text(String text, PlanStyle style) {
    return (at, turn) -> text(at, text, turn, style);
  }

  private List<PlanItem.Label> turned(
      FieldBays field, Bay bay, double usual, Interval within, TextAt text) {
    double turn = PlanBuilder.upright(at(field, bay, 1).minus(at(field, bay, 0)));
    return along(usual, within).stream().map(s -> text.at(at(field, bay, s), turn)).toList();
  }

  /** Shares of a length, the nearest to the usual one first. */
  private static List<Double> along(double usual, Interval within) {
    List<Double> all = new ArrayList<>(List.of(usual));
    IntStream.range(1, TRIES)
        .forEach(
            i -> {
              all.add(usual + i * STEP);
              all.add(usual - i * STEP);
            });
    return all.stream().filter(within::contains).toList();
  }

  /** The middle of a bay at a share of its length. */
  private Vec2 at(FieldBays field, Bay bay, double share) {
    return places.middle(field.field(), bay, share * bay.length());
  }

  static PlanItem.Label text(Vec2 at, String text, double turn, PlanStyle style) {
    return new PlanItem.Label(
        at, text, PlanBuilder.SMALL_TEXT_MM, PlanItem.Anchor.MIDDLE, turn, style);
  }
}
