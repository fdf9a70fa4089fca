package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import org.underlee.samples.StepFile.Ref;
import org.underlee.samples.StepFile.Typed;

/** The project, its units and contexts, and the spatial tree with its placements. */
final class Project {
  /** A placement and the frame in the world that it stands for. */
  record Placed(Ref placement, Frame world) {}

  private static final double PRECISION_MM = 0.001;

  private final StepFile file;
  private final Geometry geometry;
  private final SampleDeck sample;
  private final Mix mix;
  private final Ref history;
  private final Ref body;
  private final List<Ref> storeys = new ArrayList<>();
  private final List<Placed> storeyPlacements = new ArrayList<>();

  Project(StepFile file, Geometry geometry, SampleDeck sample, Mix mix) {
    this.file = file;
    this.geometry = geometry;
    this.sample = sample;
    this.mix = mix;
    this.history = ownerHistory();
    Ref model = model();
    this.body = bodyContext(model);
    Ref project =
        file.add(
            "IFCPROJECT",
            sample.globalId("project"),
            history,
            sample.name(),
            sample.description(),
            StepFile.NONE,
            StepFile.NONE,
            StepFile.NONE,
            List.of(model),
            new Units(file, mix.unit()).assignment());
    spatialTree(project);
  }

  Ref history() {
    return history;
  }

  /** The sub-context of the bodies. */
  Ref body() {
    return body;
  }

  Ref storey(int level) {
    return storeys.get(level);
  }

  Placed placement(int level) {
    return storeyPlacements.get(level);
  }

  /** A placement at {@code world}, relative to {@code parent}. */
  Placed placed(Placed parent, Frame world) {
    Frame relative = parent.world().inverse().then(world);
    return new Placed(
        file.add("IFCLOCALPLACEMENT", parent.placement(), geometry.axes(relative)), world);
  }

  Placed placed(Frame world) {
    return new Placed(file.add("IFCLOCALPLACEMENT", StepFile.NONE, geometry.axes(world)), world);
  }

  private Ref ownerHistory() {
    Ref person =
        file.add("IFCPERSON", "designer", none(), none(), none(), none(), none(), none(), none());
    Ref organization =
        file.add("IFCORGANIZATION", none(), "Underlee samples", none(), none(), none());
    Ref user = file.add("IFCPERSONANDORGANIZATION", person, organization, none());
    Ref application =
        file.add("IFCAPPLICATION", organization, "1", "Underlee samples", "underlee-samples");
    int created = 1772355600; // the time in the header
    return file.add(
        "IFCOWNERHISTORY",
        user,
        application,
        none(),
        StepFile.enumeration("NOCHANGE"),
        none(),
        none(),
        none(),
        created);
  }

  private static Object none() {
    return StepFile.NONE;
  }

  private Ref model() {
    return file.add(
        "IFCGEOMETRICREPRESENTATIONCONTEXT",
        none(),
        "Model",
        3,
        geometry.length(PRECISION_MM),
        geometry.axes(Frame.WORLD),
        none());
  }

  private Ref bodyContext(Ref model) {
    return file.add(
        "IFCGEOMETRICREPRESENTATIONSUBCONTEXT",
        "Body",
        "Model",
        StepFile.DERIVED,
        StepFile.DERIVED,
        StepFile.DERIVED,
        StepFile.DERIVED,
        model,
        none(),
        StepFile.enumeration("MODEL_VIEW"),
        none());
  }

  private void spatialTree(Ref project) {
    Frame world = sample.world(mix);
    Placed site = placed(siteFrame(world));
    Placed building =
        placed(site, mix.where() == Mix.Where.SITE_AND_BUILDING ? world : site.world());
    Ref theSite = site(site.placement());
    Ref theBuilding = building(building.placement());
    for (int i = 0; i < sample.levels().size(); i++) {
      double elevation = sample.levels().get(i).elevation();
      Frame frame = building.world().then(Frame.at(new Xyz(0, 0, elevation)));
      Placed storey = placed(building, frame);
      storeyPlacements.add(storey);
      storeys.add(storey(i, storey.placement()));
    }
    aggregate("site", project, List.of(theSite));
    aggregate("building", theSite, List.of(theBuilding));
    aggregate("storeys", theBuilding, storeys);
  }

  private Frame siteFrame(Frame world) {
    return switch (mix.where()) {
      case SITE -> world;
      case SITE_AND_BUILDING -> Frame.at(world.origin());
      case ELEMENTS -> Frame.WORLD;
    };
  }

  private Ref site(Ref placement) {
    return file.add(
        "IFCSITE",
        sample.globalId("site"),
        history,
        "Site",
        none(),
        none(),
        placement,
        none(),
        none(),
        StepFile.enumeration("ELEMENT"),
        none(),
        none(),
        none(),
        none(),
        none());
  }

  private Ref building(Ref placement) {
    return file.add(
        "IFCBUILDING",
        sample.globalId("building"),
        history,
        "House",
        none(),
        none(),
        placement,
        none(),
        none(),
        StepFile.enumeration("ELEMENT"),
        none(),
        none(),
        none());
  }

  private Ref storey(int level, Ref placement) {
    return file.add(
        "IFCBUILDINGSTOREY",
        sample.storeyId(level),
        history,
        sample.levels().get(level).name(),
        none(),
        none(),
        placement,
        none(),
        none(),
        StepFile.enumeration("ELEMENT"),
        geometry.length(sample.levels().get(level).elevation()));
  }

  void aggregate(String key, Ref whole, List<Ref> parts) {
    file.add(
        "IFCRELAGGREGATES",
        sample.globalId("aggregates/" + key),
        history,
        none(),
        none(),
        whole,
        List.copyOf(parts));
  }

  /** The units of a file. */
  private record Units(StepFile file, Mix.LengthUnit unit) {
    Ref assignment() {
      List<Ref> units = new ArrayList<>();
      units.add(length());
      units.add(si("AREAUNIT", "", "SQUARE_METRE"));
      units.add(si("VOLUMEUNIT", "", "CUBIC_METRE"));
      units.add(angle());
      return file.add("IFCUNITASSIGNMENT", List.copyOf(units));
    }

    private Ref length() {
      return switch (unit) {
        case MILLIMETRE -> si("LENGTHUNIT", "MILLI", "METRE");
        case METRE -> si("LENGTHUNIT", "", "METRE");
        case FOOT -> converted("FOOT", new Typed("IFCRATIOMEASURE", 0.3048), "");
        case INCH -> converted("INCH", new Typed("IFCLENGTHMEASURE", 25.4), "MILLI");
        case US_SURVEY_FOOT ->
            converted("US SURVEY FOOT", new Typed("IFCLENGTHMEASURE", 1200.0 / 3937), "");
      };
    }

    private Ref converted(String name, Typed factor, String prefix) {
      Ref exponents = file.add("IFCDIMENSIONALEXPONENTS", 1, 0, 0, 0, 0, 0, 0);
      Ref measure = file.add("IFCMEASUREWITHUNIT", factor, si("LENGTHUNIT", prefix, "METRE"));
      return file.add(
          "IFCCONVERSIONBASEDUNIT", exponents, StepFile.enumeration("LENGTHUNIT"), name, measure);
    }

    /** Degrees with the imperial units, as drawing programs have it. */
    private Ref angle() {
      Ref radian = si("PLANEANGLEUNIT", "", "RADIAN");
      if (unit == Mix.LengthUnit.MILLIMETRE || unit == Mix.LengthUnit.METRE) {
        return radian;
      }
      Ref none = file.add("IFCDIMENSIONALEXPONENTS", 0, 0, 0, 0, 0, 0, 0);
      Typed factor = new Typed("IFCPLANEANGLEMEASURE", Math.PI / 180);
      Ref measure = file.add("IFCMEASUREWITHUNIT", factor, radian);
      return file.add(
          "IFCCONVERSIONBASEDUNIT",
          none,
          StepFile.enumeration("PLANEANGLEUNIT"),
          "DEGREE",
          measure);
    }

    private Ref si(String kind, String prefix, String name) {
      return file.add(
          "IFCSIUNIT",
          StepFile.DERIVED,
          StepFile.enumeration(kind),
          StepFile.enumeration(prefix),
          StepFile.enumeration(name));
    }
  }
}
