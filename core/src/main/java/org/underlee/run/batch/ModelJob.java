package org.underlee.run.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.kit.Kit;
import org.underlee.layout.Scope;
import org.underlee.run.Checked;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Overrides;
import org.underlee.run.Survey;
import org.underlee.run.SurveyRequest;
import org.underlee.writeback.NotWrittenException;

/** What is done with each model of a folder. */
public sealed interface ModelJob {
  /** The verb. */
  String name();

  /** All that a result depends on beside the model and the program: two equal texts, one result. */
  default String settings() {
    return name();
  }

  /** Whether what an earlier run saved for a model is still there. */
  default boolean stillThere(String label) {
    return true;
  }

  /** Whether drained copies that lie beside their models are looked at, too. */
  default boolean isForCopies() {
    return false;
  }

  ModelResult.Counts of(Path model, String label);

  /** What is recognised. */
  record SurveyEach() implements ModelJob {
    @Override
    public String name() {
      return "survey";
    }

    @Override
    public ModelResult.Counts of(Path model, String label) {
      Survey survey = DeckRun.survey(model, request(model));
      return counts(survey, 0, OptionalDouble.empty(), survey.findings());
    }
  }

  /** An assembly in each, saved under the output folder at the model's own path. */
  record DesignEach(Kit kit, Storm storm, Path out) implements ModelJob {
    @Override
    public String name() {
      return "design";
    }

    @Override
    public String settings() {
      return "design " + kit + " " + storm;
    }

    @Override
    public boolean stillThere(String label) {
      return Files.isRegularFile(target(label));
    }

    @Override
    public ModelResult.Counts of(Path model, String label) {
      DeckRun.requireWritable(model);
      Design design =
          DeckRun.design(DeckRun.survey(model, request(model)), Scope.OUTSIDE, kit, storm);
      Path target = target(label);
      makeFolderFor(target);
      DeckRun.save(design, model, target);
      return counts(
          design.survey(),
          design.layout().parts().size(),
          dry(design.proof().area(), design.proof().dryFraction()),
          design.findings());
    }

    private Path target(String label) {
      int dot = label.lastIndexOf('.');
      return out.resolve(label.substring(0, dot) + ".drained.ifc");
    }
  }

  /** The assembly that stands in each. */
  record CheckEach() implements ModelJob {
    @Override
    public boolean isForCopies() {
      return true;
    }

    @Override
    public String name() {
      return "check";
    }

    @Override
    public ModelResult.Counts of(Path model, String label) {
      Checked checked = DeckRun.check(model, request(model), Optional.empty());
      return counts(
          checked.survey(),
          checked.parts().size(),
          dry(checked.proof().area(), checked.proof().dryFraction()),
          checked.findings());
    }
  }

  private static SurveyRequest request(Path model) {
    return new SurveyRequest(Optional.empty(), Overrides.beside(model), java.util.List.of());
  }

  private static OptionalDouble dry(double area, double fraction) {
    return area > 0 ? OptionalDouble.of(fraction) : OptionalDouble.empty();
  }

  private static ModelResult.Counts counts(
      Survey survey, int parts, OptionalDouble dry, Collection<Finding> findings) {
    return new ModelResult.Counts(
        survey.framing().decks().size(),
        (int) survey.framing().fields().count(),
        survey.bays().stream().mapToInt(b -> b.bays().size()).sum(),
        parts,
        dry,
        at(findings, Level.NOTE),
        at(findings, Level.WARNING),
        at(findings, Level.ERROR));
  }

  private static int at(Collection<Finding> findings, Level level) {
    return (int) findings.stream().filter(f -> f.level() == level).count();
  }

  private static void makeFolderFor(Path file) {
    Path folder = file.resolveSibling("");
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new NotWrittenException(
          "the folder " + folder + " could not be made: " + e.getMessage(),
          "Check the rights to the folder above it, or choose another --out.",
          e);
    }
  }
}
