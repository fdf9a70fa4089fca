package org.underlee.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.finding.Finding;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.geom.Box;
import org.underlee.ifc.IfcModel;
import org.underlee.ifc.ModelPart;
import org.underlee.step.StepFile;
import org.underlee.step.StepLimits;

/**
 * Models of pipes, ducts and the like, in their own units, schemas and origins. They are read where
 * they come near a deck; their world is taken to be the deck model's.
 *
 * @param sources the files
 * @param elements what of them is near a deck; no element that the deck's model has itself
 */
record Services(
    List<Source> sources,
    List<BuildingElement> elements,
    List<NotMeasured> notMeasured,
    List<Finding> findings) {
  /** An assembly hangs no further from the joists than this. */
  private static final double NEAR = 0.5;

  /** A model with nothing this near to a deck has another origin, or belongs to another house. */
  private static final double SAME_SITE = 50;

  /**
   * Reads the files.
   *
   * @param limits for each of the files
   * @param own the elements of the deck's model
   */
  static Services near(
      List<Path> files, StepLimits limits, Framing framing, List<BuildingElement> own) {
    List<Box> decks = framing.fields().map(Services::around).toList();
    Set<String> known =
        own.stream().map(BuildingElement::globalId).collect(Collectors.toUnmodifiableSet());
    Services all =
        new Services(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (Path file : files) {
      all.read(DeckRun.opened(file, limits), decks, known);
    }
    return all;
  }

  private void read(StepFile file, List<Box> decks, Set<String> known) {
    IfcModel model = IfcModel.of(file);
    sources.add(Source.of(file, file.sha256(), model));
    ModelPart site = part(model, decks, SAME_SITE);
    List<Box> near = decks.stream().map(d -> d.grown(NEAR)).toList();
    site.elements().stream()
        .filter(e -> !known.contains(e.globalId()))
        .filter(e -> near.stream().anyMatch(e.shape().bounds()::meets))
        .map(e -> e.in(file.name()))
        .forEach(elements::add);
    notMeasured.addAll(site.notMeasured());
    findings.addAll(file.findings());
    if (site.elements().isEmpty() && !decks.isEmpty()) {
      findings.add(elsewhere(file.name()));
    }
  }

  private static ModelPart part(IfcModel model, List<Box> decks, double reach) {
    List<Box> wanted = decks.stream().map(d -> d.grown(reach)).toList();
    return model.near(
        ifcClass -> false,
        box -> false,
        none -> Optional.of((ifcClass, box) -> wanted.stream().anyMatch(box::meets)));
  }

  private static Box around(Field field) {
    return Box.around(
        field.lines().stream()
            .flatMap(l -> l.plies().stream())
            .map(m -> m.element().shape().bounds())
            .toList());
  }

  private static Finding elsewhere(String name) {
    return Finding.of(
        Rules.SERVICES_ELSEWHERE,
        Place.NOWHERE.inFile(name),
        "Nothing in this model is within "
            + Math.round(SAME_SITE)
            + " m of a deck; it may have another origin.",
        "Export both models with the same origin and unit, or leave this one out.");
  }
}
