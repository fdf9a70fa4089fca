package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.underlee.samples.GroundTruth.Bay;
import org.underlee.samples.GroundTruth.Blocking;
import org.underlee.samples.GroundTruth.Crossing;
import org.underlee.samples.GroundTruth.Deck;
import org.underlee.samples.GroundTruth.Field;

/** Turns the description of a sample into the survey it should give. */
final class Truths {
  /** Rounding of what is told: a millionth of a millimetre hides the noise of adding inches. */
  private static final double DIGITS = 1e6;

  private final SampleDeck sample;
  private final Mix mix;

  Truths(SampleDeck sample, Mix mix) {
    this.sample = sample;
    this.mix = mix;
  }

  GroundTruth all() {
    List<Deck> decks = new ArrayList<>();
    for (int i = 0; i < sample.decks().size(); i++) {
      decks.add(deck("deck-" + (i + 1), sample.decks().get(i)));
    }
    List<GroundTruth.MemberRole> roles =
        sample.members().stream()
            .map(m -> new GroundTruth.MemberRole(id(m.key()), m.role().word()))
            .toList();
    return new GroundTruth(List.copyOf(decks), roles);
  }

  private Deck deck(String id, List<FieldPlan> plans) {
    List<Field> fields =
        IntStream.range(0, plans.size())
            .mapToObj(i -> field(id + "/field-" + (i + 1), plans.get(i)))
            .toList();
    FieldPlan any = plans.get(0);
    Member joist = sample.member(any.lines().get(0).plies().get(0)).orElseThrow();
    double top = any.joistTop() + sample.world(mix).origin().z();
    return new Deck(id, sample.storeyId(joist.level()), rounded(top), fields);
  }

  private Field field(String id, FieldPlan plan) {
    Xyz fall = sample.world(mix).direction(plan.frame().y());
    return new Field(
        id,
        List.of(fall.x(), fall.y()),
        plan.lines().stream().map(this::line).toList(),
        ids(plan, Role.LEDGER),
        ids(plan, Role.RIM),
        ids(plan, Role.BEAM),
        ids(plan, Role.POST),
        List.of(),
        List.of(),
        IntStream.range(0, plan.lines().size() - 1).mapToObj(i -> bay(plan, i)).toList());
  }

  private GroundTruth.JoistLine line(JoistLine line) {
    return new GroundTruth.JoistLine(
        line.id(),
        line.plies().stream().map(this::id).toList(),
        line.plies().size(),
        rounded(line.width()),
        rounded(line.depth()));
  }

  private Bay bay(FieldPlan plan, int index) {
    JoistLine first = plan.lines().get(index);
    JoistLine second = plan.lines().get(index + 1);
    return new Bay(
        "B" + (index + 1),
        List.of(first.id(), second.id()),
        rounded(second.firstFaceHigh() - first.lastFaceHigh()),
        rounded(second.firstFaceLow() - first.lastFaceLow()),
        rounded(plan.run()),
        plan.blocks().stream().filter(b -> b.bay() == index).map(this::blocking).toList(),
        plan.services().stream().filter(s -> s.bay() == index).map(this::crossing).toList());
  }

  private Blocking blocking(FieldPlan.Block b) {
    return new Blocking(
        id(b.key()), rounded(b.at()), rounded(b.thickness()), rounded(b.bottomAboveJoistBottom()));
  }

  private Crossing crossing(FieldPlan.Service s) {
    Role role = sample.member(s.key()).orElseThrow().role();
    return new Crossing(
        id(s.key()),
        ElementClass.of(role, mix).name(),
        s.way(),
        rounded(s.size()),
        rounded(s.at()),
        rounded(s.across()));
  }

  private List<String> ids(FieldPlan plan, Role role) {
    return SampleDeck.supports(plan.supports(), role).stream().map(this::id).toList();
  }

  private String id(String key) {
    return sample.globalId(key);
  }

  /** Never gives a negative zero, which would be written as such. */
  private static double rounded(double mm) {
    return Math.round(mm * DIGITS) / DIGITS + 0.0;
  }
}
