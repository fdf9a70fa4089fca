package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.run.Coordination;

/** Services with other origins than the deck's. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FederationTest {
  private Path folder;
  private Path drained;
  private List<Tracked> asDrawn;

  @BeforeAll
  void drainOnce(@TempDir Path temporary) throws IOException {
    folder = temporary;
    Path plain = PineIssues.drained(folder);
    asDrawn = PineIssues.of(plain, IssueRegister.EMPTY, PineIssues.SERVICES).issues();
    // 1000 m east of the map's origin, in feet, not turned
    drained =
        Files.writeString(
            folder.resolve("on-map.ifc"),
            with(
                Files.readString(plain),
                "#900001=IFCPROJECTEDCRS('EPSG:1',$,$,$,$,$,$);\n"
                    + "#900002=IFCMAPCONVERSION(#900003,#900001,3280.839895013123,0.,0.,1.,0.,1.);\n"));
  }

  private static String with(String model, String lines) {
    return model.replace("\nDATA;\n", "\nDATA;\n" + lines);
  }

  /** The services moved by 100 m along x in their own world. */
  private static String moved() throws IOException {
    return with(
        Files.readString(PineIssues.SERVICES)
            .replace("#12=IFCLOCALPLACEMENT($,#11);", "#12=IFCLOCALPLACEMENT($,#21);"),
        "#20=IFCCARTESIANPOINT((100000.,0.,0.));\n#21=IFCAXIS2PLACEMENT3D(#20,$,$);\n");
  }

  private Coordination found(String services, String name) throws IOException {
    Path file = Files.writeString(folder.resolve(name), services);
    return PineIssues.of(drained, IssueRegister.EMPTY, file);
  }

  private static List<String> rules(Coordination c) {
    return c.checked().survey().findings().stream()
        .map(Finding::rule)
        .map(r -> r.id())
        .filter(id -> id.startsWith("services-"))
        .toList();
  }

  @Test
  void aModelWithAnotherOriginIsPlacedByTheMapThatBothAreOn() throws IOException {
    String services =
        with(
            moved(),
            "#30=IFCPROJECTEDCRS('EPSG:1',$,$,$,$,$,$);\n"
                + "#31=IFCMAPCONVERSION(#8,#30,900000.,0.,0.,1.,0.,1.);\n");
    Coordination found = found(services, "map.ifc");
    assertThat(rules(found)).containsExactly("services-moved");
    assertThat(found.issues()).hasSameSizeAs(asDrawn);
    for (int i = 0; i < asDrawn.size(); i++) {
      Issue here = found.issues().get(i).issue().orElseThrow();
      Issue there = asDrawn.get(i).issue().orElseThrow();
      assertThat(here.id()).isEqualTo(there.id());
      assertThat(here.worst().amount()).isCloseTo(there.worst().amount(), within(1e-6));
    }
  }

  /**
   * IFC2X3 has no map conversion; its property sets stand on the site, in the model's unit or the
   * map's.
   */
  @ParameterizedTest
  @CsvSource({"IFCREAL(900.), METRE", "IFCLENGTHMEASURE(900000.), ''", "IFCTEXT('900.'), m"})
  void aModelOfTheOlderSchemaIsPlacedByThePropertySetsOfItsSite(String east, String unit)
      throws IOException {
    Coordination found = found(with(moved(), propertySets(east, unit)), "sets.ifc");
    assertThat(rules(found)).containsExactly("services-moved");
    assertThat(found.issues())
        .extracting(Tracked::id)
        .containsExactlyElementsOf(asDrawn.stream().map(Tracked::id).toList());
  }

  @Test
  void aMapPropertyThatIsNoNumberIsNamed() {
    assertThatThrownBy(() -> found(with(moved(), propertySets("IFCTEXT('far')", "m")), "far.ifc"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("Eastings should be a number but is \"far\"");
  }

  private static String propertySets(String east, String unit) {
    return """
        #40=IFCSITE('0S00000000000000000077',#6,$,$,$,#12,$,$,.ELEMENT.,$,$,$,$,$);
        #41=IFCPROPERTYSINGLEVALUE('Eastings',$,%s,$);
        #42=IFCPROPERTYSET('0S00000000000000000078',#6,'EPset_MapConversion',$,(#41));
        #43=IFCRELDEFINESBYPROPERTIES('0S00000000000000000079',#6,$,$,(#40),#42);
        #44=IFCPROPERTYSINGLEVALUE('Name',$,IFCLABEL('EPSG:1'),$);
        #45=IFCPROPERTYSINGLEVALUE('MapUnit',$,IFCTEXT('%s'),$);
        #46=IFCPROPERTYSET('0S00000000000000000080',#6,'ePset_ProjectedCRS',$,(#44,#45));
        #47=IFCRELDEFINESBYPROPERTIES('0S00000000000000000081',#6,$,$,(#40),#46);
        """
        .formatted(east, unit);
  }

  /** Turned by a right angle: its x is the map's north. */
  @Test
  void aMapThatIsTurnedTurnsTheModelBack() throws IOException {
    String services =
        with(
            Files.readString(PineIssues.SERVICES)
                .replace("#12=IFCLOCALPLACEMENT($,#11);", "#12=IFCLOCALPLACEMENT($,#21);"),
            "#20=IFCDIRECTION((0.,-1.,0.));\n#22=IFCDIRECTION((0.,0.,1.));\n"
                + "#21=IFCAXIS2PLACEMENT3D(#10,#22,#20);\n"
                + "#30=IFCPROJECTEDCRS('EPSG:1',$,$,$,$,$,$);\n"
                + "#31=IFCMAPCONVERSION(#8,#30,1000000.,0.,0.,0.,1.,1.);\n");
    Coordination found = found(services, "turned.ifc");
    assertThat(rules(found)).containsExactly("services-moved");
    assertThat(found.issues())
        .extracting(Tracked::id)
        .containsExactlyElementsOf(asDrawn.stream().map(Tracked::id).toList());
  }

  @Test
  void modelsOnDifferentMapsThatAreFarApartCannotBelongTogether() throws IOException {
    String services =
        with(
            moved(),
            "#30=IFCPROJECTEDCRS('EPSG:2',$,$,$,$,$,$);\n"
                + "#31=IFCMAPCONVERSION(#8,#30,900000.,0.,0.,1.,0.,1.);\n");
    Coordination found = found(services, "other-map.ifc");
    assertThat(rules(found)).containsExactly("services-other-map", "services-elsewhere");
    assertThat(found.issues()).isEmpty();
  }

  @Test
  void aModelWithTheSameSiteElsewhereIsPlacedByTheSite() throws IOException {
    String site =
        Files.readString(drained)
            .lines()
            .filter(l -> l.contains("IFCSITE("))
            .findFirst()
            .orElseThrow();
    String id = site.replaceFirst("(?s).*IFCSITE\\('([^']*)'.*", "$1");
    String services =
        with(moved(), "#40=IFCSITE('" + id + "',#6,$,$,$,#12,$,$,.ELEMENT.,$,$,$,$,$);\n");
    Coordination found = found(services, "site.ifc");
    assertThat(rules(found)).containsExactly("services-moved");
    assertThat(found.issues())
        .extracting(Tracked::id)
        .containsExactlyElementsOf(asDrawn.stream().map(Tracked::id).toList());
  }
}
