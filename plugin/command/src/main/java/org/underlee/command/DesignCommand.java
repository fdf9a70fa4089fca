package org.underlee.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.underlee.check.OutletRatings;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.PartSearch;
import org.underlee.layout.Scope;
import org.underlee.report.ChecklistText;
import org.underlee.report.ClashText;
import org.underlee.report.DesignJson;
import org.underlee.report.DesignText;
import org.underlee.report.ExplainJson;
import org.underlee.report.ExplainText;
import org.underlee.report.RatingsText;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.OutletsRated;
import org.underlee.run.Survey;
import org.underlee.takeoff.Buying;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.writeback.SafeSave;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

@Command(
    name = "design",
    description = "Lays out the drainage and writes it into a copy of the model.",
    mixinStandardHelpOptions = true)
final class DesignCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "The drained copy; <name>.drained.ifc beside the model when not given.")
  Optional<Path> out = Optional.empty();

  @Option(
      names = "--in-place",
      description = "Write over the model itself; what it was is kept beside it as <name>.bak.")
  boolean inPlace;

  @Mixin KitOption kit = new KitOption();

  @Mixin BuyingOptions buying = new BuyingOptions();

  @Mixin WishOptions wishes = new WishOptions();

  @Option(
      names = "--takeoff",
      paramLabel = "FILE",
      description = "Also write the takeoff: .csv, .xlsx or .json.")
  Optional<Path> takeoff = Optional.empty();

  @Mixin RainOption rain = new RainOption();

  @Mixin IssueOptions issues = new IssueOptions();

  @Option(
      names = "--write-interferences",
      description = {
        "Also write what is in the way, as far as it is in this model, as"
            + " IfcRelInterferesElements; IFC2X3 has no such thing."
      })
  boolean interferences;

  @Mixin PictureOptions picture = new PictureOptions();

  @Option(
      names = "--explain",
      paramLabel = "PART",
      description = {
        "Print where each number of a part comes from, and write nothing; name it by id, label or"
            + " a piece of either."
      })
  Optional<String> explain = Optional.empty();

  @Option(
      names = "--checklist",
      description = "Also print what must be looked at on site; --json has it always.")
  boolean checklist;

  @Override
  public Integer call() {
    takeoff.ifPresent(f -> Output.requireTakeoffFormat(model, "--takeoff", f));
    requireOneTarget();
    requireNoTargetToExplain();
    picture.requireKnown(model);
    requireTargetNotRead();
    DeckRun.requireWritable(model.file);
    Kit chosen = kit.kit();
    Buying lists = buying.buying(List.of(chosen));
    Survey survey = model.survey();
    Scope scope = wishes.of(model.scope(), survey);
    Storm storm = rain.storm();
    Layout layout = DeckRun.layOut(survey, scope, chosen, storm);
    Design design = DeckRun.design(survey, scope, layout, storm, lists);
    if (explain.isPresent()) {
      explain(design, explain.get(), () -> OutletsRated.of(design, scope.wishes(), storm));
      return ExitCode.CLEAN;
    }
    Optional<Coordination> found =
        interferences ? DeckRun.coordinate(design, issues.before()) : issues.of(model, design);
    Design whole =
        interferences && found.isPresent()
            ? DeckRun.withInterferences(design, found.get())
            : design;
    String saved = save(whole);
    takeoff.ifPresent(f -> Output.takeoff(model, f, design));
    picture.draw(model, survey, Optional.of(design.layout()));
    model.print(model.json ? DesignJson.write(design, found) : text(design, found));
    model.say(outcome(whole, saved));
    found.filter(c -> interferences).ifPresent(c -> model.say(written(c)));
    found.ifPresent(c -> issues.write(model, c));
    int code = model.report(design.findings(), model.unitsFor(design.survey()));
    return found.filter(c -> issues.fails(model, c)).isPresent() ? ExitCode.FINDINGS : code;
  }

  private static String written(Coordination found) {
    int written = found.interferences().size();
    return String.format(
        Locale.ROOT,
        "Wrote %d interferences; %d are with things in other files, to which a model cannot point.",
        written,
        found.found().clashes().size() - written);
  }

  private void requireOneTarget() {
    if (inPlace
        && (out.isPresent() || ModelOptions.ending(model.file, List.of(".ifc")).isEmpty())) {
      throw new ParameterException(
          model.spec.commandLine(), "--in-place goes with an .ifc file, and without --out");
    }
  }

  private void requireNoTargetToExplain() {
    if (explain.isPresent() && (inPlace || out.isPresent() || takeoff.isPresent())) {
      throw new ParameterException(
          model.spec.commandLine(),
          "--explain writes nothing; leave out --out, --in-place and --takeoff");
    }
  }

  /** What is written without being named is not written over what the run reads or writes. */
  private void requireTargetNotRead() {
    if (explain.isEmpty() && inPlace) {
      model.files().requireFree(SafeSave.backup(model.file));
    } else if (explain.isEmpty() && out.isEmpty()) {
      model.files().requireFree(target());
    }
  }

  private String save(Design design) {
    if (inPlace) {
      boolean older = Files.exists(SafeSave.backup(model.file));
      Path backup = DeckRun.saveInPlace(design, model.file);
      String replaced = older ? " in place of an older one" : "";
      model.say("Kept what it was as " + backup + replaced + ".");
      return "Wrote " + model.file;
    }
    Path target = target();
    return model.files().wrote(target, () -> DeckRun.save(design, model.file, target));
  }

  private Path target() {
    return out.orElseGet(this::beside);
  }

  private String text(Design design, Optional<Coordination> found) {
    UnitSystem units = model.unitsFor(design.survey());
    String text =
        DesignText.write(design, units) + found.map(c -> ClashText.write(c, units)).orElse("");
    return checklist ? text + ChecklistText.write(design.checks().questions()) : text;
  }

  private void explain(Design design, String name, Supplier<List<OutletRatings>> ratings) {
    List<Part> all = design.layout().parts();
    List<Part> found = PartSearch.find(all, name);
    if (found.isEmpty()) {
      throw new ParameterException(
          model.spec.commandLine(),
          "--explain "
              + name
              + ": no part is called so; the nearest are "
              + String.join(", ", PartSearch.near(all, name)));
    }
    boolean outlets = found.stream().anyMatch(p -> p.kind() == PartKind.OUTLET);
    List<OutletRatings> rated = outlets ? ratings.get() : List.of();
    if (model.json) {
      model.print(ExplainJson.write(design.survey().source(), found, rated));
    } else if (found.size() == 1) {
      UnitSystem units = model.unitsFor(design.survey());
      String methods =
          rated.stream()
              .filter(r -> r.outlet().equals(found.get(0).id()))
              .map(r -> RatingsText.write(r, units))
              .collect(Collectors.joining());
      model.print(ExplainText.write(found.get(0), units) + methods);
    } else {
      model.print(ExplainText.list(found));
      model.say(found.size() + " parts are called so; name one of them.");
    }
  }

  private static String outcome(Design design, String saved) {
    int parts = design.layout().parts().size();
    return parts == 0
        ? saved + ": nothing was laid out; it is the model as it was."
        : String.format(
            Locale.ROOT,
            "%s: %d parts in %d new instances; the designer's bytes are unchanged.",
            saved,
            parts,
            design.written().instances());
  }

  private Path beside() {
    String name = model.file.getFileName().toString();
    String ending = ModelOptions.ending(model.file, List.of(".ifc", ".ifczip", ".zip"));
    String stem = name.substring(0, name.length() - ending.length());
    return model.file.resolveSibling(stem + ".drained.ifc");
  }
}
