package org.underlee.writeback;

import java.util.List;
import java.util.Optional;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/**
 * Property sets: the standard's where its definition for this schema has the property, and two of
 * our own. Nothing is written that is not known, so a gutter has no flow rating here.
 */
final class PropertyWriter {
  /** The standard's list for {@code Status}, IFC4 and later. */
  private static final List<String> STATUSES =
      List.of("NEW", "EXISTING", "DEMOLISH", "TEMPORARY", "OTHER", "NOTKNOWN", "UNSET");

  private final Draft draft;
  private final Definitions definitions;
  private final Kit kit;

  PropertyWriter(Draft draft, Definitions definitions, Kit kit) {
    this.draft = draft;
    this.definitions = definitions;
    this.kit = kit;
  }

  void write(PlacedPart placed) {
    common(placed).ifPresent(set -> attach(placed, set));
    if (placed.part().kind() == PartKind.GUTTER) {
      gutter(placed);
    }
    attach(placed, own(placed.part()));
  }

  void writeLayout(Value assembly, FieldLayout field, Provenance from) {
    PropertySet made =
        set(Strip.LAYOUT_SET)
            .with("Kit", "IfcLabel", Value.label(kit.id()))
            .with("KitVersion", "IfcLabel", Value.label(kit.version()))
            .with("SeatHigh", "IfcLengthMeasure", length(field.seatHigh()))
            .with("Fall", "IfcRatioMeasure", Value.real(field.fall()))
            .with("Run", "IfcLengthMeasure", length(field.run()))
            .with("LowEnd", "IfcText", Value.text(field.lowEnd()))
            .with("Binding", "IfcText", Value.text(field.binding().toString()))
            .with("ProgramVersion", "IfcLabel", Value.label(from.programVersion()))
            .with("FramingHash", "IfcLabel", Value.label(from.framingHash()));
    PropertySet set =
        from.assumed()
            .map(joists -> made.with("AssumedFraming", "IfcText", Value.text(joists)))
            .orElse(made);
    from.told().forEach((name, text) -> set.with(name, "IfcText", Value.text(text)));
    definitions.attach(assembly, field.field(), "assembly", set);
  }

  private Optional<PropertySet> common(PlacedPart placed) {
    boolean old = draft.ifc2x3();
    return switch (placed.ifcClass().family()) {
      case PLATE -> Optional.of(bearing(named("Pset_PlateCommon", placed)));
      case MEMBER -> Optional.of(sloped(bearing(named("Pset_MemberCommon", placed)), placed));
      case COVERING -> Optional.of(covering(placed));
      case SEGMENT ->
          old
              ? Optional.empty()
              : Optional.of(called(named("Pset_PipeSegmentTypeCommon", placed), placed.part()));
      case FITTING ->
          old ? Optional.empty() : Optional.of(named("Pset_PipeFittingTypeCommon", placed));
      case ACCESSORY, FASTENER ->
          old ? Optional.empty() : Optional.of(named("Pset_ElementComponentCommon", placed));
    };
  }

  /** Reference, and status where the schema has it: what all the common sets begin with. */
  private PropertySet named(String name, PlacedPart placed) {
    PropertySet set =
        set(name).with("Reference", "IfcIdentifier", Value.label(placed.part().item()));
    return draft.ifc2x3() ? set : set.withChoice("Status", "NEW", statuses());
  }

  private static PropertySet bearing(PropertySet set) {
    return set.with("IsExternal", "IfcBoolean", Value.TRUE)
        .with("LoadBearing", "IfcBoolean", Value.FALSE);
  }

  private PropertySet sloped(PropertySet set, PlacedPart placed) {
    placed.part().fall().ifPresent(fall -> set.with("Slope", "IfcPlaneAngleMeasure", angle(fall)));
    return set;
  }

  /** IFC2X3 does not ask of a covering whether it is external. */
  private PropertySet covering(PlacedPart placed) {
    PropertySet set = named("Pset_CoveringCommon", placed);
    return draft.ifc2x3() ? set : set.with("IsExternal", "IfcBoolean", Value.TRUE);
  }

  /** A downspout with the size that its kit calls it by. */
  private PropertySet called(PropertySet set, Part part) {
    if (part.kind() == PartKind.DOWNSPOUT) {
      kit.find(DrainValue.DOWNSPOUT_NOMINAL)
          .ifPresent(
              size -> set.with(Strip.NOMINAL_DIAMETER, "IfcPositiveLengthMeasure", length(size)));
    }
    return set;
  }

  /** The standard's slope of a gutter is an angle; the gradient of a pipe run is a ratio. */
  private void gutter(PlacedPart placed) {
    PropertySet type = set("Pset_PipeSegmentTypeGutter");
    PropertySet occurrence = set("Pset_PipeSegmentOccurrence");
    placed.part().fall().ifPresent(fall -> type.with("Slope", "IfcPlaneAngleMeasure", angle(fall)));
    placed.part().fall().stream()
        .filter(fall -> fall > 0 && !draft.ifc2x3())
        .forEach(fall -> occurrence.with("Gradient", "IfcPositiveRatioMeasure", Value.real(fall)));
    attach(placed, type);
    attach(placed, occurrence);
  }

  private PropertySet own(Part part) {
    PropertySet set = set("Underlee_Part").with("Label", "IfcLabel", Value.label(part.label()));
    part.bay().ifPresent(bay -> set.with("Bay", "IfcLabel", Value.label(bay)));
    set.with("Why", "IfcText", Value.text(part.why().toString()));
    if (part.length() > 0) {
      set.with("LengthCut", "IfcLengthMeasure", length(part.cutLength()));
    }
    if (part.width() > 0) {
      set.with("WidthCut", "IfcLengthMeasure", length(part.width()));
    }
    part.fall().ifPresent(fall -> set.with("Fall", "IfcRatioMeasure", Value.real(fall)));
    return draft.ifc2x3() ? called(set, part) : set;
  }

  private void attach(PlacedPart placed, PropertySet set) {
    Part part = placed.part();
    definitions.attach(placed.element(), part.field(), part.id(), set);
  }

  private PropertySet set(String name) {
    return new PropertySet(draft.out(), name);
  }

  private Value statuses() {
    return draft
        .out()
        .shared(
            "IfcPropertyEnumeration",
            Value.label("PEnum_ElementStatus"),
            Value.list(
                STATUSES.stream().map(s -> Value.typed("IfcLabel", Value.label(s))).toList()),
            Value.UNSET);
  }

  private Value length(double metres) {
    return draft.host().units().length(metres);
  }

  private Value angle(double fall) {
    return draft.host().units().angle(Math.atan(fall));
  }
}
