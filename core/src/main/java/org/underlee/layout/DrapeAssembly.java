package org.underlee.layout;

import static org.underlee.kit.DrapeValue.TROUGH_NARROWEST;
import static org.underlee.kit.DrapeValue.TROUGH_TAIL;
import static org.underlee.kit.DrapeValue.TROUGH_WIDEST;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;

/** A membrane trough in each bay, hung from the joist tops, and a strip over each joist. */
record DrapeAssembly(FieldBays bays, Kit kit) implements Assembly {

  @Override
  public Optional<Finding> unfit(BayRun run) {
    Optional<Finding> unfit = new BayFit(bays, kit).unfit(run, TROUGH_NARROWEST, TROUGH_WIDEST);
    return unfit.isPresent()
        ? unfit
        : run.bay().crossings().stream()
            .filter(c -> c.way() == Way.THROUGH && c.stretch().from() < run.panEnd())
            .findFirst()
            .map(c -> new OpenBay(bays.field().id(), kit).pipeThrough(run.bay(), c));
  }

  @Override
  public boolean canEndAt(LowEnd end) {
    return true;
  }

  @Override
  public List<Part> parts(FieldPlan plan, PartNames names) {
    DrapeBuilder troughs = new DrapeBuilder(plan, names);
    List<Part> parts = new ArrayList<>();
    plan.served().forEach(r -> parts.add(troughs.part(r)));
    parts.addAll(new CapStripBuilder(plan, names).parts());
    return parts;
  }

  @Override
  public double lowest(FieldPlan plan) {
    return plan.served().stream()
        .mapToDouble(
            r -> new DrapeShape(r, plan.seatHigh()).middle(r.panEnd()) - kit.get(TROUGH_TAIL))
        .min()
        .orElseThrow();
  }

  @Override
  public List<Finding> notes(FieldPlan plan) {
    return List.of();
  }
}
