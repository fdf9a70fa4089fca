package org.underlee.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.check.Check;
import org.underlee.check.Checks;
import org.underlee.drainage.OutletShare;
import org.underlee.drainage.WaterProver;
import org.underlee.finding.Finding;
import org.underlee.framing.Framer;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.RoleGiven;
import org.underlee.geom.OrientedBox;
import org.underlee.ifc.IfcModel;
import org.underlee.ifc.shape.ShapeReader;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layouter;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.step.ByteRange;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;
import org.underlee.takeoff.Takeoff;
import org.underlee.takeoff.TakeoffBuilder;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.writeback.WriteBack;

/** Makes the page that follows one bay of a sample from the bytes of the file to the bill. */
final class OneBay {
  static final String FILE = "docs/explanation/one-bay-from-bytes-to-bill.md";
  private static final String SAMPLE = "samples/pine-deck/pine-deck.ifc";

  /** With blocking, and with a pipe that stands in it. */
  private static final String BAY = "B6";

  private static final UnitSystem UNITS = UnitSystem.IMPERIAL;

  private final Survey survey;
  private final Design design;
  private final Bay bay;
  private final StringBuilder page = new StringBuilder();

  private OneBay(Path root) {
    survey = DeckRun.survey(root.resolve(SAMPLE));
    design = DeckRun.design(survey, Scope.OUTSIDE, KitReader.builtIn());
    FieldBays field = survey.bays().get(0);
    bay = field.bays().stream().filter(b -> b.id().equals(BAY)).findFirst().orElseThrow();
  }

  /** Writes the page below the given root of the project. */
  public static void main(String[] args) throws IOException {
    Path root = Path.of(args.length > 0 ? args[0] : ".");
    Files.writeString(root.resolve(FILE), page(root));
  }

  static String page(Path root) {
    OneBay story = new OneBay(root);
    story.opening();
    story.bytes();
    story.shape();
    story.framing();
    story.bay();
    story.layout();
    story.water();
    story.checks();
    story.bill();
    story.written();
    return story.page.toString().replaceAll("\n{3,}", "\n\n").strip() + "\n";
  }

  private void opening() {
    say(
        """
        # One bay, from bytes to bill

        Generated from the code (`org.underlee.run.OneBay`, among the tests): every number below comes out of a run on
        [pine-deck](../../samples/pine-deck/README.md). It follows bay %s of that deck, which has blocking and a pipe in it,
        through the packages of `core`, one after the other. Each heading names the class to read; %s calls them
        in this order.
        """,
        BAY, in(DeckRun.class));
  }

  private void bytes() {
    Member joist = bay.left().plies().get(0);
    StepFile file = survey.model().step();
    heading("The file is indexed, not read", StepFile.class);
    say(
        """
        The index knows where each of the %d instances starts and what it is called. Nothing else is decoded until someone asks.
        The joist on the left of the bay is the instance `#%d`, and its bytes are:
        """,
        file.count(), joist.element().instance());
    code(text(file, joist.element().instance()));
  }

  private void shape() {
    Member joist = bay.left().plies().get(0);
    OrientedBox box = joist.box();
    heading("An element gets its solid, in metres of the world", IfcModel.class, ShapeReader.class);
    say(
        """
        From here on nothing knows of feet, of local placements, or of how the body was modelled. The body of that joist has %d
        triangles. The smallest box around them, turned as the joist lies, is %s long, %s wide and %s deep; its underside is at %s.
        """,
        joist.element().shape().triangleCount(),
        length(box.length()),
        length(box.width()),
        length(box.depth()),
        length(box.bottom()));
  }

  private void framing() {
    heading("Bars become joists, lines and a field", Framer.class);
    say("Geometry is asked first, names last. Of the two lines beside the bay:");
    for (JoistLine line : List.of(bay.left(), bay.right())) {
      item("%s: %s", line.id(), line.why());
      for (Member ply : line.plies()) {
        item(
            "  `%s` \"%s\" is a %s: %s",
            ply.id(), ply.element().name(), role(ply).role().word(), role(ply).why());
      }
    }
    say("\nWater goes %s.", survey.bays().get(0).field().fallWhy());
  }

  private void bay() {
    heading("Two lines make a bay", BayFinder.class, CrossingFinder.class);
    say(
        "Between %s and %s: %s clear, %s long from face to face. In it:\n",
        bay.left().id(),
        bay.right().id(),
        length(bay.clearWidthNarrowest()),
        length(bay.stretch().length()));
    bay.blocking().forEach(b -> item("blocking at %s from the high end", length(b.at())));
    bay.crossings()
        .forEach(
            c ->
                item(
                    "%s \"%s\" through at %s, %s thick",
                    c.element().ifcClass(), c.element().name(), length(c.at()), length(c.size())));
  }

  private void layout() {
    FieldLayout field = design.layout().fields().get(0);
    heading("A kit makes parts of it", Layouter.class);
    say(
        """
        One seat height and one fall serve the whole field: %s %s the joist bottoms at the high end, falling %s, fixed by this:
        %s.
        With the kit `%s` the bay gets:
        """,
        length(Math.abs(field.seatHigh())),
        field.seatHigh() < 0 ? "below" : "above",
        Lengths.fall(field.fall()),
        field.binding().in(UNITS),
        design.layout().kit().id());
    parts()
        .forEach(
            p -> item("%s, a %s: %s", p.label(), p.kind().spoken(), p.why().reason().in(UNITS)));
    say(
        "\nEvery number of every part can be asked where it comes from, as `--explain` does. The first pan:\n");
    item("%s", pan().why().inShort(UNITS).replace("; ", "\n- "));
  }

  private void water() {
    OutletShare share =
        design.proof().outlets().stream()
            .filter(o -> o.bays().containsKey(BAY))
            .findFirst()
            .orElseThrow();
    heading("The rain is followed", WaterProver.class);
    say(
        """
        The plan of the deck is cut up by what lies topmost. Of this bay %s m² drain through the outlet `%s`, which takes %s m² in all.
        Of the whole deck %s %% stays dry below.
        """,
        number(share.bays().get(BAY)),
        share.outlet(),
        number(share.area()),
        number(100 * design.proof().dryFraction()));
  }

  private void checks() {
    List<Finding> own =
        design.findings().stream()
            .filter(f -> f.message(UNITS).matches("(?s).*\\b" + BAY + "\\b.*"))
            .toList();
    heading("Each rule has its say", Checks.class, Check.class);
    say(
        "%d checks look at the assembly. What is said of this bay by name:%s",
        Checks.all().size(), own.isEmpty() ? " nothing." : "\n");
    own.forEach(f -> item("`%s`: %s", f.rule().id(), f.message(UNITS)));
  }

  private void bill() {
    Takeoff takeoff = design.takeoff();
    heading("Parts are counted, and cut from what is sold", TakeoffBuilder.class);
    say("Pieces of this bay in the cut list, with those of other bays that are equal to them:\n");
    takeoff.cuts().stream()
        .filter(c -> c.bays().stream().anyMatch(b -> b.endsWith(BAY)))
        .forEach(
            c ->
                item(
                    "%d × %s, %s long, of `%s`",
                    c.count(), c.kind().spoken(), Lengths.cut(c.length(), UNITS), c.item()));
  }

  private void written() {
    Part pan = pan();
    String globalId = design.globalIdOf(pan).orElseThrow();
    StepFile drained = StepFile.of(design.written().bytes(), "pine-deck.drained.ifc");
    heading("It is written behind the designer's own lines", WriteBack.class);
    say(
        "%d instances follow the designer's last one, between two marks. The pan %s of this bay is:\n",
        design.written().instances(), pan.label());
    code(lineWith(drained, globalId));
    say(
        "Its GlobalId comes from what the part is for, so that the same deck gives the same one again.");
  }

  private List<Part> parts() {
    return design.layout().parts().stream().filter(p -> p.bay().equals(Optional.of(BAY))).toList();
  }

  private Part pan() {
    return parts().stream().filter(p -> p.kind() == PartKind.PAN).findFirst().orElseThrow();
  }

  private RoleGiven role(Member member) {
    return survey.framing().roles().stream()
        .filter(r -> r.member().equals(member))
        .findFirst()
        .orElseThrow();
  }

  private static String text(StepFile file, long id) {
    ByteRange range = file.range(file.find(id));
    return new String(file.bytes(), range.from(), range.length(), StandardCharsets.ISO_8859_1)
        .strip();
  }

  private static String lineWith(StepFile file, String globalId) {
    for (int i = file.count() - 1; i >= 0; i--) {
      StepInstance instance = file.decode(i);
      if (instance.value(0) instanceof StepValue.Text t && t.value().equals(globalId)) {
        return text(file, instance.id());
      }
    }
    throw new IllegalStateException("no instance has the GlobalId " + globalId);
  }

  private void heading(String title, Class<?>... read) {
    String classes = List.of(read).stream().map(OneBay::in).collect(Collectors.joining(", "));
    page.append("\n## ").append(title).append("\n\nIn ").append(classes).append(".\n\n");
  }

  private static String in(Class<?> code) {
    return "`" + code.getName().replace("org.underlee.", "") + "`";
  }

  private void say(String text, Object... values) {
    page.append(String.format(Locale.ROOT, text, values).stripTrailing()).append("\n\n");
  }

  private void item(String text, Object... values) {
    String line = String.format(Locale.ROOT, text, values);
    page.append(line.startsWith(" ") ? "  - " : "- ").append(line.strip()).append('\n');
  }

  private void code(String text) {
    page.append("```\n").append(text).append("\n```\n\n");
  }

  private static String length(double metres) {
    return Lengths.format(metres, UNITS);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
