package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.framing.JoistLine;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.DryZone;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.BayChange;
import org.underlee.run.BayChange.Kind;
import org.underlee.run.BayChange.MatchedBy;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Resync;
import org.underlee.run.Resynced;
import org.underlee.run.Survey;
import org.underlee.step.StepFile;
import org.underlee.units.Words;
import org.underlee.writeback.Strip;

/** A deck is designed for, edited, exported anew, and taken over. The truth is the edit itself. */
class ResyncTest {
  private static final int SEEDS = Integer.getInteger("underlee.resync.seeds", 5);

  /** What a person may have decided, none of it the usual. */
  private static final Kit KIT =
      KitReader.allBuiltIn().get(1).with(DrainValue.RUN_PER_FALL, 64, "set by you with --fall");

  private static final Storm RAIN = RainData.builtIn().meant("10in/h").orElseThrow();

  /** A bay by the members on its two sides, which is what tells whether it still exists. */
  private record Sides(Set<String> left, Set<String> right) {}

  private static StepFile file(byte[] bytes) {
    return StepFile.of(bytes, "deck.ifc");
  }

  private static byte[] drained(SampleDeck deck, Mix mix) {
    Survey survey = DeckRun.survey(IfcEmitter.emit(deck, mix), "old.ifc");
    return DeckRun.design(survey, Scope.OUTSIDE, KIT, RAIN).written().bytes();
  }

  private static Resynced resync(SampleDeck edited, Mix mix, byte[] old) {
    return Resync.of(
        file(IfcEmitter.emit(edited, mix)),
        file(old),
        List.of(),
        Optional.empty(),
        Optional.empty());
  }

  private static SampleDeck with(SampleDeck deck, String name, List<Member> members) {
    return new SampleDeck(
        name, deck.description(), deck.levels(), members, deck.decks(), deck.ownMix());
  }

  /** Keys of the lines that can be edited alone: one joist, neither first nor last. */
  private static List<String> singles(SampleDeck deck) {
    List<org.underlee.samples.JoistLine> lines = deck.decks().get(0).get(0).lines();
    return lines.subList(1, lines.size() - 1).stream()
        .filter(l -> l.plies().size() == 1)
        .map(l -> l.plies().get(0))
        .toList();
  }

  private static Member moved(Member m, String key, Xyz by) {
    Frame f = m.solid().frame();
    Solid s = m.solid();
    Frame to = Frame.of(f.origin().plus(by), f.x(), f.y());
    return new Member(
        key,
        m.role(),
        m.group(),
        m.size(),
        m.material(),
        m.level(),
        new Solid(to, s.length(), s.section(), s.startSkew(), s.endSkew()));
  }

  private static Map<Sides, String> bays(Survey survey) {
    return survey.bays().stream()
        .flatMap(
            f -> f.bays().stream().map(b -> Map.entry(sides(b), f.field().id() + "/" + b.id())))
        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a));
  }

  private static Sides sides(Bay b) {
    return new Sides(ids(b.left()), ids(b.right()));
  }

  private static Set<String> ids(JoistLine line) {
    return line.plies().stream().map(m -> m.id()).collect(Collectors.toSet());
  }

  private static void decisionsAreKept(Resynced resynced) {
    assertThat(resynced.decisions())
        .filteredOn(d -> List.of("kit", "fall", "rain").contains(d.name()))
        .hasSize(3)
        .allMatch(Resynced.Decision::kept);
    Design design = resynced.design();
    assertThat(design.layout().kit().id()).isEqualTo(KIT.id());
    assertThat(design.layout().kit().get(DrainValue.RUN_PER_FALL)).isEqualTo(64);
    assertThat(resynced.decisions()).anyMatch(d -> d.value().equals("254.0mm/h"));
  }

  /**
   * Each old bay whose joists are still neighbours has its old name, and no name is there twice.
   */
  private static void baysThatStayKeepTheirNames(Survey old, Survey now) {
    Map<Sides, String> before = bays(old);
    Map<Sides, String> after = bays(now);
    before.forEach(
        (sides, name) -> {
          // A field that falls in two cannot have one name twice.
          if (after.containsKey(sides) && now.bays().size() == old.bays().size()) {
            assertThat(after).containsEntry(sides, name);
          }
        });
    List<String> all =
        now.bays().stream()
            .flatMap((FieldBays f) -> f.bays().stream().map(b -> f.field().id() + "/" + b.id()))
            .toList();
    assertThat(all).doesNotHaveDuplicates();
    Set<String> gone = new HashSet<>(before.values());
    gone.removeAll(after.values());
    assertThat(all).noneMatch(gone::contains);
  }

  @Test
  void whatTheUserFixedAboutADeckIsKeptToo() {
    SampleDeck deck = PineDeck.sample();
    Mix mix = deck.ownMix();
    Wishes wishes =
        Wishes.NONE
            .leavingOpen(Set.of("B3", "deck-1/field-1/B7"))
            .withSeat(-0.014)
            .keepingDry(DryZone.parse("-100,-100 100,-100 100,100 -100,100"));
    Scope scope = new Scope(Optional.of("deck-1"), Optional.empty(), wishes);
    Survey survey = DeckRun.survey(IfcEmitter.emit(deck, mix), "old.ifc");
    byte[] old = DeckRun.design(survey, scope, KitReader.builtIn(), RAIN).written().bytes();
    Resynced resynced = resync(deck, mix, old);
    assertThat(resynced.decisions())
        .extracting(Resynced.Decision::name)
        .contains("deck", "leftopen", "seat", "dryzone");
    assertThat(resynced.design().layout().parts())
        .noneMatch(p -> p.bay().filter(Set.of("B3", "B7")::contains).isPresent());
    assertThat(resynced.bays()).isNotEmpty().allMatch(b -> b.kind() == Kind.KEPT);
  }

  @Test
  void anExportWithNewIdsAndAnotherOrderKeepsEveryBayAndEveryGlobalId() {
    for (int seed = 0; seed < SEEDS; seed++) {
      SampleDeck deck = SampleDecks.random(seed);
      Mix mix = Mix.random(seed);
      byte[] old = drained(deck, mix);
      Resynced resynced =
          resync(deck, mix.with(Mix.Order.values()[(seed + 1) % 3], seed + 77), old);
      decisionsAreKept(resynced);
      assertThat(resynced.bays()).isNotEmpty().allMatch(b -> b.kind() == Kind.KEPT);
      assertThat(resynced.bays())
          .allMatch(b -> b.matchedBy().equals(Optional.of(MatchedBy.GLOBAL_ID)));
      assertThat(resynced.bays())
          .allMatch(b -> b.parts().changed() + b.parts().added() + b.parts().gone() == 0);
      assertThat(resynced.design().written().globalIds().values())
          .containsExactlyInAnyOrderElementsOf(
              DeckRun.design(DeckRun.survey(old, "old.ifc"), Scope.OUTSIDE, KIT, RAIN)
                  .written()
                  .globalIds()
                  .values());
    }
  }

  @Test
  void aMovedJoistChangesTheBaysBesideItAndNoOther() {
    for (int seed = 0; seed < SEEDS; seed++) {
      SampleDeck deck = SampleDecks.random(seed);
      List<String> keys = singles(deck);
      if (keys.isEmpty()) {
        continue;
      }
      String key = keys.get(new Random(seed).nextInt(keys.size()));
      List<Member> members = new ArrayList<>(deck.members());
      members.replaceAll(m -> m.key().equals(key) ? moved(m, key, new Xyz(30, 0, 0)) : m);
      byte[] old = drained(deck, Mix.PLAIN);
      Resynced resynced = resync(with(deck, deck.name(), members), Mix.PLAIN, old);
      decisionsAreKept(resynced);
      Survey before = DeckRun.survey(old, "old.ifc");
      baysThatStayKeepTheirNames(before, resynced.design().survey());
      Set<String> beside =
          bays(before).entrySet().stream()
              .filter(e -> touches(e.getKey(), deck.globalId(key)))
              .map(Map.Entry::getValue)
              .collect(Collectors.toSet());
      for (BayChange change : resynced.bays()) {
        boolean touched = beside.contains(change.field() + "/" + change.bay());
        assertThat(change.kind())
            .as("%s of seed %s", change, seed)
            .isEqualTo(touched ? Kind.MOVED : Kind.KEPT);
        assertThat(change.why().isEmpty()).isEqualTo(!touched);
      }
      assertThat(resynced.count(Kind.MOVED)).isEqualTo(2);
    }
  }

  /** Blocking that was left alone beside a joist that was moved is a piece of wood still. */
  @Test
  void blockingThatFitsNoMoreIsNotToldAsAService() {
    SampleDeck deck = PineDeck.sample();
    String key = singles(deck).get(1);
    List<Member> members = new ArrayList<>(deck.members());
    members.replaceAll(m -> m.key().equals(key) ? moved(m, key, new Xyz(12.7, 0, 0)) : m);
    Resynced resynced =
        resync(with(deck, deck.name(), members), Mix.PLAIN, drained(deck, Mix.PLAIN));
    List<String> why =
        resynced.bays().stream().flatMap(b -> b.why().stream()).map(Words::toString).toList();
    assertThat(why).anyMatch(w -> w.matches("blocking #\\d+ does not fit .* any more.*"));
    assertThat(why).noneMatch(w -> w.contains("service"));
  }

  private static boolean touches(Sides sides, String id) {
    return sides.left.contains(id) || sides.right.contains(id);
  }

  @Test
  void anAddedJoistMakesNewBaysWithNamesThatWereNeverUsed() {
    for (int seed = 0; seed < SEEDS; seed++) {
      SampleDeck deck = SampleDecks.random(seed);
      List<String> keys = singles(deck);
      if (keys.isEmpty()) {
        continue;
      }
      Member model = deck.member(keys.get(0)).orElseThrow();
      List<Member> members = new ArrayList<>(deck.members());
      members.add(moved(model, "field/added", new Xyz(170, 0, 0)));
      byte[] old = drained(deck, Mix.PLAIN);
      Resynced resynced = resync(with(deck, deck.name(), members), Mix.PLAIN, old);
      decisionsAreKept(resynced);
      baysThatStayKeepTheirNames(DeckRun.survey(old, "old.ifc"), resynced.design().survey());
      assertThat(resynced.count(Kind.NEW)).as("seed %s", seed).isBetween(1L, 2L);
    }
  }

  @Test
  void aDeletedJoistLeavesTheOtherBaysAsTheyWere() {
    for (int seed = 0; seed < SEEDS; seed++) {
      SampleDeck deck = SampleDecks.random(seed);
      List<String> keys = singles(deck);
      if (keys.isEmpty()) {
        continue;
      }
      String key = keys.get(new Random(seed).nextInt(keys.size()));
      List<Member> members = deck.members().stream().filter(m -> !m.key().equals(key)).toList();
      byte[] old = drained(deck, Mix.PLAIN);
      Resynced resynced = resync(with(deck, deck.name(), members), Mix.PLAIN, old);
      decisionsAreKept(resynced);
      baysThatStayKeepTheirNames(DeckRun.survey(old, "old.ifc"), resynced.design().survey());
      assertThat(resynced.count(Kind.GONE)).as("seed %s", seed).isPositive();
    }
  }

  @Test
  void newGlobalIdsAreMatchedByPlaceAndAMovedFieldByItsShape() {
    for (int seed = 0; seed < SEEDS; seed++) {
      SampleDeck deck = SampleDecks.random(seed);
      byte[] old = drained(deck, Mix.PLAIN);
      SampleDeck anew = with(deck, deck.name() + "-anew", deck.members());
      Resynced inPlace = resync(anew, Mix.PLAIN, old);
      decisionsAreKept(inPlace);
      assertThat(inPlace.bays())
          .allMatch(
              b -> b.kind() == Kind.KEPT && b.matchedBy().equals(Optional.of(MatchedBy.PLACE)));
      Set<String> ids =
          Set.copyOf(
              DeckRun.design(DeckRun.survey(old, "old.ifc"), Scope.OUTSIDE, KIT, RAIN)
                  .written()
                  .globalIds()
                  .values());
      assertThat(Set.copyOf(inPlace.design().written().globalIds().values())).isEqualTo(ids);
      Mix away = Mix.PLAIN.placed(33, new Xyz(40, -7, 3), Mix.Where.SITE, Mix.Nesting.ELEMENT);
      Resynced moved = resync(anew, away, old);
      decisionsAreKept(moved);
      assertThat(moved.bays())
          .allMatch(
              b -> b.kind() == Kind.MOVED && b.matchedBy().equals(Optional.of(MatchedBy.SHAPE)));
      assertThat(moved.bays())
          .allMatch(b -> b.parts().changed() + b.parts().added() + b.parts().gone() == 0);
    }
  }

  @Test
  void aSecondResyncKeepsTheNamesThatTheFirstKept() {
    SampleDeck deck = SampleDecks.plain(3000, 500, 6);
    List<String> keys = singles(deck);
    Member first = deck.member(keys.get(0)).orElseThrow();
    List<Member> more = new ArrayList<>(deck.members());
    more.add(moved(first, "field/one", new Xyz(250, 0, 0)));
    SampleDeck second = with(deck, deck.name(), more);
    Resynced once = resync(second, Mix.PLAIN, drained(deck, Mix.PLAIN));
    List<Member> most = new ArrayList<>(more);
    most.add(moved(deck.member(keys.get(2)).orElseThrow(), "field/two", new Xyz(250, 0, 0)));
    Resynced twice =
        resync(with(deck, deck.name(), most), Mix.PLAIN, once.design().written().bytes());
    baysThatStayKeepTheirNames(once.design().survey(), twice.design().survey());
    assertThat(once.bays()).anyMatch(b -> b.kind() == Kind.NEW);
    assertThat(twice.design().survey().bays().get(0).bays()).hasSize(7);
    Resynced again = resync(second, Mix.PLAIN, once.design().written().bytes());
    assertThat(again.design().written().bytes()).isEqualTo(once.design().written().bytes());
  }

  @Test
  void whatWasTakenOverIsTheNewExportWithOneBlock() {
    SampleDeck deck = SampleDecks.random(3);
    byte[] export = IfcEmitter.emit(deck, Mix.PLAIN.with(Mix.Order.values()[1], 9));
    Resynced resynced =
        Resync.of(
            file(export),
            file(drained(deck, Mix.PLAIN)),
            List.of(),
            Optional.empty(),
            Optional.empty());
    assertThat(Strip.original(resynced.design().written().bytes()).orElseThrow().bytes())
        .isEqualTo(export);
  }

  @Test
  void anOldModelWithoutAnAssemblyIsRefused() {
    byte[] plain = IfcEmitter.emit(SampleDecks.random(1), Mix.PLAIN);
    assertThatThrownBy(
            () ->
                Resync.of(file(plain), file(plain), List.of(), Optional.empty(), Optional.empty()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no assembly of ours");
    byte[] none = "ISO-10303-21;".getBytes(StandardCharsets.UTF_8);
    assertThatThrownBy(() -> file(none)).isInstanceOf(InputException.class);
  }
}
