package org.underlee.run;

import java.util.List;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.DryZone;

/** What a user says must stay dry: corners, or slabs, spaces and the like in the model. */
public final class DryZones {
  private DryZones() {}

  /**
   * The zone that a text means.
   *
   * @param text corners as {@link DryZone#parse} reads them; else a GlobalId or a name, which
   *     several elements may have
   * @throws InputException when it is no polygon and nothing with a body is called so
   */
  public static DryZone of(Survey survey, String text) {
    if (DryZone.isDrawn(text)) {
      return DryZone.parse(text);
    }
    DryZone zone =
        DryZone.below(
            Stream.concat(survey.model().elements().stream(), survey.model().spaces().stream())
                .filter(e -> isCalled(e, text))
                .map(BuildingElement::shape)
                .toList());
    if (zone.polygons().isEmpty()) {
      throw new InputException(
          Place.NOWHERE.inFile(survey.source().file()),
          "no slab, space or other element with a body is called \"" + text + "\"",
          "Name it by its GlobalId or its name in the model, or draw the zone by its corners in"
              + " metres, such as \"0,0 3.6,0 3.6,2.4\".");
    }
    return zone;
  }

  private static boolean isCalled(BuildingElement element, String text) {
    return List.of(element.globalId(), element.name()).contains(text);
  }
}
