package org.underlee.ifc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.ElementSource;
import org.underlee.framing.Storey;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/**
 * A building model in IFC2X3, IFC4 or IFC4X3: its units, storeys, and elements with bodies in world
 * metres. Opening reads the relationships; bodies are read when first asked for, once.
 *
 * <p>An element whose body cannot be read whole is in {@link #notMeasured()} with the reason.
 * Elements without any representation are in neither list. Openings are cut out. Safe to share
 * between threads.
 */
public final class IfcModel implements ElementSource {
  /** Attribute of IfcTypeObject. */
  private static final int TYPE_SETS = 5;

  private final StepFile step;
  private final IfcSchema schema;
  private final StepInstance project;
  private final IfcUnits units;
  private final Contexts contexts;
  private final Relations relations;

  /** Elements that some reading of the model had to refuse, by their index. */
  private final Map<Integer, Elements.Read> refused = new ConcurrentHashMap<>();

  private final Placements placements;
  private final SpatialTree tree;
  private @Nullable ModelPart whole;

  private IfcModel(StepFile step, IfcSchema schema) {
    this.step = step;
    this.schema = schema;
    this.project = project(step);
    this.units = IfcUnits.of(project);
    this.contexts = new Contexts(step, project);
    this.relations = new Relations(step);
    this.placements = new Placements(step, units.metresPerLengthUnit());
    this.tree = new SpatialTree(step, relations, placements, units.metresPerLengthUnit());
  }

  /**
   * Opens a model.
   *
   * @throws InputException for another schema, no project, or units that cannot be read
   */
  public static IfcModel of(StepFile step) {
    return new IfcModel(step, IfcSchema.of(step));
  }

  private static StepInstance project(StepFile step) {
    int[] projects = step.ofKeyword("IFCPROJECT");
    if (projects.length == 0) {
      throw new InputException(
          Place.NOWHERE.inFile(step.name()),
          "the model has no IfcProject, so its units are unknown",
          "Export the whole model, not a part of the file.");
    }
    return step.decode(projects[0]);
  }

  public StepFile step() {
    return step;
  }

  public IfcSchema schema() {
    return schema;
  }

  public IfcUnits units() {
    return units;
  }

  public String projectGlobalId() {
    return project.text(0);
  }

  public long projectId() {
    return project.id();
  }

  /** The context for new bodies: Body / MODEL_VIEW, else the Model context in three dimensions. */
  public OptionalLong bodyContextId() {
    return contexts.body();
  }

  /** The first owner history, which IFC2X3 wants on everything. */
  public OptionalLong ownerHistoryId() {
    int[] all = step.ofKeyword("IFCOWNERHISTORY");
    return all.length == 0 ? OptionalLong.empty() : OptionalLong.of(step.id(all[0]));
  }

  @Override
  public List<BuildingElement> elements() {
    return whole().elements();
  }

  @Override
  public List<NotMeasured> notMeasured() {
    return whole().notMeasured();
  }

  @Override
  public List<BuildingElement> spaces() {
    return whole().spaces();
  }

  @Override
  public Optional<Boolean> isExternal(long instance) {
    return properties(instance).values().stream()
        .flatMap(set -> Optional.ofNullable(set.get("IsExternal")).stream())
        .filter(v -> v.equals("TRUE") || v.equals("FALSE"))
        .map(v -> v.equals("TRUE"))
        .findFirst();
  }

  /** Every element; read when first asked for, once. */
  public synchronized ModelPart whole() {
    ModelPart known = whole;
    if (known == null) {
      Elements all = reader();
      BiPredicate<String, Box> any = (ifcClass, box) -> true;
      known = part(all.read(all.indices(c -> true), any), all.spaces(any));
      whole = known;
    }
    return known;
  }

  /**
   * What a search for some places looks at: the elements that tell where those are, and what is
   * there. Solids are read of these alone, and of others where nothing less tells their place.
   *
   * @param telling the classes that tell
   * @param mayTell whether one of these may tell, from a box around its body
   * @param told from these, whether an element of a class and inside of a box is wanted; empty when
   *     there are no such places
   */
  public ModelPart near(
      Predicate<String> telling,
      Predicate<Box> mayTell,
      Function<List<BuildingElement>, Optional<BiPredicate<String, Box>>> told) {
    Elements reader = reader();
    List<Elements.Read> first =
        reader.read(reader.indices(telling), (ifcClass, box) -> mayTell.test(box));
    List<BuildingElement> bars = first.stream().flatMap(r -> r.element().stream()).toList();
    BiPredicate<String, Box> wanted = told.apply(bars).orElse(null);
    if (wanted == null) {
      return part(first, List.of());
    }
    List<Elements.Read> all = new ArrayList<>();
    for (Elements.Read read : first) {
      if (read.element().map(e -> wanted.test(e.ifcClass(), e.shape().bounds())).orElse(true)) {
        all.add(read);
      }
    }
    Set<Integer> done = first.stream().map(Elements.Read::index).collect(Collectors.toSet());
    int[] rest = IntStream.of(reader.indices(c -> true)).filter(i -> !done.contains(i)).toArray();
    all.addAll(reader.read(rest, wanted));
    all.sort(Comparator.comparingInt(Elements.Read::index));
    return part(all, reader.spaces(wanted));
  }

  private Elements reader() {
    return new Elements(step, schema, relations, tree, this::bodies, refused, Room.of(step.name()));
  }

  private Bodies bodies() {
    return new Bodies(step, units, relations, new Placements(step, units.metresPerLengthUnit()));
  }

  private ModelPart part(List<Elements.Read> read, List<BuildingElement> spaces) {
    return new ModelPart(
        this::isExternal,
        read.stream().flatMap(r -> r.element().stream()).toList(),
        spaces,
        read.stream().flatMap(r -> r.notMeasured().stream()).toList(),
        read.stream().flatMap(r -> r.findings().stream()).toList());
  }

  /** In file order. */
  public List<Storey> storeys() {
    return tree.storeys();
  }

  /**
   * The frame of an object placement in the world: metres, rigid.
   *
   * @throws InputException for a grid placement or a chain that comes back to itself
   */
  public synchronized Transform placement(long placementInstanceId) {
    return placements.world(placementInstanceId);
  }

  /** The instance of an element's type, or of its style in IFC2X3. */
  public Optional<StepInstance> typeOf(long elementInstance) {
    OptionalLong type = relations.type(elementInstance);
    return type.isPresent() ? Optional.of(step.instance(type.getAsLong())) : Optional.empty();
  }

  /** Set name → property name → value as text, the type's included; single values only. */
  public Map<String, Map<String, String>> properties(long elementInstance) {
    return new PropertySets(step, relations).of(elementInstance);
  }

  /** Its type or style. */
  public Optional<StepInstance> type(long elementInstance) {
    OptionalLong type = relations.type(elementInstance);
    return type.isPresent() ? Optional.of(step.instance(type.getAsLong())) : Optional.empty();
  }

  /** The sets of properties of an element and then those of its type, of any kind, as written. */
  public List<StepInstance> definitions(long elementInstance) {
    List<StepInstance> all = new ArrayList<>();
    relations.propertySets(elementInstance).forEach(id -> all.add(step.instance(id)));
    type(elementInstance).ifPresent(t -> all.addAll(t.followAll(TYPE_SETS)));
    return List.copyOf(all);
  }

  /** Material names, layer by layer or part by part where there are several. */
  public List<String> materials(long elementInstance) {
    return new Materials(step, relations).of(elementInstance);
  }

  /** What is odd about the model and its bodies; reads them if they have not been yet. */
  public List<Finding> findings() {
    return findings(whole());
  }

  /** What is odd about the model as a whole and about the bodies of a part. */
  public List<Finding> findings(ModelPart part) {
    List<Finding> all = new ArrayList<>();
    if (!units.lengthAssigned()) {
      all.add(
          Finding.of(
              IfcRules.NO_LENGTH_UNIT,
              project.place(),
              "The project assigns no length unit; lengths are taken for metres.",
              "Export the model with its units."));
    }
    all.addAll(relations.findings());
    all.addAll(tree.findings());
    all.addAll(part.findings());
    return List.copyOf(all);
  }
}
