package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** A reader that is not ours finds every member where the generator says it is. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WebIfcTest {
  private static final int RANDOM_MIXES = 24;
  private static final double MILLIMETRE = 0.001;
  private static final double VOLUME_PERCENT = 0.1;

  /** A pipe's mesh is a polygon inside its circle: with 24 corners 1.1 % less. */
  private static final double PIPE_PERCENT = 1.2;

  private record Case(String name, SampleDeck sample, Mix mix) {}

  private final Map<String, Case> cases = new LinkedHashMap<>();
  private Map<String, List<WebIfc.Product>> measured = Map.of();

  @BeforeAll
  void measureAllInOneRun(@TempDir Path folder) throws Exception {
    assumeTrue(WebIfc.nodeAvailable(), WebIfc.SKIPPED);
    SampleDecks.all().forEach(s -> add("own-" + s.name(), s, s.ownMix()));
    List<Mix> grid = Mix.grid();
    for (int i = 0; i < grid.size(); i++) {
      add(
          "grid-" + i,
          i % 3 == 0 ? SampleDecks.random(i) : SampleDecks.all().get(i % 3),
          grid.get(i));
    }
    for (int i = 0; i < RANDOM_MIXES; i++) {
      add("random-" + i, SampleDecks.random(i), Mix.random(i));
    }
    List<Path> files = new ArrayList<>();
    for (Case c : cases.values()) {
      Path file = folder.resolve(c.name + ".ifc");
      files.add(Files.write(file, IfcEmitter.emit(c.sample, c.mix)));
    }
    measured =
        WebIfc.measure(files).stream()
            .collect(
                Collectors.groupingBy(p -> p.file().getFileName().toString().replace(".ifc", "")));
  }

  private void add(String name, SampleDeck sample, Mix mix) {
    cases.put(name, new Case(name, sample, mix));
  }

  @Test
  void atLeastThirtyMixesAreMeasured() {
    assertThat(measured).hasSizeGreaterThanOrEqualTo(30).hasSameSizeAs(cases);
  }

  @TestFactory
  List<DynamicTest> everyMemberHasTheBoxAndVolumeThatTheGeneratorSays() {
    return cases.values().stream()
        .map(c -> DynamicTest.dynamicTest(c.name + " " + c.mix, () -> check(c)))
        .toList();
  }

  private void check(Case c) {
    Map<String, WebIfc.Product> products =
        measured.get(c.name).stream().collect(Collectors.toMap(WebIfc.Product::globalId, p -> p));
    assertThat(products).hasSameSizeAs(c.sample.members());
    for (Member member : c.sample.members()) {
      WebIfc.Product product = products.get(c.sample.globalId(member.key()));
      assertThat(product).as(member.key()).isNotNull();
      Solid expected = member.solid().in(c.sample.world(c.mix));
      checkBox(member, product, expected.box());
      checkVolume(member, product, expected.volume() / 1e9);
    }
  }

  private void checkBox(Member member, WebIfc.Product product, List<Xyz> box) {
    assertThat(product.min()).as(member.key()).containsExactly(xyz(box.get(0)), within(MILLIMETRE));
    assertThat(product.max()).as(member.key()).containsExactly(xyz(box.get(1)), within(MILLIMETRE));
  }

  private void checkVolume(Member member, WebIfc.Product product, double expected) {
    boolean round = member.solid().section() instanceof Section.Round;
    assertThat(product.volume())
        .as(member.key())
        .isCloseTo(expected, withPercentage(round ? PIPE_PERCENT : VOLUME_PERCENT));
  }

  private static double[] xyz(Xyz millimetres) {
    return new double[] {millimetres.x() / 1000, millimetres.y() / 1000, millimetres.z() / 1000};
  }
}
