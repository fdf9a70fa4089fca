package org.underlee.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.clash.ClashFinder;
import org.underlee.clash.Clearances;
import org.underlee.clash.Headroom;
import org.underlee.clash.Issue;
import org.underlee.clash.IssueRegister;
import org.underlee.clash.Issues;
import org.underlee.clash.Ours;
import org.underlee.clash.Theirs;
import org.underlee.clash.Theirs.Zone;
import org.underlee.clash.Tracked;
import org.underlee.clash.WaysOut;
import org.underlee.finding.StopSign;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.Kit;
import org.underlee.step.StepFile;
import org.underlee.writeback.Interference;

/**
 * What the assembly in a model hits, comes too near to and hides, there and in the models of
 * services: grouped, followed over time, with ways out.
 *
 * @param checked the assembly as it stands
 * @param parts of it
 * @param things near to it
 * @param found every pair, before they were grouped
 * @param issues the gravest first, then what is gone
 * @param register the file of issues as it should be after this run
 */
public record Coordination(
    Checked checked,
    List<Ours> parts,
    List<Theirs> things,
    ClashFinder.Found found,
    List<Tracked> issues,
    IssueRegister register,
    Map<String, StepFile> files) {
  /** The room over these is looked at. */
  private static final Set<String> STAIRS =
      Set.of("IfcStair", "IfcStairFlight", "IfcRamp", "IfcRampFlight");

  /** Where in a file something is written. */
  public record Region(String file, long offset, long length) {}

  public Coordination {
    parts = List.copyOf(parts);
    things = List.copyOf(things);
    issues = List.copyOf(issues);
    files = Map.copyOf(files);
  }

  static Coordination of(StepFile given, Checked checked, Kit kit, IssueRegister before) {
    StopSign stop = StopSign.here();
    stop.obey();
    Survey survey = checked.survey();
    List<Path> services = survey.request().services();
    List<Ours> parts =
        checked.parts().stream()
            .peek(p -> stop.obey())
            .map(p -> Ours.of(p.id(), p.kind(), p.element()))
            .toList();
    Clearances clearances = Clearances.builtIn();
    List<Box> places = parts.stream().map(Ours::bounds).toList();
    Set<String> own =
        parts.stream().map(p -> p.element().orElseThrow().globalId()).collect(Collectors.toSet());
    Map<String, StepFile> files = new HashMap<>();
    files.put(survey.source().file(), given);
    stop.obey();
    List<Theirs> things =
        new ArrayList<>(
            things(
                new Federated(
                    survey.model(), survey.source().file(), Transform.IDENTITY, List.of()),
                true,
                places,
                clearances,
                own));
    things.forEach(t -> own.add(t.element().globalId()));
    for (Path path : services) {
      stop.obey();
      StepFile file = Surveyor.opened(path, survey.request().limits());
      files.put(file.name(), file);
      Federated model = Federated.of(survey.model(), IfcModel.of(file), file.name(), places);
      things.addAll(things(model, false, places, clearances, own));
    }
    stop.obey();
    ClashFinder.Found found = ClashFinder.find(survey.bays(), parts, things);
    List<Issue> issues = Issues.of(found.clashes(), survey.model().projectGlobalId());
    List<Tracked> followed =
        WaysOut.add(
            before.follow(issues),
            new WaysOut.Again(
                survey.framing(),
                survey.bays(),
                kit,
                services.stream().map(Path::toString).toList()),
            parts,
            things);
    return new Coordination(checked, parts, things, found, followed, before.after(followed), files);
  }

  /** Elements of a model near to the assembly, but its own parts and what is known already. */
  private static List<Theirs> things(
      Federated model, boolean ours, List<Box> places, Clearances clearances, Set<String> known) {
    List<Theirs> things = new ArrayList<>();
    StopSign stop = StopSign.here();
    double reach = clearances.reach();
    for (BuildingElement e : model.near(List.of(Box.around(places)), reach).elements()) {
      stop.obey();
      if (!known.contains(e.globalId()) && !e.shape().isEmpty()) {
        BuildingElement named = ours ? e.inHost() : e;
        things.add(Theirs.of(named, clearances, zones(model, e, clearances)));
      }
    }
    return things;
  }

  private static List<Zone> zones(Federated model, BuildingElement e, Clearances clearances) {
    return STAIRS.contains(e.ifcClass())
        ? Headroom.over(e.shape(), clearances.headroom())
        : Swings.of(model.model(), e, model.toDeck());
  }

  /** Where an element is written; empty for one that is not in these files. */
  public Optional<Region> region(BuildingElement element) {
    String name = element.file().orElse(checked.survey().source().file());
    StepFile file = files.get(name);
    int index = file == null ? -1 : file.find(element.instance());
    return file == null || index < 0
        ? Optional.empty()
        : Optional.of(new Region(name, file.offset(index), file.range(index).length()));
  }

  /** What is in the way and stands in the deck's own model: a file cannot point into another. */
  public List<Interference> interferences() {
    return found.clashes().stream()
        .filter(c -> c.thing().element().file().isEmpty())
        .map(
            c ->
                new Interference(
                    c.part().id(),
                    c.thing().element().instance(),
                    c.thing().element().globalId(),
                    c.cause().word()))
        .distinct()
        .toList();
  }

  /** When the model was made, as its header says. */
  public String modelTime() {
    return checked.survey().model().step().header().timeStamp();
  }

  /** GlobalId of the project that the assembly is in. */
  public String project() {
    return checked.survey().model().projectGlobalId();
  }

  /** Whether an issue is there that was not before. */
  public boolean hasNew() {
    return issues.stream().anyMatch(t -> t.status() == Tracked.Status.NEW);
  }
}
