package org.underlee;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;

/**
 * What may use what, and what no class of the core may do. Rules are made for a root package, so
 * that they can be tried on classes that break them.
 */
final class Architecture {
  /** Allowed dependencies between packages, in reading order: the table of the design. */
  static final Map<String, List<String>> MAY_USE = new LinkedHashMap<>();

  static {
    MAY_USE.put("units", List.of());
    MAY_USE.put("geom", List.of("units"));
    MAY_USE.put("finding", List.of("units"));
    MAY_USE.put("step", List.of("finding"));
    MAY_USE.put("schema", List.of("step", "finding"));
    MAY_USE.put("ids", List.of("ifc", "schema", "step", "finding"));
    MAY_USE.put("ifc", List.of("step", "framing", "geom", "units", "finding"));
    MAY_USE.put("framing", List.of("geom", "units", "finding"));
    MAY_USE.put("bay", List.of("framing", "geom", "units", "finding"));
    MAY_USE.put("kit", List.of("units", "finding"));
    MAY_USE.put("layout", List.of("bay", "kit", "framing", "geom", "units", "finding"));
    MAY_USE.put("drainage", List.of("layout", "bay", "kit", "framing", "geom", "units", "finding"));
    MAY_USE.put(
        "check",
        List.of(
            "framing",
            "bay",
            "kit",
            "layout",
            "drainage",
            "drainage.flow",
            "geom",
            "units",
            "finding"));
    MAY_USE.put("clash", List.of("layout", "bay", "kit", "framing", "geom", "units", "finding"));
    MAY_USE.put("takeoff", List.of("layout", "framing", "drainage", "kit", "finding", "units"));
    MAY_USE.put(
        "writeback",
        List.of(
            "step",
            "ifc",
            "layout",
            "drainage",
            "takeoff",
            "kit",
            "framing",
            "geom",
            "finding",
            "units"));
    MAY_USE.put("drainage.flow", List.of("units", "finding"));
    MAY_USE.put("picture", List.of("geom", "framing", "bay", "layout", "units"));
    MAY_USE.put(
        "report",
        List.of(
            "run",
            "picture",
            "takeoff",
            "schema",
            "clash",
            "ids",
            "check",
            "drainage",
            "layout",
            "kit",
            "bay",
            "framing",
            "geom",
            "finding",
            "units"));
    MAY_USE.put("run", MAY_USE.keySet().stream().filter(p -> !p.equals("report")).toList());
  }

  /** What a reader of models must give the framing, and all that it may know of it. */
  private static final List<String> FRAMING_PORTS =
      List.of("BuildingElement", "ElementSource", "Storey");

  /** What a report may know of the run: what went in and what came out. */
  private static final List<String> RUN_RECORDS =
      List.of(
          "Survey",
          "Design",
          "Source",
          "SurveyRequest",
          "Overrides",
          "Checked",
          "WrittenPart",
          "SchemaChecked",
          "Resynced",
          "Decision",
          "BayChange",
          "Kind",
          "MatchedBy",
          "Parts",
          "IdsChecked",
          "Coordination",
          "Region",
          "Version",
          "ModelResult",
          "Outcome",
          "Counts",
          "Comparison",
          "Arrangement");

  private final String root;

  Architecture(String root) {
    this.root = root;
  }

  ArchRule dependenciesOf(String name) {
    String[] allowed =
        Stream.concat(Stream.of(name), MAY_USE.get(name).stream())
            .map(this::in)
            .toArray(String[]::new);
    return classes()
        .that()
        .resideInAPackage(in(name))
        .should()
        .onlyDependOnClassesThat(
            resideInAnyPackage(allowed).or(DescribedPredicate.not(resideInAPackage(root + ".."))))
        .allowEmptyShould(true)
        .as(name + " uses no package of ours but " + MAY_USE.get(name));
  }

  ArchRule unitsUseTheJdkOnly() {
    return classes()
        .that()
        .resideInAPackage(in("units"))
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(in("units"), "java..", "org.jspecify..");
  }

  ArchRule theIfcReaderKnowsOnlyThePortsOfTheFraming() {
    return onlyKnows("ifc", "framing", FRAMING_PORTS);
  }

  ArchRule reportsKnowOnlyTheRecordsOfTheRun() {
    return onlyKnows("report", "run", RUN_RECORDS);
  }

  private ArchRule onlyKnows(String user, String used, List<String> names) {
    return noClasses()
        .that()
        .resideInAPackage(in(user))
        .should()
        .dependOnClassesThat(
            resideInAPackage(in(used))
                .and(
                    DescribedPredicate.describe(
                        "are none of " + names, c -> !names.contains(c.getSimpleName()))))
        .allowEmptyShould(true);
  }

  ArchRule packagesAreFreeOfCycles() {
    return slices().matching(root + ".(*)..").should().beFreeOfCycles();
  }

  ArchRule noScreen() {
    return noClasses().should().dependOnClassesThat().resideInAnyPackage("javafx..", "java.awt..");
  }

  ArchRule noStandardStreams() {
    return noClasses()
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(Throwable.class, "printStackTrace");
  }

  ArchRule noClock() {
    return noClasses()
        .should()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethodWhere(target(owner(resideInAPackage("java.time.."))).and(target(name("now"))))
        .orShould()
        .callConstructor(java.util.Date.class);
  }

  ArchRule noDefaultLocale() {
    return noClasses()
        .should()
        .callMethod(String.class, "format", String.class, Object[].class)
        .orShould()
        .callMethod(String.class, "formatted", Object[].class)
        .orShould()
        .callMethod(String.class, "toUpperCase")
        .orShould()
        .callMethod(String.class, "toLowerCase")
        .orShould()
        .callMethodWhere(
            target(owner(name(Locale.class.getName()))).and(target(name("getDefault"))));
  }

  ArchRule noChance() {
    return noClasses()
        .should()
        .callMethod(Math.class, "random")
        .orShould()
        .callConstructor(Random.class)
        .orShould()
        .callMethod(java.util.UUID.class, "randomUUID")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.util.concurrent.ThreadLocalRandom");
  }

  ArchRule noMutableStaticFields() {
    return fields()
        .that(
            DescribedPredicate.describe(
                "are static and written by hand",
                f ->
                    f.getModifiers().contains(JavaModifier.STATIC)
                        && !f.getModifiers().contains(JavaModifier.SYNTHETIC)))
        .should(beConstant());
  }

  /**
   * Final, and of no type that is there to be changed. Collections are held by their interface, so
   * only their making could tell; an array never leaves its class.
   */
  private static ArchCondition<JavaField> beConstant() {
    return new ArchCondition<>("be constant") {
      @Override
      public void check(JavaField field, ConditionEvents events) {
        JavaClass type = field.getRawType();
        boolean isFinal = field.getModifiers().contains(JavaModifier.FINAL);
        boolean hiddenArray =
            !type.isArray() || field.getModifiers().contains(JavaModifier.PRIVATE);
        boolean changes =
            type.isAssignableTo(StringBuilder.class)
                || type.getPackageName().startsWith("java.util.concurrent")
                || type.isAssignableTo(Collection.class) && !type.isInterface()
                || type.isAssignableTo(Map.class) && !type.isInterface();
        events.add(
            new SimpleConditionEvent(
                field,
                isFinal && hiddenArray && !changes,
                field.getFullName() + " is static and not constant"));
      }
    };
  }

  List<ArchRule> everyRule() {
    return Stream.concat(
            MAY_USE.keySet().stream().map(this::dependenciesOf),
            Stream.of(
                unitsUseTheJdkOnly(),
                theIfcReaderKnowsOnlyThePortsOfTheFraming(),
                reportsKnowOnlyTheRecordsOfTheRun(),
                packagesAreFreeOfCycles(),
                noScreen(),
                noStandardStreams(),
                noClock(),
                noDefaultLocale(),
                noChance(),
                noMutableStaticFields()))
        .toList();
  }

  private String in(String name) {
    return root + "." + name + "..";
  }
}
