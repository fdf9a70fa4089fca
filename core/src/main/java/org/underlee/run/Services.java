package org.underlee.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.finding.Finding;
import org.underlee.finding.NotMeasured;
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
 * they come near a deck, in the deck model's world.
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

  /**
   * Reads the files.
   *
   * @param limits for each of the files
   * @param deck the model with the framing
   * @param own its elements
   */
  static Services near(
      List<Path> files,
      StepLimits limits,
      IfcModel deck,
      Framing framing,
      List<BuildingElement> own) {
    List<Box> decks = framing.fields().map(Services::around).toList();
    Set<String> known =
        own.stream().map(BuildingElement::globalId).collect(Collectors.toUnmodifiableSet());
    Services all =
        new Services(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (Path file : files) {
      all.read(Surveyor.opened(file, limits), deck, decks, known);
    }
    return all;
  }

  private void read(StepFile file, IfcModel deck, List<Box> decks, Set<String> known) {
    IfcModel model = IfcModel.of(file);
    sources.add(Source.of(file, file.sha256(), model));
    Federated placed = Federated.of(deck, model, file.name(), decks);
    ModelPart site = placed.near(decks, Federated.SAME_SITE);
    List<Box> near = decks.stream().map(d -> d.grown(NEAR)).toList();
    site.elements().stream()
        .filter(e -> !known.contains(e.globalId()))
        .filter(e -> near.stream().anyMatch(e.shape().bounds()::meets))
        .forEach(elements::add);
    notMeasured.addAll(site.notMeasured());
    findings.addAll(file.findings());
    findings.addAll(placed.findings());
  }

  private static Box around(Field field) {
    return Box.around(
        field.lines().stream()
            .flatMap(l -> l.plies().stream())
            .map(m -> m.element().shape().bounds())
            .toList());
  }
}
