package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.units.Words;

/** No box, lamp or cable is above a pan, where it is wet and out of reach. */
public final class Electrical implements Check {
  static final Rule ABOVE_PAN =
      new Rule(
          "electrical-above-pan",
          Level.WARNING,
          "NEC 410.10 and 406.9: what may get wet is listed for it; boxes below the pans, common"
              + " practice",
          "An electrical fitting is above the pans, where water runs and no hand reaches.");

  private static final Set<String> CLASSES =
      Set.of(
          "IfcLightFixture",
          "IfcLamp",
          "IfcOutlet",
          "IfcJunctionBox",
          "IfcSwitchingDevice",
          "IfcElectricAppliance",
          "IfcCableSegment",
          "IfcCableFitting");

  @Override
  public List<Rule> rules() {
    return List.of(ABOVE_PAN);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    List<BuildingElement> electric = input.ofClass(CLASSES);
    for (Assembled f : input.fields()) {
      for (BuildingElement e : electric) {
        Box own = f.boxOf(e);
        f.served().stream()
            .filter(b -> f.pansOf(b).stream().anyMatch(p -> isAbove(f, b, own, p.box())))
            .forEach(b -> found.add(finding(f, b, e)));
      }
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Will lamps, fans or outlets hang below the pans, and are they listed for wet"
                    + " places?",
                "Below a deck with gaps is a wet place until the authority says otherwise.",
                "NEC article 100, 406.9, 410.10")));
  }

  private static boolean isAbove(Assembled f, Bay bay, Box own, Box pan) {
    double v = Math.max(own.min().y(), pan.min().y());
    return own.max().x() > pan.min().x()
        && own.min().x() < pan.max().x()
        && own.max().y() > pan.min().y()
        && own.min().y() < pan.max().y()
        && own.min().z() > f.seat(v)
        && own.min().z() < bay.joistTop(v);
  }

  private static Finding finding(Assembled f, Bay bay, BuildingElement e) {
    return Finding.of(
            ABOVE_PAN,
            e.place(),
            Words.of("%s #%s is above the %s.", e.ifcClass(), e.instance(), f.piece()),
            "Have it moved below the pans by a licensed electrician.")
        .about(f.subject(bay, Optional.empty()));
  }
}
