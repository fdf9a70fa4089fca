package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Bvh;
import org.underlee.geom.Mesh;
import org.underlee.geom.SlowTriangles;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.PartKind;
import org.underlee.step.StepFile;
import org.underlee.step.StepLimits;

/**
 * Disciplines of one house in public models, against each other: the elements of the services stand
 * for the assembly. With {@code -Dunderlee.corpus=FOLDER}; the figures are in {@code
 * docs/benchmarks/clash.md}.
 */
class DisciplinesTest {
  private static List<BuildingElement> elements(String file) {
    String corpus = System.getProperty("underlee.corpus", "");
    Path path = Path.of(corpus, "models").resolve(file);
    assumeTrue(!corpus.isEmpty() && Files.exists(path), "skipped: no public models");
    return IfcModel.of(StepFile.read(path, StepLimits.STANDARD)).elements().stream()
        .filter(e -> !e.shape().isEmpty())
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "bcf-arch-mep/MEP.ifc, bcf-arch-mep/Architectural.ifc",
    "pcert-ifc4/Building-Hvac.ifc, pcert-ifc4/Building-Architecture.ifc",
    "pcert-ifc4/Building-Hvac.ifc, pcert-ifc4/Building-Structural.ifc",
    "pcert-ifc4x3/Building-Hvac.ifc, pcert-ifc4x3/Building-Architecture.ifc",
    "bimcollab-federated/03_MEP.ifc, bimcollab-federated/01_ARC.ifc",
    "bimcollab-federated/03_MEP.ifc, bimcollab-federated/02_STR.ifc"
  })
  void whatTheTreesFindIsWhatTryingEveryPairFinds(String services, String house) {
    List<BuildingElement> ours = elements(services);
    List<BuildingElement> theirs = elements(house);
    ClashFinder.Found found = found(ours, theirs);
    Set<String> fast = new TreeSet<>();
    Set<String> slow = new TreeSet<>();
    long tried = 0;
    for (BuildingElement a : ours) {
      Bvh tree = Bvh.of(a.shape());
      for (BuildingElement b : theirs) {
        String pair = pair(a, b);
        tried++;
        if (tree.meets(Bvh.of(b.shape()))) {
          fast.add(pair);
        }
        if (everyPairTried(a.shape(), b.shape())) {
          slow.add(pair);
        }
      }
    }
    assertThat(fast).isEqualTo(slow);
    Set<String> deep =
        found.clashes().stream()
            .filter(c -> c.cause() == Cause.INTERSECT)
            .map(c -> pair(c.part().element().orElseThrow(), c.thing().element()))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> nested = new TreeSet<>(deep);
    nested.removeAll(slow);
    int grouped = Issues.of(found.clashes(), "project").size();
    System.out.printf(
        "%s against %s: %d x %d elements, %d pairs, %d examined, %d meet (all pairs: %d), %d"
            + " intersect, of these %d wholly inside; %d raw in the way, %d issues%n",
        services,
        house,
        ours.size(),
        theirs.size(),
        tried,
        found.examined(),
        fast.size(),
        slow.size(),
        deep.size(),
        nested.size(),
        found.clashes().size(),
        grouped);
    assertThat(grouped).isLessThanOrEqualTo(found.clashes().size());
    assertThat(found.pairs()).isEqualTo(tried);
  }

  private static ClashFinder.Found found(List<BuildingElement> ours, List<BuildingElement> theirs) {
    List<Ours> parts = new ArrayList<>();
    for (BuildingElement e : ours) {
      parts.add(Ours.of("deck-1/field-1/x/" + e.instance(), PartKind.DOWNSPOUT, e));
    }
    Clearances clearances = Clearances.builtIn();
    List<Theirs> things = theirs.stream().map(e -> Theirs.of(e, clearances, List.of())).toList();
    return ClashFinder.find(List.of(), parts, things);
  }

  private static String pair(BuildingElement a, BuildingElement b) {
    return a.instance() + " " + b.instance();
  }

  /** Nothing but boxes that are apart spares a pair of triangles. */
  private static boolean everyPairTried(Mesh a, Mesh b) {
    return a.bounds().meets(b.bounds()) && SlowTriangles.meet(a, b);
  }
}
