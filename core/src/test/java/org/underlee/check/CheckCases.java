package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.kit.KitReader;
import org.underlee.kit.Material;
import org.underlee.kit.PanValue;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Layouter;
import org.underlee.layout.Onto;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.units.Lengths;

/** For each rule an assembly that keeps it and one that breaks it, as much alike as can be. */
final class CheckCases {
  private static final double W = TimberDeck.W;
  private static final double D = TimberDeck.D;
  private static final double L = TimberDeck.L;
  private static final double Z = TimberDeck.Z;
  private static final int JOISTS = CheckDecks.JOISTS;
  private static final double WIDE = CheckDecks.WIDE;

  private CheckCases() {}

  static CheckInput plain() {
    return input(CheckDecks.deck(), kit());
  }

  static CheckInput treated() {
    return input(CheckDecks.deck().renamed("j3", "Treated joist"), kit());
  }

  static List<CheckCase> all() {
    return Stream.of(water(), sheet(), wood(), surroundings()).flatMap(List::stream).toList();
  }

  private static List<CheckCase> water() {
    TimberDeck atWall =
        CheckDecks.deck().bar("IfcWall", "garden wall", -1, L + 0.5, 0, 4, L + 0.7, 2.4);
    return List.of(
        new CheckCase("net-fall-too-low", plain(), falling(200)),
        new CheckCase("net-fall-low", falling(48), plain()),
        new CheckCase(
            "falls-toward-wall", plain(), withLater(TimberDeck.open(JOISTS), wallAtLowEnd())),
        new CheckCase(
            "single-outlet", input(CheckDecks.deck(), kit(DrainValue.GUTTER_LONGEST, 1)), plain()),
        new CheckCase(
            "gutter-long-for-outlet",
            plain(),
            input(TimberDeck.plain(36), kit(DrainValue.GUTTER_LONGEST, 20))),
        new CheckCase("many-elbows", plain(), changed(plain(), CheckCases::withFiveElbows, f -> f)),
        new CheckCase(
            "gutter-too-small",
            plain(),
            input(TimberDeck.plain(20), kit(DrainValue.GUTTER_DEPTH, 0.02))),
        new CheckCase(
            "downspout-too-small",
            plain(),
            input(TimberDeck.plain(20), kit(DrainValue.DOWNSPOUT_DIAMETER, 0.02))),
        new CheckCase("overflow-near-house", plain(), input(atWall, kit())),
        new CheckCase("discharge-at-foundation", plain(), input(atWall, kit())));
  }

  private static List<CheckCase> sheet() {
    Kit pieces = kit().with(PanValue.PAN_LONGEST, 1.6, "a test");
    CheckInput lapped = input(CheckDecks.deck(), pieces);
    return List.of(
        new CheckCase(
            "end-dam-low", input(CheckDecks.deck(), kit(PanValue.PAN_HEM, Lengths.INCH)), plain()),
        new CheckCase(
            "ply-seam-open", doubled(), changed(doubled(), CheckCases::withoutStrips, f -> f)),
        new CheckCase(
            "lap-too-short",
            lapped,
            input(CheckDecks.deck(), pieces.with(PanValue.PAN_LAP, 0.03, "a test"))),
        new CheckCase(
            "lap-against-flow", lapped, changed(lapped, CheckCases::withFirstPanLower, f -> f)),
        new CheckCase(
            "no-room-to-grow",
            plain(),
            input(CheckDecks.deck(), kit(PanValue.RAIL_END_GAP, 0.002))),
        new CheckCase("bay-not-ventilated", input(CheckDecks.onBeam(), kit()), plain()),
        new CheckCase(
            "pan-long-to-take-out",
            plain(),
            input(CheckDecks.longer(), kit(PanValue.PAN_LONGEST, 4))),
        new CheckCase(
            "plastic-below-deck", plain(), input(CheckDecks.deck(), of("Rigid vinyl", 1))),
        new CheckCase(
            "assembly-heavy", plain(), input(CheckDecks.deck(), of("Coated aluminium sheet", 40))),
        new CheckCase("copper-with-other-metal", plain(), input(CheckDecks.deck(), withCopper())));
  }

  private static List<CheckCase> wood() {
    return List.of(
        new CheckCase(
            "fastener-near-joist-edge",
            plain(),
            changed(plain(), p -> p, CheckCases::withSeatLower)),
        new CheckCase(
            "screw-too-short",
            plain(),
            input(CheckDecks.deck(), kit(DrainValue.SCREW_LENGTH, 0.025))),
        new CheckCase(
            "joist-notched",
            input(CheckDecks.notched(0.02), kit()),
            input(CheckDecks.notched(0.04), kit())),
        new CheckCase(
            "joist-bored",
            input(CheckDecks.bored(0.05), kit()),
            input(CheckDecks.bored(0.09), kit())),
        new CheckCase("metal-on-treated-wood", plain(), treated()));
  }

  private static List<CheckCase> surroundings() {
    return List.of(
        new CheckCase(
            "post-or-stair-in-pan",
            withLater(box("IfcColumn", "beside", WIDE + 0.1, 1, 0, 0.1, 0.1, 3)),
            withLater(box("IfcColumn", "within", 0.6, 1, 0, 0.1, 0.1, 3))),
        new CheckCase(
            "part-before-opening",
            withLater(box("IfcDoor", "low", 0.5, L + 0.2, 0, 0.9, 0.1, 2)),
            withLater(box("IfcDoor", "high", 0.5, L + 0.2, 0, 0.9, 0.1, 2.6))),
        new CheckCase(
            "low-over-stair",
            withLater(box("IfcStairFlight", "foot", 0.9, L - 0.1, 0, 0.2, 0.1, 0.1)),
            withLater(box("IfcStairFlight", "head", 0.9, L - 0.1, 0, 0.2, 0.04, 1.2))),
        new CheckCase(
            "part-near-vent-or-meter",
            withLater(box("IfcAirTerminal", "Dryer vent", 0.5, -0.1, 1, 0.1, 0.1, 0.1)),
            withLater(box("IfcAirTerminal", "Dryer vent", 0.5, -0.1, 2, 0.1, 0.1, 0.1))),
        new CheckCase(
            "electrical-above-pan",
            withLater(box("IfcLightFixture", "below", 0.55, 1, 2, 0.1, 0.1, 0.1)),
            withLater(box("IfcLightFixture", "above", 0.55, 1, Z + D - 0.03, 0.1, 0.1, 0.02))),
        new CheckCase(
            "tub-or-kitchen-above",
            withLater(box("IfcBuildingElementProxy", "Hot tub", 10, 1, Z + D, 2, 2, 1)),
            withLater(box("IfcBuildingElementProxy", "Hot tub", 0.2, 1, Z + D, 1, 1, 1))),
        new CheckCase(
            "downspout-ends-on-deck",
            withLater(box("IfcPipeSegment", "Downspout", 10, 1, Z + D + 0.2, 0.1, 0.1, 2)),
            withLater(box("IfcPipeSegment", "Downspout", 0.6, 1, Z + D + 0.2, 0.1, 0.1, 2))),
        new CheckCase("roof-drains-onto-deck", withRoof(90), withRoof(0.6)),
        new CheckCase(
            "eave-over-deck",
            withLater(RoofsOver.falling(0.2, 1.2, -0.3)),
            withLater(RoofsOver.falling(0.2, 1.2, 0.3))),
        new CheckCase("roof-drains-past-deck", withRoof(0.6), withRoof(90)),
        new CheckCase(
            "rated-by-own-tables",
            plain(),
            plain().with(Wishes.NONE.ratedBy(OwnTablesText.leader(3, 90)))));
  }

  private static CheckInput withRoof(double x) {
    return plain().with(Wishes.NONE.with(List.of(new Onto(12, new Vec2(x, 1)))));
  }

  private static CheckInput doubled() {
    return input(CheckDecks.deck().joist("sister", 0.8 + W, 0, L), kit());
  }

  private static BuildingElement wallAtLowEnd() {
    return box("IfcWall", "house", -1, L + W, 0, 4, 0.2, 3);
  }

  private static BuildingElement box(
      String ifcClass, String name, double x, double y, double z, double dx, double dy, double dz) {
    return new TimberDeck().bar(ifcClass, name, x, y, z, x + dx, y + dy, z + dz).elements().get(0);
  }

  // ---- kits

  static Kit kit() {
    return KitReader.builtIn();
  }

  private static Kit kit(KitNumber value, double si) {
    return kit().with(value, si, "a test");
  }

  static CheckInput falling(double run) {
    return input(CheckDecks.deck(), kit(DrainValue.RUN_PER_FALL, run));
  }

  private static Kit of(String sheet, double heavier) {
    return withMaterials(
        kit().materials().stream()
            .map(
                m ->
                    new Material(
                        m.id(),
                        m.id().equals("aluminium") ? sheet : m.name(),
                        m.density() * heavier,
                        m.red(),
                        m.green(),
                        m.blue(),
                        m.source()))
            .toList());
  }

  private static Kit withCopper() {
    List<Material> all = new ArrayList<>(kit().materials());
    all.add(new Material("copper", "Copper sheet", 8930, 184, 115, 51, "a test"));
    return withMaterials(all);
  }

  private static Kit withMaterials(List<Material> materials) {
    Kit k = kit();
    return new Kit(k.id(), k.version(), k.name(), k.family(), k.values(), materials, k.stock());
  }

  // ---- inputs

  /** 8 in/h. */
  private static final Storm RAIN = RainData.builtIn().service(RainData.ANYWHERE);

  static CheckInput input(TimberDeck deck, Kit kit) {
    return input(deck, deck.elements(), kit);
  }

  private static CheckInput input(TimberDeck deck, List<BuildingElement> elements, Kit kit) {
    Layout layout = Layouter.layOut(deck.frame(), deck.fieldBays(), Scope.OUTSIDE, kit);
    return CheckInput.of(deck.fieldBays(), elements, layout, RAIN, List.of());
  }

  static CheckInput in(CheckInput input, String rain) {
    return new CheckInput(
        input.fields(),
        input.elements(),
        input.layout(),
        RainData.builtIn().meant(rain).orElseThrow(),
        input.proved(),
        input.data());
  }

  /** An assembly that was laid out before something else came. */
  private static CheckInput withLater(BuildingElement later) {
    return withLater(CheckDecks.deck(), later);
  }

  private static CheckInput withLater(TimberDeck deck, BuildingElement later) {
    List<BuildingElement> elements = new ArrayList<>(deck.elements());
    elements.add(later);
    return input(deck, elements, kit());
  }

  private static CheckInput changed(
      CheckInput input, UnaryOperator<List<Part>> parts, UnaryOperator<FieldLayout> field) {
    Layout layout = input.layout();
    List<FieldLayout> fields =
        layout.fields().stream()
            .map(f -> field.apply(with(f, f.seatHigh(), parts.apply(f.parts()))))
            .toList();
    return CheckInput.of(
        input.fields().stream().map(Assembled::bays).toList(),
        input.elements(),
        new Layout(layout.kit(), fields, layout.findings()),
        input.storm(),
        input.proved());
  }

  private static FieldLayout with(FieldLayout f, double seatHigh, List<Part> parts) {
    return new FieldLayout(
        f.deck(),
        f.field(),
        f.storey(),
        seatHigh,
        f.fall(),
        f.run(),
        f.lowEnd(),
        f.binding(),
        parts,
        f.links());
  }

  private static FieldLayout withSeatLower(FieldLayout f) {
    return with(f, -0.2, f.parts());
  }

  private static List<Part> withFiveElbows(List<Part> parts) {
    Part elbow = parts.stream().filter(p -> p.kind() == PartKind.ELBOW).findFirst().orElseThrow();
    return Stream.concat(parts.stream(), Stream.of(elbow, elbow, elbow, elbow)).toList();
  }

  private static List<Part> withoutStrips(List<Part> parts) {
    return parts.stream().filter(p -> p.kind() != PartKind.PLY_STRIP).toList();
  }

  private static List<Part> withFirstPanLower(List<Part> parts) {
    Optional<Part> first = parts.stream().filter(p -> p.kind() == PartKind.PAN).findFirst();
    return parts.stream()
        .map(p -> first.filter(p::equals).isPresent() ? lower(p) : p)
        .collect(Collectors.toList());
  }

  private static Part lower(Part p) {
    Transform down = Transform.translation(new Vec3(0, 0, -0.005));
    return new Part(
        p.id(),
        p.label(),
        p.kind(),
        p.field(),
        p.bay(),
        p.item(),
        p.length(),
        p.width(),
        p.sheetWidth(),
        p.sheetLength(),
        p.fall(),
        p.bodies().stream().map(b -> b.transformed(down)).toList(),
        p.section(),
        p.count(),
        p.cuts(),
        p.why());
  }
}
