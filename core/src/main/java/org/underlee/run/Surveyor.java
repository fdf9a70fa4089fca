package org.underlee.run;

import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.finding.FileFault;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.finding.StopSign;
import org.underlee.framing.AssumedFraming;
import org.underlee.framing.ElementSource;
import org.underlee.framing.Framer;
import org.underlee.framing.Framing;
import org.underlee.framing.Neighbourhood;
import org.underlee.framing.Told;
import org.underlee.ifc.IfcModel;
import org.underlee.ifc.ModelPart;
import org.underlee.step.StepFile;
import org.underlee.step.StepLimits;
import org.underlee.writeback.Strip;

/** How a model is opened and surveyed: what {@link DeckRun} begins with. */
final class Surveyor {
  private Surveyor() {}

  /**
   * Surveys a model.
   *
   * @param ours instances of an assembly whose marks are gone, to be left aside one by one
   */
  static Survey survey(StepFile given, SurveyRequest request, Set<Long> ours) {
    StopSign stop = StopSign.here();
    stop.obey();
    Optional<Strip.Stripped> stripped =
        ours.isEmpty() && Strip.mayHold(given) ? Strip.original(given.bytes()) : Optional.empty();
    StepFile designers =
        stripped.map(s -> StepFile.of(s.bytes(), given.name(), request.limits())).orElse(given);
    stop.obey();
    IfcModel model = IfcModel.of(designers);
    stop.obey();
    Optional<AssumedFraming> assumed = request.assume().map(a -> AssumedFraming.in(model, a));
    ModelPart all = assumed.isPresent() ? model.whole() : nearFraming(model, request.told());
    ModelPart part = all.without(ours);
    // From here on one processor works alone, so that the other has time for this.
    CompletableFuture<String> sha256 = CompletableFuture.supplyAsync(given::sha256);
    ElementSource elements = assumed.<ElementSource>map(a -> a).orElse(part);
    Framing framing = Framer.frame(elements, request.told());
    stop.obey();
    Services services =
        Services.near(request.services(), request.limits(), model, framing, elements.elements());
    CrossingFinder crossings =
        new CrossingFinder(elements.elements(), framing, services.elements());
    List<FieldBays> bays =
        framing
            .fields()
            .parallel()
            .map(
                f -> {
                  stop.obey();
                  return BayFinder.find(f, crossings);
                })
            .toList();
    List<Finding> findings = new ArrayList<>(model.step().findings());
    findings.addAll(model.findings(part));
    stripped.filter(s -> !s.exact()).ifPresent(s -> findings.add(edited(given.name())));
    List<NotMeasured> unread = new ArrayList<>(framing.notMeasured());
    unread.addAll(services.notMeasured());
    notMeasured(unread).ifPresent(findings::add);
    findings.addAll(services.findings());
    assumed.map(AssumedFraming::finding).ifPresent(findings::add);
    findings.addAll(framing.findings());
    return HighLines.asAsked(
        new Survey(
            Source.of(given, sha256.join(), model),
            services.sources(),
            model,
            request,
            framing.withNotMeasured(unread),
            bays,
            Stream.concat(elements.elements().stream(), services.elements().stream()).toList(),
            findings));
  }

  /** Most of a building is nowhere near a deck and need not be measured. */
  private static ModelPart nearFraming(IfcModel model, Told told) {
    return model.near(
        Neighbourhood::isMadeOf,
        Neighbourhood::mayTell,
        bars -> {
          Neighbourhood places = Neighbourhood.of(bars, told);
          return places.isEmpty() ? Optional.empty() : Optional.of(places::concerns);
        });
  }

  private static Optional<Finding> notMeasured(List<NotMeasured> all) {
    return all.stream()
        .findFirst()
        .map(
            first ->
                Finding.of(
                    Rules.NOT_MEASURED,
                    first.place(),
                    all.size()
                        + (all.size() == 1 ? " element" : " elements")
                        + " could not be measured and may be missing from the result. The first: "
                        + first.why(),
                    "See notMeasured in the JSON for all; export their bodies in a simpler form."));
  }

  private static Finding edited(String name) {
    return Finding.of(
        Rules.EDITED,
        Place.NOWHERE.inFile(name),
        "The model was edited after the assembly was written into it; the edits are kept.",
        "Check that they were meant.");
  }

  static StepFile opened(Path file) {
    return opened(file, StepLimits.STANDARD);
  }

  static StepFile opened(Path file, StepLimits limits) {
    try {
      return StepFile.read(file, limits);
    } catch (UncheckedIOException e) {
      throw unreadable(file, e);
    }
  }

  private static InputException unreadable(Path file, UncheckedIOException why) {
    Place place = Place.NOWHERE.inFile(file.toString());
    if (Files.isDirectory(file)) {
      return new InputException(
          place,
          "this is a folder, not a file",
          "Name a model in it. All models of a folder can be surveyed, designed for or checked"
              + " at once, as in: underlee survey "
              + file);
    }
    return Files.exists(file)
        ? new InputException(
            place,
            "the file cannot be read: " + FileFault.words(why),
            "Check the rights to the file.")
        : new InputException(
            place,
            "there is no such file",
            FileFault.meant(file).map(f -> "Did you mean " + f + "?").orElse("Check the path."));
  }
}
