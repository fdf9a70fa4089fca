package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.Leak;
import org.underlee.drainage.OutletShare;
import org.underlee.drainage.StandingWater;
import org.underlee.geom.Vec3;

/** Writes where the water goes: {@code dryFraction}, {@code leaks} and {@code drain}. */
final class DrainJson {
  static final int DECIMALS = 6;

  private DrainJson() {}

  static void write(ObjectNode root, DrainProof proof) {
    root.put("dryFraction", Json.rounded(proof.dryFraction(), DECIMALS));
    ArrayNode leaks = root.putArray("leaks");
    proof.leaks().forEach(l -> leak(leaks.addObject(), l));
    ObjectNode drain = root.putObject("drain");
    drain.put("stormMmPerHour", Json.rounded(DrainProof.TEST_RAIN, DECIMALS));
    drain.put("areaM2", Json.rounded(proof.area(), DECIMALS));
    ArrayNode outlets = drain.putArray("outlets");
    proof.outlets().forEach(o -> outlet(outlets.addObject(), o));
    standing(drain.putArray("ponds"), proof.ponds());
    standing(drain.putArray("blocked"), proof.blocked());
  }

  private static void leak(ObjectNode node, Leak leak) {
    at(node.putArray("atMm"), leak.at());
    node.put("cause", leak.cause().word());
    node.put("field", leak.field());
    node.put("bay", leak.bay());
    node.put("areaM2", Json.rounded(leak.area(), DECIMALS));
    node.put("litresPerHour", Json.rounded(leak.litresPerHour(DrainProof.TEST_RAIN), DECIMALS));
    Json.strings(node.putArray("parts"), leak.parts());
    node.put("why", leak.cause().why());
    node.put("fix", leak.cause().fix());
  }

  private static void outlet(ObjectNode node, OutletShare share) {
    node.put("outlet", share.outlet());
    node.put("areaM2", Json.rounded(share.area(), DECIMALS));
    ArrayNode bays = node.putArray("bays");
    share
        .bays()
        .forEach((b, a) -> bays.addObject().put("bay", b).put("areaM2", Json.rounded(a, DECIMALS)));
    ArrayNode gutters = node.putArray("gutters");
    share
        .gutters()
        .forEach(
            (g, a) ->
                gutters.addObject().put("gutter", g).put("areaM2", Json.rounded(a, DECIMALS)));
  }

  private static void standing(ArrayNode array, List<StandingWater> all) {
    for (StandingWater water : all) {
      ObjectNode node = array.addObject();
      water.blocked().ifPresent(b -> node.put("outlet", b));
      node.put("part", water.part());
      node.put("depthMm", Json.mm(water.depth()));
      node.put("areaM2", Json.rounded(water.area(), DECIMALS));
      node.put("massKg", Json.rounded(water.mass(), DECIMALS));
      at(node.putArray("atMm"), water.at());
      at(node.putArray("spillsAtMm"), water.spillsAt());
      node.put("spillsTo", water.spillsTo());
    }
  }

  private static void at(ArrayNode array, Vec3 p) {
    array.add(Json.mm(p.x())).add(Json.mm(p.y())).add(Json.mm(p.z()));
  }
}
