package org.underlee.run;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.check.Answer;
import org.underlee.check.Checks;
import org.underlee.check.GutterInRain;
import org.underlee.clash.IssueRegister;
import org.underlee.drainage.DrainCases;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.WaterProver;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.finding.StopSign;
import org.underlee.framing.AssumedJoists;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.layout.Layouter;
import org.underlee.layout.Layouting;
import org.underlee.layout.Scope;
import org.underlee.step.StepFile;
import org.underlee.takeoff.Buying;
import org.underlee.takeoff.Takeoff;
import org.underlee.takeoff.TakeoffBuilder;
import org.underlee.writeback.BillLine;
import org.underlee.writeback.Provenance;
import org.underlee.writeback.SafeSave;
import org.underlee.writeback.Strip;
import org.underlee.writeback.WriteBack;

/**
 * The whole story in one place: read the designer's model, recognise the framing and its bays, lay
 * out an assembly, count it, write it into a copy.
 */
public final class DeckRun {
  private DeckRun() {}

  /**
   * What is recognised in a model. An assembly of ours that is there already is left aside.
   *
   * @throws InputException when the file cannot be read or used
   */
  public static Survey survey(Path file, SurveyRequest request) {
    return survey(Surveyor.opened(file, request.limits()), request);
  }

  /** As {@link #survey(Path, SurveyRequest)}, of nothing but what is in the model. */
  public static Survey survey(Path file) {
    return survey(file, SurveyRequest.PLAIN);
  }

  /** As {@link #survey(byte[], String, SurveyRequest)}, of nothing but what is in the model. */
  public static Survey survey(byte[] given, String name) {
    return survey(given, name, SurveyRequest.PLAIN);
  }

  /**
   * As {@link #survey(Path, SurveyRequest)}, from bytes: of a model, or of an archive that holds
   * one.
   */
  public static Survey survey(byte[] given, String name, SurveyRequest request) {
    return survey(StepFile.of(given, name, request.limits()), request);
  }

  static Survey survey(StepFile given, SurveyRequest request) {
    return Surveyor.survey(given, request, Set.of());
  }

  /**
   * Refuses a file that can be surveyed but not designed for, before any work is done for it.
   *
   * @throws InputException when it has 2 GiB or more
   */
  public static void requireWritable(Path file) {
    StepFile.requireWritable(file);
  }

  /**
   * The parts alone, for a picture that must keep up with a hand that drags.
   *
   * @param storm the rain that the gutters are for
   * @throws InputException when the scope names no deck of the model
   */
  public static Layout layOut(Survey survey, Scope scope, Kit kit, Storm storm) {
    GutterInRain rain =
        new GutterInRain(storm, ProofData.builtIn(), survey.elements(), scope.wishes());
    StopSign stop = StopSign.here();
    Layouting fields = Layouter.fieldByField(survey.framing(), survey.bays(), scope, kit, rain);
    return fields.together(
        i -> {
          stop.obey();
          return fields.layOut(i);
        });
  }

  /**
   * An assembly for the decks in scope, and the model with it written in.
   *
   * @throws InputException when the scope names no deck of the model
   */
  public static Design design(Survey survey, Scope scope, Kit kit, Storm storm) {
    return design(survey, scope, layOut(survey, scope, kit, storm), storm);
  }

  /** As {@link #design(Survey, Scope, Kit, Storm)}, of parts that are laid out already. */
  public static Design design(Survey survey, Scope scope, Layout layout, Storm storm) {
    return design(survey, scope, layout, storm, Buying.PLAIN);
  }

  /** The same, where prices or stock on hand are known. */
  public static Design design(
      Survey survey, Scope scope, Layout layout, Storm storm, Buying buying) {
    return design(survey, scope, layout, storm, buying, Map.of());
  }

  /** The same, with more of what is to be kept for a later resync. */
  static Design design(
      Survey survey,
      Scope scope,
      Layout layout,
      Storm storm,
      Buying buying,
      Map<String, String> kept) {
    StopSign stop = StopSign.here();
    Takeoff takeoff = TakeoffBuilder.of(layout, buying);
    stop.obey();
    Provenance provenance =
        new Provenance(
            Version.number(),
            FramingHash.of(survey.bays()),
            survey.request().assume().map(AssumedJoists::text),
            Decisions.told(survey, scope, storm, kept));
    WriteBack.Written written =
        WriteBack.drained(
            survey.model(), layout, BillLine.of(takeoff), takeoff.order(), provenance, List.of());
    stop.obey();
    DrainProof proof =
        WaterProver.prove(DrainCases.of(survey.bays(), layout, scope.wishes().onto()));
    stop.obey();
    Answer checks = Checks.of(survey.checkInput(layout, scope.wishes(), storm, proof));
    return new Design(survey, layout, checks, takeoff, proof, provenance, written);
  }

  /** As {@link #design(Survey, Scope, Kit, Storm)}, for the rain that holds for any place. */
  public static Design design(Survey survey, Scope scope, Kit kit) {
    return design(survey, scope, kit, RainData.builtIn().service(RainData.ANYWHERE));
  }

  /** Saves the drained model: verified, then moved into place in one step; never over the input. */
  public static void save(Design design, Path input, Path output) {
    new SafeSave()
        .drained(
            input, output, false, design.survey().model().step().bytes(), design.written().bytes());
  }

  /**
   * Saves the drained model over the input.
   *
   * @return the file beside it that keeps what it was
   */
  public static Path saveInPlace(Design design, Path input) {
    byte[] original = design.survey().model().step().bytes();
    return new SafeSave().inPlace(input, original, design.written().bytes());
  }

  /**
   * Saves the designer's model without our assembly.
   *
   * @return whether that is the designer's file byte for byte; if not, the model was edited around
   *     the assembly, and the edits are kept
   * @throws InputException when there is none of ours in the file
   */
  public static boolean strip(Path input, Path output) {
    requireWritable(input);
    Strip.Stripped stripped =
        Strip.original(Surveyor.opened(input).bytes())
            .orElseThrow(
                () ->
                    new InputException(
                        Place.NOWHERE.inFile(input.getFileName().toString()),
                        "there is no assembly of ours in the model",
                        "Give a model that design has written; the designer's file needs no"
                            + " stripping."));
    new SafeSave().plain(input, output, false, stripped.bytes());
    return stripped.exact();
  }

  /**
   * Proves an assembly as it stands in a model, whoever changed it since it was written, and even
   * where another program saved the model without the marks around it.
   *
   * @param deck the one to look at; all when empty
   * @throws InputException when there is none of ours in the file
   */
  public static Checked check(Path file, SurveyRequest request, Optional<String> deck) {
    return check(file, request, deck, Optional.empty());
  }

  /**
   * The same for an assembly made with a kit of the user's own.
   *
   * @param kit the one that it was made with; a built-in one is known by its name
   */
  public static Checked check(
      Path file, SurveyRequest request, Optional<String> deck, Optional<Kit> kit) {
    return withChecks(Surveyor.opened(file, request.limits()), request, deck, kit);
  }

  private static Checked withChecks(
      StepFile given, SurveyRequest request, Optional<String> deck, Optional<Kit> kit) {
    Checked proved = check(given, request, deck);
    return DesignChecks.of(
        IfcModel.of(given),
        proved,
        deck,
        kit,
        () -> check(given, request.withoutServices(), deck).survey());
  }

  /** As {@link #check(Path, SurveyRequest, Optional)}, from bytes. */
  public static Checked check(
      byte[] given, String name, SurveyRequest request, Optional<String> deck) {
    return withChecks(StepFile.of(given, name, request.limits()), request, deck, Optional.empty());
  }

  /** What was set right for the assembly holds, where nothing else is said now. */
  private static SurveyRequest keptIn(StepFile drained, SurveyRequest request) {
    return request.overrides().isPresent()
        ? request
        : Decisions.told(IfcModel.of(drained)).map(request::told).orElse(request);
  }

  private static Checked check(StepFile given, SurveyRequest request, Optional<String> deck) {
    StopSign stop = StopSign.here();
    stop.obey();
    List<WrittenPart> parts = WrittenPart.in(IfcModel.of(given));
    stop.obey();
    if (parts.isEmpty()) {
      throw new InputException(
          Place.NOWHERE.inFile(given.name()),
          "there is no assembly of ours in the model",
          "Give a model that design has written.");
    }
    Set<Long> unmarked =
        Strip.holdsUnmarked(given.bytes())
            ? parts.stream().map(p -> p.element().instance()).collect(Collectors.toSet())
            : Set.of();
    Survey all = Surveyor.survey(given, keptIn(given, request), unmarked);
    Survey survey = deck.map(all::only).orElse(all);
    return new Checked(
        survey,
        parts,
        WaterProver.prove(AsBuilt.cases(survey.bays(), parts, Decisions.onto(IfcModel.of(given)))));
  }

  /**
   * What a checked assembly hits, comes too near to and hides, in its model and in those of
   * services.
   *
   * @param file that was checked
   * @param kit to lay out again with, where that is a way out
   * @param before the issues of the run before
   */
  public static Coordination coordinate(Path file, Checked checked, Kit kit, IssueRegister before) {
    return Coordination.of(Surveyor.opened(file), checked, kit, before);
  }

  /**
   * What a design hits, comes too near to and hides: as {@link #coordinate(Path, Checked, Kit,
   * IssueRegister)} says of the model that it is written into.
   *
   * @return empty when nothing was laid out
   */
  public static Optional<Coordination> coordinate(Design design, IssueRegister before) {
    if (design.layout().parts().isEmpty()) {
      return Optional.empty();
    }
    SurveyRequest request = design.survey().request();
    StopSign stop = StopSign.here();
    StepFile drained =
        StepFile.of(
            design.written().bytes(), design.survey().model().step().name(), request.limits());
    stop.obey();
    Checked checked = check(drained, request, Optional.empty());
    return Optional.of(Coordination.of(drained, checked, design.layout().kit(), before));
  }

  /**
   * The same design with what is in its way written beside its parts, as far as that is in the
   * deck's own model.
   *
   * @throws InputException in IFC2X3, which has no relationship for it
   */
  public static Design withInterferences(Design design, Coordination found) {
    return design.with(
        WriteBack.drained(
            design.survey().model(),
            design.layout(),
            BillLine.of(design.takeoff()),
            design.takeoff().order(),
            design.provenance(),
            found.interferences()));
  }
}
