package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.SlowTriangles;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.PartKind;
import org.underlee.step.StepFile;

/**
 * Public models of several disciplines: what meets what, against every pair of their bodies taken
 * one by one and every pair of triangles tested in exact decimals.
 */
@Tag("long")
class FederatedModelsTest {
  /** More than rounding in coordinates of a building leaves between faces that share a plane. */
  private static final double TOUCH = 1e-6;

  private static final String CORPUS = System.getProperty("underlee.corpus", "");

  /** The counts are kept so that a change is seen; they are ours, and nobody else's. */
  @ParameterizedTest(name = "{0} and {1}")
  @CsvSource({
    "bcf-arch-mep/Architectural.ifc, bcf-arch-mep/MEP.ifc, 0, 0, 0",
    "bimcollab-federated/02_STR.ifc, bimcollab-federated/03_MEP.ifc, 67, 695, 453",
  })
  void asManyIssuesAsEver(String one, String other, int inTheWay, int raw, int grouped) {
    ClashFinder.Found found = ClashFinder.find(List.of(), parts(model(one)), things(model(other)));
    List<Issue> issues = Issues.of(found.clashes(), "project");
    assertThat(List.of(names(found, 0).size(), found.clashes().size(), issues.size()))
        .containsExactly(inTheWay, raw, grouped);
  }

  @ParameterizedTest(name = "{0} and {1}")
  @CsvSource({
    "bcf-arch-mep/Architectural.ifc, bcf-arch-mep/MEP.ifc, 0",
    "bimcollab-federated/02_STR.ifc, bimcollab-federated/03_MEP.ifc, 329",
  })
  void whatMeetsIsWhatMeetsWhenEveryPairIsTried(String one, String other, int surfacesMeet) {
    List<Ours> parts = parts(model(one));
    List<Theirs> things = things(model(other));
    ClashFinder.Found found = ClashFinder.find(List.of(), parts, things);
    Set<String> surfaces = surfacesThatMeet(parts, things);
    Set<String> meeting = names(found, 0);
    assertThat(surfaces).hasSize(surfacesMeet);
    assertThat(names(found, TOUCH)).containsAll(surfaces);
    meeting.removeAll(surfaces);
    assertThat(meeting).allMatch(name -> found.clashes().stream().anyMatch(c -> isNested(c, name)));
  }

  private static IfcModel model(String name) {
    Path file = Path.of(CORPUS, "models", name);
    assumeTrue(!CORPUS.isEmpty() && Files.exists(file), "skipped: no public models");
    return IfcModel.of(StepFile.read(file));
  }

  private static List<Theirs> things(IfcModel model) {
    return model.elements().stream()
        .map(e -> Theirs.of(e, Clearances.builtIn(), List.of()))
        .toList();
  }

  /** A part that lies in no bay, so that the full clearance holds and touching is told. */
  private static List<Ours> parts(IfcModel model) {
    List<Ours> parts = new ArrayList<>();
    for (BuildingElement e : model.elements()) {
      parts.add(Ours.of("a/b/" + e.instance(), PartKind.GUTTER, e));
    }
    return parts;
  }

  private static String name(Ours part, Theirs thing) {
    return part.id() + " " + thing.element().instance();
  }

  /** Pairs that share a body, and those nearer than this. */
  private static Set<String> names(ClashFinder.Found found, double nearer) {
    Set<String> names = new TreeSet<>();
    for (Clash c : found.clashes()) {
      boolean shared = c.cause() == Cause.INTERSECT || c.cause() == Cause.DUPLICATE;
      if (shared || (c.cause() == Cause.TOO_NEAR && c.amount() < nearer)) {
        names.add(name(c.part(), c.thing()));
      }
    }
    return names;
  }

  private static boolean isNested(Clash c, String name) {
    Box part = c.part().bounds();
    Box thing = c.thing().element().shape().bounds();
    return name(c.part(), c.thing()).equals(name)
        && (part.grown(TOUCH).union(thing).equals(part.grown(TOUCH))
            || thing.grown(TOUCH).union(part).equals(thing.grown(TOUCH)));
  }

  private static Set<String> surfacesThatMeet(List<Ours> parts, List<Theirs> things) {
    Set<String> names = new TreeSet<>();
    for (Ours part : parts) {
      for (Theirs thing : things) {
        if (part.bounds().meets(thing.element().shape().bounds())
            && SlowTriangles.anyMeet(part.shape(), thing.element().shape())) {
          names.add(name(part, thing));
        }
      }
    }
    return names;
  }
}
