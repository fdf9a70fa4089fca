package org.underlee.ids;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.ids.IdsReport.Outcome;
import org.underlee.ids.IdsReport.Status;
import org.underlee.ids.Specification.Cardinality;
import org.underlee.ids.Specification.Requirement;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Checks a model by an Information Delivery Specification (IDS 1.0). */
public final class IdsCheck {
  /** Instances named in a finding. */
  private static final int NAMED = 5;

  private static final String ADVICE = "Give these elements what the specification asks for.";

  private final StepFile file;
  private final FacetCheck facets;
  private final List<Outcome> outcomes = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  private IdsCheck(Schema schema, StepFile file) {
    this.file = file;
    this.facets = new FacetCheck(file, schema);
  }

  /**
   * Checks a model by a file.
   *
   * @param schema of the model: it says which attributes an entity has
   * @throws InputException when the file cannot be used
   */
  public static IdsReport of(Path ids, Schema schema, StepFile model) {
    return of(IdsReader.read(ids), schema, model);
  }

  /** As {@link #of(Path, Schema, StepFile)}, from bytes. */
  public static IdsReport of(byte[] ids, String name, Schema schema, StepFile model) {
    return of(IdsReader.read(ids, name), schema, model);
  }

  /** Checks a drained model by what our block promises: the program's own {@code underlee.ids}. */
  public static IdsReport byOwn(Schema schema, StepFile model) {
    try (InputStream in = IdsCheck.class.getResourceAsStream("underlee.ids")) {
      return of(in.readAllBytes(), "underlee.ids", schema, model);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static IdsReport of(List<Specification> all, Schema schema, StepFile model) {
    IdsCheck check = new IdsCheck(schema, model);
    // A file with nothing for this version is checked all the same: its author did not know better.
    boolean choice = all.stream().anyMatch(s -> s.versions().contains(model.schema()));
    for (Specification s : all) {
      if (choice && !s.versions().contains(model.schema())) {
        check.leaveOut(s);
      } else {
        check.specification(s);
      }
    }
    return new IdsReport(check.outcomes, check.findings);
  }

  private void leaveOut(Specification s) {
    outcomes.add(new Outcome(s.name(), Status.NOT_CHECKED, 0, 0));
    findings.add(
        Finding.of(
            IdsRules.OTHER_VERSION,
            Place.NOWHERE.inFile(file.name()),
            s.name() + " is for " + String.join(", ", s.versions()) + ", not " + file.schema(),
            "Nothing to do: the file has others for this version."));
  }

  private void specification(Specification s) {
    List<StepInstance> applicable = applicable(s);
    List<StepInstance> failed = new ArrayList<>();
    for (Requirement r : s.requirements()) {
      List<StepInstance> lacking =
          applicable.stream().filter(e -> !facets.fulfils(e, r.facet(), r.cardinality())).toList();
      if (!lacking.isEmpty()) {
        findings.add(lacking(s, r, lacking));
        failed.addAll(lacking);
      }
    }
    boolean counted = applicable.size() >= s.least() && applicable.size() <= s.most();
    if (!counted) {
      findings.add(count(s, applicable.size()));
    }
    int different = (int) failed.stream().map(StepInstance::id).distinct().count();
    Status status = counted && failed.isEmpty() ? Status.PASSED : Status.FAILED;
    outcomes.add(new Outcome(s.name(), status, applicable.size(), different));
  }

  private List<StepInstance> applicable(Specification s) {
    List<StepInstance> all = new ArrayList<>();
    for (int i = 0; i < file.count(); i++) {
      if (mayBe(s, file.keyword(i))) {
        StepInstance instance = file.decode(i);
        if (s.applicability().stream()
            .allMatch(f -> facets.fulfils(instance, f, Cardinality.REQUIRED))) {
          all.add(instance);
        }
      }
    }
    return all;
  }

  /** Looks at the keyword first: most instances need not be decoded. */
  private static boolean mayBe(Specification s, String keyword) {
    return !keyword.isEmpty()
        && s.applicability().stream()
            .allMatch(f -> !(f instanceof Facet.Entity e) || e.name().allows(keyword));
  }

  private static Finding lacking(Specification s, Requirement r, List<StepInstance> elements) {
    String ids =
        elements.stream().limit(NAMED).map(e -> "#" + e.id()).collect(Collectors.joining(", "));
    String must =
        switch (r.cardinality()) {
          case REQUIRED -> "lacks the ";
          case OPTIONAL -> "has a wrong ";
          case PROHIBITED -> "must not have the ";
        };
    String more = elements.size() > NAMED ? ", …" : "";
    return Finding.of(
        IdsRules.REQUIREMENT,
        elements.get(0).place(),
        s.name()
            + ": "
            + elements.get(0).keyword()
            + " "
            + must
            + r.facet().words()
            + "; "
            + elements.size()
            + (elements.size() == 1 ? " element: " : " elements: ")
            + ids
            + more,
        ADVICE);
  }

  private Finding count(Specification s, int there) {
    String wanted = s.most() == 0 ? "none" : "at least " + s.least();
    return Finding.of(
        IdsRules.COUNT,
        Place.NOWHERE.inFile(file.name()),
        s.name() + ": the model has " + there + " such elements, not " + wanted,
        ADVICE);
  }
}
