package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class IfcEmitterTest {
  private static final SampleDeck DECK = SampleDecks.plain(2438.4, 406.4, 4);

  static Stream<Mix> mixes() {
    return Stream.concat(Mix.grid().stream(), LongStream.range(0, 40).mapToObj(Mix::random));
  }

  @ParameterizedTest
  @MethodSource("mixes")
  void everyReferenceResolvesAndNoNumberOccursTwice(Mix mix) {
    List<StepLines.Instance> instances = StepLines.of(IfcEmitter.emit(DECK, mix)).instances();
    Set<Long> numbers = new HashSet<>();
    instances.forEach(i -> assertThat(numbers.add(i.id())).as("#%d once", i.id()).isTrue());
    assertThat(instances).hasSizeGreaterThan(100);
    assertThat(instances).allSatisfy(i -> assertThat(numbers).containsAll(i.references()));
  }

  @ParameterizedTest
  @MethodSource("mixes")
  void everyGlobalIdIsValidAndOccursOnce(Mix mix) {
    List<String> ids = StepLines.of(IfcEmitter.emit(DECK, mix)).globalIds();
    assertThat(ids).doesNotHaveDuplicates().allMatch(id -> id.matches("[0-3][0-9A-Za-z_$]{21}"));
    assertThat(ids).containsAll(DECK.members().stream().map(m -> DECK.globalId(m.key())).toList());
  }

  @ParameterizedTest
  @MethodSource("mixes")
  void theSameMixGivesTheSameBytesTwice(Mix mix) {
    assertThat(IfcEmitter.emit(DECK, mix)).isEqualTo(IfcEmitter.emit(DECK, mix));
  }

  @Test
  void everyMixOfTheGridGivesAnotherFile() {
    List<String> files = Mix.grid().stream().map(m -> text(IfcEmitter.emit(DECK, m))).toList();
    assertThat(files).hasSizeGreaterThan(40).doesNotHaveDuplicates();
  }

  @Test
  void everyValueOfEveryOptionIsInTheGrid() {
    List<Mix> grid = Mix.grid();
    assertThat(grid).extracting(Mix::schema).contains(Mix.Schema.values());
    assertThat(grid).extracting(Mix::unit).contains(Mix.LengthUnit.values());
    assertThat(grid).extracting(Mix::where).contains(Mix.Where.values());
    assertThat(grid).extracting(Mix::nesting).contains(Mix.Nesting.values());
    assertThat(grid).extracting(Mix::body).contains(Mix.Body.values());
    assertThat(grid).extracting(Mix::classing).contains(Mix.Classing.values());
    assertThat(grid).extracting(Mix::naming).contains(Mix.Naming.values());
    assertThat(grid).extracting(Mix::order).contains(Mix.Order.values());
  }

  @Test
  void forwardOrderRefersBackAndBackwardOrderRefersAhead() {
    Mix backward = Mix.PLAIN.with(Mix.Order.BACKWARD, 0);
    assertThat(steps(Mix.PLAIN)).isNotEmpty().allMatch(step -> step < 0);
    assertThat(steps(backward)).isNotEmpty().allMatch(step -> step > 0);
  }

  @Test
  void aShuffledFileHasTheSameInstancesWithOtherNumbersAndGaps() {
    Mix shuffled = Mix.PLAIN.with(Mix.Order.SHUFFLED, 7);
    StepLines plain = StepLines.of(IfcEmitter.emit(DECK, Mix.PLAIN));
    StepLines other = StepLines.of(IfcEmitter.emit(DECK, shuffled));
    assertThat(other.globalIds()).hasSameElementsAs(plain.globalIds());
    assertThat(other.instances()).hasSameSizeAs(plain.instances());
    assertThat(other.instances())
        .anyMatch(i -> i.id() > plain.instances().size())
        .isNotEqualTo(plain.instances());
    assertThat(steps(shuffled)).anyMatch(step -> step < 0).anyMatch(step -> step > 0);
  }

  @Test
  void linesEndWithLfUnlessTheMixAsksForCrLf() {
    assertThat(text(IfcEmitter.emit(DECK, Mix.PLAIN))).doesNotContain("\r");
    String crlf = text(IfcEmitter.emit(DECK, Mix.PLAIN.withCrlf()));
    assertThat(crlf.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
    assertThat(crlf).contains("\r\n");
  }

  @Test
  void textOutsideAsciiIsEscaped() {
    assertThat(StepText.string("Ø 8 'x' \\ 木材"))
        .isEqualTo("'\\X2\\00D8\\X0\\ 8 ''x'' \\\\ \\X2\\67286750\\X0\\'");
    assertThat(IfcEmitter.emit(DECK, Mix.PLAIN.with(Mix.Naming.GERMAN)))
        .as("bytes of ASCII")
        .matches(bytes -> IntStream.range(0, bytes.length).allMatch(i -> bytes[i] > 0));
  }

  @Test
  void realsHaveAPointAndNoNoise() {
    assertThat(StepText.real(0)).isEqualTo("0.");
    assertThat(StepText.real(-0.0)).isEqualTo("0.");
    assertThat(StepText.real(100_000_000)).isEqualTo("100000000.");
    assertThat(StepText.real(0.1 + 0.2)).isEqualTo("0.3");
    assertThat(StepText.real(38.1 / 304.8)).isEqualTo("0.125");
  }

  @Test
  void theClassesOfTheTruthAreThoseOfTheFile() {
    mixes()
        .forEach(
            mix -> {
              SampleDeck deck = SampleDecks.random(mix.seed());
              String file = text(IfcEmitter.emit(deck, mix));
              deck.truth(mix).decks().get(0).fields().get(0).bays().stream()
                  .flatMap(b -> b.crossings().stream())
                  .forEach(
                      c ->
                          assertThat(file)
                              .contains(
                                  c.ifcClass().toUpperCase(java.util.Locale.ROOT)
                                      + "('"
                                      + c.element()
                                      + "'"));
            });
  }

  private static List<Integer> steps(Mix mix) {
    List<StepLines.Instance> instances = StepLines.of(IfcEmitter.emit(DECK, mix)).instances();
    Map<Long, Integer> lines = new HashMap<>();
    instances.forEach(i -> lines.put(i.id(), lines.size()));
    return instances.stream()
        .flatMap(i -> i.references().stream().map(r -> lines.get(r) - lines.get(i.id())))
        .toList();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.US_ASCII);
  }
}
