package org.underlee.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.samples.Project.Placed;
import org.underlee.samples.StepFile.Ref;

/** Writes members as elements: placement, body, class, and the type they share. */
final class Elements {
  /** Frame of the extra placement of a deep nesting: off to the side, a quarter turn round. */
  private static final Frame DETOUR = Frame.turned(new Xyz(1200, -800, 300), 90);

  /** What members of one type have in common. */
  private record TypeKey(ElementClass element, String size, List<Object> shape) {}

  private static final class Type {
    final List<Ref> maps = new ArrayList<>();
    final List<Ref> occurrences = new ArrayList<>();
  }

  private final StepFile file;
  private final Geometry geometry;
  private final SampleDeck sample;
  private final Mix mix;
  private final Project project;
  private final Bodies bodies;
  private final Map<TypeKey, Type> types = new LinkedHashMap<>();

  Elements(StepFile file, Geometry geometry, SampleDeck sample, Mix mix, Project project) {
    this.file = file;
    this.geometry = geometry;
    this.sample = sample;
    this.mix = mix;
    this.project = project;
    this.bodies = new Bodies(file, geometry, mix);
  }

  /** Writes {@code member}, placed relative to {@code parent} unless the mix wants none. */
  Ref write(Member member, Placed parent) {
    ElementClass element = ElementClass.of(member.role(), mix);
    Solid inWorld = member.solid().in(sample.world(mix));
    Placed place = place(inWorld.frame(), parent);
    Frame inElement = place.world().inverse().then(inWorld.frame());
    Solid solid =
        new Solid(
            inElement, inWorld.length(), inWorld.section(), inWorld.startSkew(), inWorld.endSkew());
    Type type = types.computeIfAbsent(key(member, element), k -> new Type());
    boolean mapped = mix.body() == Mix.Body.MAPPED && element.isRepeated();
    Bodies.Item item = mapped ? mapped(solid, type) : bodies.of(solid);
    Ref shape =
        file.add("IFCPRODUCTDEFINITIONSHAPE", StepFile.NONE, StepFile.NONE, List.of(shape(item)));
    boolean typed = isTyped(element);
    Ref written = file.add(element.entity(), values(member, element, place, shape, typed));
    if (typed) {
      type.occurrences.add(written);
    }
    return written;
  }

  /** Writes the types, after their occurrences. */
  void writeTypes() {
    int ordinal = 0;
    for (Map.Entry<TypeKey, Type> entry : types.entrySet()) {
      if (!entry.getValue().occurrences.isEmpty()) {
        writeType(entry.getKey(), entry.getValue(), ordinal++);
      }
    }
  }

  private Placed place(Frame inWorld, Placed parent) {
    return switch (mix.nesting()) {
      case ELEMENT -> project.placed(parent, inWorld);
      case SHAPE -> project.placed(parent, parent.world());
      case ABSOLUTE -> project.placed(inWorld);
      case DEEP -> {
        Placed between = project.placed(parent, parent.world().then(DETOUR));
        yield project.placed(between, new Frame(inWorld.origin(), Xyz.X, Xyz.Y, Xyz.Z));
      }
    };
  }

  private Bodies.Item mapped(Solid solid, Type type) {
    if (type.maps.isEmpty()) {
      Solid atOrigin =
          new Solid(
              Frame.WORLD, solid.length(), solid.section(), solid.startSkew(), solid.endSkew());
      type.maps.add(
          file.add("IFCREPRESENTATIONMAP", geometry.axes(Frame.WORLD), shape(bodies.of(atOrigin))));
    }
    Ref item = file.add("IFCMAPPEDITEM", type.maps.get(0), geometry.operator(solid.frame()));
    return new Bodies.Item(item, "MappedRepresentation");
  }

  private Ref shape(Bodies.Item item) {
    return file.add(
        "IFCSHAPEREPRESENTATION", project.body(), "Body", item.kind(), List.of(item.item()));
  }

  /** Mapped members share a type by their shape, others by their class and size. */
  private TypeKey key(Member member, ElementClass element) {
    Solid s = member.solid();
    List<Object> shape =
        mix.body() == Mix.Body.MAPPED
            ? List.of(
                s.section(), micrometres(s.length()), ratio(s.startSkew()), ratio(s.endSkew()))
            : List.of();
    return new TypeKey(element, member.size(), shape);
  }

  private static long micrometres(double mm) {
    return Math.round(mm * 1000);
  }

  private static long ratio(double skew) {
    return Math.round(skew * 1e9);
  }

  /** IFC2X3 says only in the type that a beam is a joist. */
  private boolean isTyped(ElementClass element) {
    return element.isRepeated() && (mix.body() == Mix.Body.MAPPED || mix.schema().isOld());
  }

  private Object[] values(
      Member member, ElementClass element, Placed place, Ref shape, boolean typed) {
    List<Object> values =
        new ArrayList<>(
            List.of(
                sample.globalId(member.key()),
                project.history(),
                Names.of(member, mix.naming()),
                StepFile.NONE,
                StepFile.NONE,
                place.placement(),
                shape,
                StepFile.NONE));
    predefined(element, typed).ifPresent(values::add);
    return values.toArray();
  }

  /** The ninth attribute, where the class has one in the schema. */
  private java.util.Optional<Object> predefined(ElementClass element, boolean typed) {
    Object own = StepFile.enumeration(element.predefinedType());
    if (!mix.schema().isOld()) {
      return java.util.Optional.of(typed ? StepFile.NONE : own);
    }
    return switch (element.name()) {
      case "IfcBuildingElementProxy" ->
          java.util.Optional.of(StepFile.enumeration("ELEMENT")); // its composition type
      case "IfcSlab", "IfcFooting", "IfcCovering", "IfcRailing" -> java.util.Optional.of(own);
      default -> java.util.Optional.empty();
    };
  }

  private void writeType(TypeKey key, Type type, int ordinal) {
    Object name =
        mix.naming() == Mix.Naming.NONE
            ? "Type " + (ordinal + 1)
            : key.size() + " " + (ordinal + 1);
    Object maps = type.maps.isEmpty() ? StepFile.NONE : List.copyOf(type.maps);
    Ref written =
        file.add(
            key.element().typeEntity(),
            sample.globalId("type/" + ordinal),
            project.history(),
            name,
            StepFile.NONE,
            StepFile.NONE,
            StepFile.NONE,
            maps,
            StepFile.NONE,
            StepFile.NONE,
            StepFile.enumeration(key.element().predefinedType()));
    file.add(
        "IFCRELDEFINESBYTYPE",
        sample.globalId("typing/" + ordinal),
        project.history(),
        StepFile.NONE,
        StepFile.NONE,
        List.copyOf(type.occurrences),
        written);
  }
}
