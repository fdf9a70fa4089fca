package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.finding.Finding;
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

  /** IFC2X3 has no class for a map; the site's property sets say it, here in metres. */
  @Test
  void inTheOldSchemaTheMapIsReadFromTheSitesProperties() throws IOException {
    String services =
        with(
            moved(),
            "#30=IFCSITE('2o_Hapdn97b181cH96tApM',#6,$,$,$,#12,$,$,.ELEMENT.,$,$,$,$,$);\n"
                + "#31=IFCPROPERTYSINGLEVALUE('Eastings',$,IFCREAL(900.),$);\n"
                + "#32=IFCPROPERTYSINGLEVALUE('Northings',$,IFCREAL(0.),$);\n"
                + "#33=IFCPROPERTYSET('2o_Hapdn97b181cH96tApN',#6,'ePSet_MapConversion',$,"
                + "(#31,#32));\n"
                + "#34=IFCPROPERTYSINGLEVALUE('Name',$,IFCLABEL('EPSG:1'),$);\n"
                + "#35=IFCPROPERTYSINGLEVALUE('MapUnit',$,IFCIDENTIFIER('METRE'),$);\n"
                + "#36=IFCPROPERTYSET('2o_Hapdn97b181cH96tApO',#6,'ePSet_ProjectedCRS',$,"
                + "(#34,#35));\n"
                + "#37=IFCRELDEFINESBYPROPERTIES('2o_Hapdn97b181cH96tApP',#6,$,$,(#30),#33);\n"
                + "#38=IFCRELDEFINESBYPROPERTIES('2o_Hapdn97b181cH96tApQ',#6,$,$,(#30),#36);\n");
    Coordination found = found(services, "old-map.ifc");
    assertThat(rules(found)).containsExactly("services-moved");
    assertThat(found.issues())
        .extracting(Tracked::id)
        .containsExactlyElementsOf(asDrawn.stream().map(Tracked::id).toList());
  }

  /** One place in Oslo, one in Rome: 2000 km. */
  @Test
  void sitesFarApartOnEarthAreSaidToBe() throws IOException {
    String site = "#40=IFCSITE('2o_Hapdn97b181cH96tApR',#6,$,$,$,#12,$,$,.ELEMENT.,%s,$,$,$);\n";
    String own = Files.readString(drained);
    String oslo =
        own.replaceFirst(
            "(IFCSITE\\('[^']*',[^;]*\\.ELEMENT\\.),[^,]*,[^,]*,", "$1,(59,54,0),(10,45,0),");
    assertThat(oslo).isNotEqualTo(own);
    Path deck = Files.writeString(folder.resolve("oslo.ifc"), oslo);
    for (String place : List.of("(41,54,0),(12,29,0)", "(59,54,10),(10,45,10)")) {
      Path file =
          Files.writeString(
              folder.resolve("place.ifc"),
              with(Files.readString(PineIssues.SERVICES), String.format(site, place)));
      Coordination found = PineIssues.of(deck, IssueRegister.EMPTY, file);
      assertThat(rules(found))
          .isEqualTo(place.startsWith("(41") ? List.of("services-other-place") : List.of());
    }
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
