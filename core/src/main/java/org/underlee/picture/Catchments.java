package org.underlee.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/**
 * Which bays each outlet drains.
 *
 * @param outlets in order of the layout; none without a layout
 */
record Catchments(List<Own> outlets) {
  /** A bay that sends less than this share of its water to an outlet is not said to feed it. */
  private static final double LEAST_SHARE = 0.05;

  /**
   * Of one outlet.
   *
   * @param mark as on the piece; without its field where there is no other: {@code O1}
   * @param bays ids, in order; none where it was not proved
   * @param order among the outlets of its field, from 0
   */
  record Own(Part outlet, String mark, List<String> bays, int order) {
    /** {@code O1} or {@code O1 drains B1–B6}. */
    String words(FieldBays field) {
      return bays.isEmpty() ? mark : mark + " drains " + ranges(field);
    }

    /** Bays that lie side by side as {@code B1–B6}. */
    private String ranges(FieldBays field) {
      List<String> ranges = new ArrayList<>();
      String first = "";
      String last = "";
      for (Bay bay : field.bays()) {
        if (bays.contains(bay.id())) {
          first = first.isEmpty() ? bay.id() : first;
          last = bay.id();
        } else if (!first.isEmpty()) {
          ranges.add(range(first, last));
          first = "";
        }
      }
      if (!first.isEmpty()) {
        ranges.add(range(first, last));
      }
      return String.join(", ", ranges);
    }

    private static String range(String first, String last) {
      return first.equals(last) ? first : first + "–" + last;
    }
  }

  static Catchments of(List<FieldBays> fields, Optional<Layout> layout, Optional<PlanRain> rain) {
    List<Own> all = new ArrayList<>();
    for (FieldBays field : fields) {
      List<Part> outlets =
          PlanFraming.of(layout, field).stream()
              .flatMap(l -> l.parts().stream())
              .filter(p -> p.kind() == PartKind.OUTLET)
              .toList();
      Map<String, Double> whole = new LinkedHashMap<>();
      rain.ifPresent(r -> add(r, field, whole));
      for (int i = 0; i < outlets.size(); i++) {
        Part outlet = outlets.get(i);
        String label = outlet.label();
        String mark = fields.size() > 1 ? label : label.substring(label.lastIndexOf('-') + 1);
        all.add(new Own(outlet, mark, bays(outlet, field, rain, whole), i));
      }
    }
    return new Catchments(List.copyOf(all));
  }

  /** All that each bay of a field sends to outlets of the field. */
  private static void add(PlanRain rain, FieldBays field, Map<String, Double> to) {
    rain.outlets()
        .forEach(
            (outlet, bays) -> {
              if (outlet.startsWith(field.field().id() + "/")) {
                bays.forEach((b, area) -> to.merge(b, area, Double::sum));
              }
            });
  }

  private static List<String> bays(
      Part outlet, FieldBays field, Optional<PlanRain> rain, Map<String, Double> whole) {
    Map<String, Double> own =
        rain.map(r -> r.outlets().getOrDefault(outlet.id(), Map.of())).orElse(Map.of());
    return field.bays().stream()
        .map(Bay::id)
        .filter(b -> own.getOrDefault(b, 0.0) > LEAST_SHARE * whole.getOrDefault(b, 0.0))
        .toList();
  }

  List<Own> of(String field) {
    return outlets.stream().filter(o -> o.outlet().field().equals(field)).toList();
  }

  /** Those that a bay feeds. */
  List<Own> of(String field, String bay) {
    return of(field).stream().filter(o -> o.bays().contains(bay)).toList();
  }

  /** What catches the water of a bay is drawn in its outlet's tint. */
  PlanStyle tint(Part part) {
    return part.bay().stream()
        .flatMap(b -> of(part.field(), b).stream())
        .findFirst()
        .map(o -> PlanStyle.PANS.get(o.order() % PlanStyle.PANS.size()))
        .orElse(PlanStyle.PAN);
  }
}
