package org.underlee.layout;

import static org.underlee.kit.DrainValue.DISCHARGE_HEIGHT;
import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;

import java.util.List;
import org.underlee.framing.Member;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Origin;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Where the numbers of outlets, downspouts and elbows come from. */
record SpoutReckoning(FieldPlan plan) {

  List<Derivation> outlet() {
    Kit kit = plan.kit();
    Reckoning width = new Reckoning(kit).from(DOWNSPOUT_DIAMETER);
    for (int side = 0; side < 2; side++) {
      width
          .minus(
              "the downspout's own sheet",
              kit.item(Items.DOWNSPOUT).thickness(),
              stock(Items.DOWNSPOUT))
          .minus("play between the two tubes", DownspoutBuilder.PLAY, Reckoning.OWN);
    }
    return List.of(
        new Reckoning(kit)
            .from(
                Words.of("tube below the gutter's floor"),
                DownspoutBuilder.OUTLET_TUBE,
                Reckoning.OWN)
            .gives(Dimension.LENGTH),
        width.gives(Dimension.WIDTH));
  }

  /**
   * @param floor height of the gutter's floor at the outlet above the ground
   */
  List<Derivation> downspout(GutterLine.Outlet outlet, double floor, int count, double longest) {
    Kit kit = plan.kit();
    Reckoning length =
        new Reckoning(kit)
            .from(
                Words.of("gutter's floor at the outlet above the ground, taken at %s", ground()),
                floor,
                new Measured(plan.bays().field().posts().stream().map(Member::element).toList()))
            .minus(
                "outlet's tube above the downspout's end",
                DownspoutBuilder.OUTLET_TUBE - DownspoutBuilder.SLIP,
                Reckoning.OWN)
            .minus(DISCHARGE_HEIGHT)
            .minus("height of the elbow below it", elbowHeight(), Reckoning.OWN);
    if (count > 1) {
      length.over(
          Words.of("equal pieces, none longer than the stock's %s", Quantity.length(longest)),
          count,
          stock(Items.DOWNSPOUT));
    }
    return List.of(
        length.gives(Dimension.LENGTH),
        new Reckoning(kit).from(DOWNSPOUT_DIAMETER).gives(Dimension.WIDTH));
  }

  private String ground() {
    return plan.bays().field().posts().isEmpty() ? "the storey's floor" : "the posts' feet";
  }

  List<Derivation> elbow() {
    Kit kit = plan.kit();
    Reckoning width = new Reckoning(kit).from(DOWNSPOUT_DIAMETER);
    for (int side = 0; side < 2; side++) {
      width
          .plus("play around the downspout", DownspoutBuilder.PLAY, Reckoning.OWN)
          .plus("the elbow's own sheet", kit.item(Items.ELBOW).thickness(), stock(Items.ELBOW));
    }
    return List.of(
        new Reckoning(kit)
            .from(Words.of("socket around the downspout"), DownspoutBuilder.SOCKET, Reckoning.OWN)
            .plus("leg at 45 degrees", DownspoutBuilder.ELBOW_LEG, Reckoning.OWN)
            .gives(Dimension.LENGTH),
        width.gives(Dimension.WIDTH));
  }

  /** How far the elbow's leg reaches below the downspout's foot. */
  double elbowHeight() {
    return (DownspoutBuilder.ELBOW_LEG + plan.kit().get(DOWNSPOUT_DIAMETER)) * Math.sqrt(0.5);
  }

  private Origin stock(String item) {
    return new KitValue(item, plan.kit().item(item).source());
  }
}
