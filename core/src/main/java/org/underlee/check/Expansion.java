package org.underlee.check;

import static org.underlee.kit.PanValue.PAN_DRIP_SETBACK;
import static org.underlee.kit.PanValue.RAIL_END_GAP;
import static org.underlee.kit.SheetValue.SHEET_END_GAP;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.kit.Material;
import org.underlee.layout.PartKind;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * Rails, pans and sheets have room to grow: length times the material's coefficient times a warming
 * of 100 degrees F, as from winter to a dark sheet in the sun.
 */
public final class Expansion implements Check {
  static final Rule NO_ROOM =
      new Rule(
          "no-room-to-grow",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": movement over 100 degrees F, coefficients of the material",
          "A piece grows by more than the gap that it has; it buckles or pushes.");

  /** 100 degrees F, from -20 to 80 in shade; the sun adds as much on dark sheet. */
  private static final double WARMING = 100 * 5.0 / 9;

  @Override
  public List<Rule> rules() {
    return List.of(NO_ROOM);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    List<SiteQuestion> asked = new ArrayList<>();
    for (Assembled f : input.fields()) {
      room(f.kit())
          .forEach((kind, gap) -> judge(f, input.data(), kind, f.kit().get(gap), found, asked));
    }
    return new Answer(found, asked.stream().distinct().toList());
  }

  /** The parts that are stiff and long, and the gap that each has; membranes give. */
  private static Map<PartKind, KitNumber> room(Kit kit) {
    Map<PartKind, KitNumber> room = new EnumMap<>(PartKind.class);
    if (kit.family() == Family.PANS) {
      room.put(PartKind.SIDE_RAIL, RAIL_END_GAP);
      room.put(PartKind.PAN, PAN_DRIP_SETBACK);
    } else if (kit.family() == Family.SHEET) {
      room.put(PartKind.SHEET, SHEET_END_GAP);
    }
    return room;
  }

  private static void judge(
      Assembled f,
      ProofData data,
      PartKind kind,
      double gap,
      List<Finding> found,
      List<SiteQuestion> asked) {
    Optional<Placed> longest = f.all(kind).max(Comparator.comparingDouble(p -> p.part().length()));
    if (longest.isEmpty()) {
      return;
    }
    Material material = f.kit().materialOf(f.kit().item(longest.get().part().item()));
    Optional<ProofData.Expansion> grows = data.expansionOf(material.name());
    if (grows.isEmpty()) {
      asked.add(
          new SiteQuestion(
              "How much does " + material.name() + " grow with warmth?",
              "Gaps and slots must take up its movement.",
              Rule.COMMON_PRACTICE));
      return;
    }
    double length = longest.get().part().length();
    double movement = grows.get().movement(length, WARMING);
    if (movement > gap) {
      found.add(finding(f, kind, length, movement, gap));
    }
  }

  private static Finding finding(
      Assembled f, PartKind kind, double length, double movement, double gap) {
    return f.found(
        NO_ROOM,
        Words.of(
            "a %s of %s grows by %s when it warms by %s; it has %s.",
            kind.spoken(),
            Quantity.length(length),
            Quantity.length(movement),
            Quantity.of(Kind.WARMING, WARMING),
            Quantity.length(gap)),
        Measure.lengths(movement, gap),
        Fix.of("Use shorter pieces with slotted holes and one fixed point each."));
  }
}
