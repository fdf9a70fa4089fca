package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Things of each kind that must be reached, one a bay above the pans of the pine deck. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class AccessTest {
  private static final double INCH = 25.4;

  /** Class and name in IFC2X3; nobody has to reach the last. */
  private static final List<List<String>> THINGS =
      List.of(
          List.of("IFCFLOWCONTROLLER", "Ball valve"),
          List.of("IFCFLOWFITTING", "Cleanout 4 in"),
          List.of("IFCFLOWFITTING", "Junction box"),
          List.of("IFCFLOWFITTING", "P-trap"),
          List.of("IFCFLOWCONTROLLER", "Fire damper"),
          List.of("IFCFLOWTERMINAL", "Hose bib"),
          List.of("IFCFLOWTERMINAL", "Luminaire"),
          List.of("IFCFLOWFITTING", "Elbow 2 in"));

  private Path folder;
  private Path drained;

  @BeforeAll
  void drainOnce(@TempDir Path temporary) throws IOException {
    folder = temporary;
    drained = PineIssues.drained(folder);
  }

  /** The first is over the pan of the first bay; bays are 16 in wide. */
  private List<Tracked> hidden(double inchesUp) throws IOException {
    String all = Files.readString(PineIssues.SERVICES);
    StringBuilder text = new StringBuilder(all.substring(0, all.indexOf("#100=")));
    for (int i = 0; i < THINGS.size(); i++) {
      text.append(box(200 + 10 * i, THINGS.get(i), 8 + 16 * i, inchesUp));
    }
    Path file = folder.resolve("access-" + inchesUp + ".ifc");
    Files.writeString(file, text + "ENDSEC;\nEND-ISO-10303-21;\n");
    return PineIssues.of(drained, IssueRegister.EMPTY, file).issues().stream()
        .filter(t -> t.cause() == Cause.HIDDEN)
        .toList();
  }

  private static String box(int id, List<String> thing, double x, double z) {
    return String.format(
        Locale.ROOT,
        "#%d=IFCRECTANGLEPROFILEDEF(.AREA.,$,#18,75.,75.);%n"
            + "#%d=IFCCARTESIANPOINT((%.2f,%.2f,%.2f));%n#%d=IFCAXIS2PLACEMENT3D(#%d,$,$);%n"
            + "#%d=IFCLOCALPLACEMENT(#12,#%d);%n#%d=IFCDIRECTION((0.,0.,1.));%n"
            + "#%d=IFCEXTRUDEDAREASOLID(#%d,#11,#%d,50.);%n"
            + "#%d=IFCSHAPEREPRESENTATION(#8,'Body','SweptSolid',(#%d));%n"
            + "#%d=IFCPRODUCTDEFINITIONSHAPE($,$,(#%d));%n"
            + "#%d=%s('0Access%015d',#6,'%s',$,$,#%d,#%d,$);%n",
        id,
        id + 1,
        x * INCH,
        30 * INCH,
        z * INCH,
        id + 2,
        id + 1,
        id + 3,
        id + 2,
        id + 4,
        id + 5,
        id,
        id + 4,
        id + 6,
        id + 5,
        id + 7,
        id + 6,
        id + 8,
        thing.get(0),
        id,
        thing.get(1),
        id + 3,
        id + 7);
  }

  @Test
  void whatMustBeReachedAboveAPanHasThePanMadeRemovable() throws IOException {
    List<Tracked> hidden = hidden(97);
    assertThat(hidden).hasSize(THINGS.size() - 1);
    for (int i = 0; i < THINGS.size() - 1; i++) {
      String name = THINGS.get(i).get(1);
      String bay = "deck-1/field-1/B" + (i + 1) + "/pan-1";
      assertThat(hidden)
          .as(name)
          .filteredOn(t -> t.title().contains("\"" + name + "\""))
          .singleElement()
          .satisfies(
              t ->
                  assertThat(t.ways().get(0).what().toString())
                      .startsWith("make " + bay + " removable"));
    }
    assertThat(hidden).noneMatch(t -> t.title().contains("Elbow"));
  }

  @Test
  void theSameBelowThePansIsReached() throws IOException {
    assertThat(hidden(60)).isEmpty();
  }
}
