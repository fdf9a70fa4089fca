package org.underlee.ifc;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.finding.StopSign;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/**
 * Reads elements that have a representation, on all processors. What is read of an element depends
 * on nothing but the file, so it is the same however the work was shared out.
 */
final class Elements {
  /** InteriorOrExteriorSpace in IFC2X3, PredefinedType from IFC4 on: INTERNAL or EXTERNAL. */
  private static final int INSIDE_OR_OUTSIDE = 9;

  private static final String SPACE = "IfcSpace";

  /** So many elements are read by one worker before it asks for more. */
  private static final int AT_ONCE = 256;

  private final StepFile step;
  private final IfcSchema schema;
  private final Relations relations;
  private final SpatialTree tree;
  private final Supplier<Bodies> bodies;

  /** Readers that no worker uses now: they remember what several elements share. */
  private final Queue<Bodies> idle = new ConcurrentLinkedQueue<>();

  private final Map<Integer, Read> refused;
  private final Room room;
  private final ElementTable table = new ElementTable();

  /** What became of one element; nothing at all when it has no body or is not wanted. */
  record Read(
      int index,
      Optional<BuildingElement> element,
      Optional<NotMeasured> notMeasured,
      List<Finding> findings) {}

  /**
   * @param bodies a reader for one worker: it remembers what several elements share
   * @param refused what could not be read of a model is remembered here: it may have taken seconds
   * @param room for all that is read
   */
  Elements(
      StepFile step,
      IfcSchema schema,
      Relations relations,
      SpatialTree tree,
      Supplier<Bodies> bodies,
      Map<Integer, Read> refused,
      Room room) {
    this.step = step;
    this.schema = schema;
    this.relations = relations;
    this.tree = tree;
    this.bodies = bodies;
    this.refused = refused;
    this.room = room;
  }

  /** Instances that are elements of the classes asked for, in file order. */
  int[] indices(Predicate<String> ofClass) {
    return step.ofKeywords(k -> table.isElement(k) && ofClass.test(table.spelling(k)));
  }

  /**
   * Reads the instances whose bodies are wanted.
   *
   * @param wanted told from the class and a box around the body
   * @throws InputException when there is no room for all of them
   */
  List<Read> read(int[] indices, BiPredicate<String, Box> wanted) {
    StopSign stop = StopSign.here();
    int workers = (indices.length + AT_ONCE - 1) / AT_ONCE;
    return IntStream.range(0, workers)
        .parallel()
        .mapToObj(
            w -> {
              stop.obey();
              return read(indices, w * AT_ONCE, wanted);
            })
        .flatMap(List::stream)
        .toList();
  }

  /**
   * Spaces with a body that is wanted and can be read; the others say nothing about the framing.
   */
  List<BuildingElement> spaces(BiPredicate<String, Box> wanted) {
    Bodies own = bodies.get();
    List<BuildingElement> spaces = new ArrayList<>();
    for (int index : step.ofKeyword("IFCSPACE")) {
      space(index, own).filter(s -> wanted.test(SPACE, s.shape().bounds())).ifPresent(spaces::add);
    }
    spaces.forEach(room::take);
    return List.copyOf(spaces);
  }

  private Optional<BuildingElement> space(int index, Bodies own) {
    try {
      StepInstance space = step.decode(index);
      return space.isOmitted(6) ? Optional.empty() : Optional.of(space(space, own));
    } catch (InputException | IllegalArgumentException | ArithmeticException e) {
      return Optional.empty();
    }
  }

  private static BuildingElement space(StepInstance space, Bodies own) {
    return new BuildingElement(
        space.id(),
        space.optionalText(0).orElse(""),
        SPACE,
        space.optionalText(2).orElse(""),
        "",
        space.optionalEnumeration(INSIDE_OR_OUTSIDE).orElse(""),
        Optional.empty(),
        own.body(space));
  }

  private List<Read> read(int[] indices, int from, BiPredicate<String, Box> wanted) {
    Bodies own = Optional.ofNullable(idle.poll()).orElseGet(bodies);
    List<Read> read = new ArrayList<>();
    for (int i = from; i < Math.min(indices.length, from + AT_ONCE); i++) {
      Optional<Read> one = read(indices[i], own, wanted);
      one.flatMap(Read::element).ifPresent(room::take);
      one.ifPresent(read::add);
    }
    idle.add(own);
    return read;
  }

  private Optional<Read> read(int index, Bodies own, BiPredicate<String, Box> wanted) {
    String globalId = "";
    try {
      StepInstance product = step.decode(index);
      globalId = product.optionalText(0).orElse("");
      if (product.isOmitted(6) || !mayBeWanted(product, own, wanted)) {
        return Optional.empty();
      }
      Read known = refused.get(index);
      if (known != null) {
        return Optional.of(known);
      }
      BuildingElement element = element(product, globalId, own);
      List<Finding> findings = own.takeFindings();
      return wanted.test(element.ifcClass(), element.shape().bounds())
          ? Optional.of(new Read(index, Optional.of(element), Optional.empty(), findings))
          : Optional.empty();
    } catch (InputException e) {
      return Optional.of(failed(index, globalId, String.valueOf(e.getMessage()), own));
    } catch (IllegalArgumentException | ArithmeticException e) {
      String why = "its coordinates are too large to place: " + e.getMessage();
      return Optional.of(failed(index, globalId, why, own));
    }
  }

  /** False where a look at the body tells that it is not wanted, without its solid. */
  private boolean mayBeWanted(StepInstance product, Bodies own, BiPredicate<String, Box> wanted) {
    String ifcClass = table.spelling(product.keyword());
    return own.reach(product).map(box -> wanted.test(ifcClass, box)).orElse(true);
  }

  private Read failed(int index, String globalId, String why, Bodies own) {
    Place place = Place.element(step.id(index), globalId).inFile(step.name());
    NotMeasured notMeasured = new NotMeasured(globalId, place, why);
    Read read = new Read(index, Optional.empty(), Optional.of(notMeasured), own.takeFindings());
    refused.put(index, read);
    return read;
  }

  private BuildingElement element(StepInstance product, String globalId, Bodies own) {
    OptionalLong typeId = relations.type(product.id());
    Optional<StepInstance> type =
        typeId.isPresent() ? Optional.of(step.instance(typeId.getAsLong())) : Optional.empty();
    return new BuildingElement(
        product.id(),
        globalId,
        table.spelling(product.keyword()),
        product.optionalText(2).orElse(""),
        type.flatMap(t -> t.optionalText(2)).orElse(""),
        predefinedType(product, type),
        tree.storeyOf(product.id()),
        own.body(product));
  }

  /** The element's own, or else its type's. */
  private String predefinedType(StepInstance product, Optional<StepInstance> type) {
    Optional<String> own =
        table
            .predefinedType(product.keyword(), schema)
            .flatMap(product::optionalEnumeration)
            .filter(name -> !name.equals("NOTDEFINED"));
    return own.or(() -> type.flatMap(Elements::typePredefined)).orElse("");
  }

  /** PredefinedType stands at 9 in every element type but furniture, where it is 10. */
  private static Optional<String> typePredefined(StepInstance type) {
    int at = type.keyword().equals("IFCFURNITURETYPE") ? 10 : 9;
    return type.optionalEnumeration(at).filter(name -> !name.equals("NOTDEFINED"));
  }
}
