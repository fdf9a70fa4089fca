package org.underlee.report;

import java.util.List;
import java.util.stream.Collectors;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.Leak;
import org.underlee.drainage.OutletShare;
import org.underlee.geom.Vec3;
import org.underlee.picture.PlanRain;

/** What of a proof a plan shows. */
public final class RainInPlan {
  private RainInPlan() {}

  public static PlanRain of(DrainProof proof) {
    List<List<Vec3>> open =
        proof.leaks().stream()
            .filter(l -> l.cause().isOpenDeck())
            .flatMap(l -> l.regions().stream())
            .toList();
    return new PlanRain(
        proof.outlets().stream().collect(Collectors.toMap(OutletShare::outlet, OutletShare::bays)),
        open,
        proof.leaks().stream()
            .filter(l -> !l.cause().isOpenDeck())
            .map(RainInPlan::through)
            .toList());
  }

  private static PlanRain.Through through(Leak leak) {
    return new PlanRain.Through(leak.at(), leak.regions());
  }
}
