package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.PanValue;
import org.underlee.kit.StockItem;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;

/**
 * A bill against sums over the meshes of what it counts, as an independent reader has them.
 *
 * <ul>
 *   <li>Pieces: each has one closed mesh of its volume, and the line counts the meshes. Fasteners
 *       have none; their line is the sum of the counts that stand on them.
 *   <li>Metres, as fitted: the sum of the meshes' longest lines of edges. A saddle is bent across
 *       its length, so its sheet is its mesh's volume by thickness and width.
 *   <li>Metres, gross (what the bill says): as fitted, and for each piece what its kit folds up or
 *       down at its ends.
 *   <li>Laps: what the meshes of one bay, in a row, reach over each other.
 *   <li>Net area and weight: the mesh's volume by thickness and by density.
 * </ul>
 */
final class MeshSums {
  /** Lengths are told to a micrometre; the reader's corners are single floats. */
  private static final double METRES = 1e-5;

  /** Where sheets lie over each other on a slope, they are shifted by their thickness. */
  private static final double SHIFTED = 1e-4;

  private static final double VOLUME_PERCENT = 0.1;
  private static final double CLOSED = 1e-6;

  /** The other reader leaves a hair of an edge open where it cuts some pipe holes out. */
  private static final double CUT_CLOSED = 1e-3;

  /** Edges of a membrane on the joist tops begin where its head is turned up, not at its floor. */
  private static final double OVER_HEAD = 0.01;

  /** How much the flat sheet of a piece may be more than its mesh: corners and notches. */
  private static final double LEAST_OF_BLANK = 0.75;

  /** And less: where two legs meet in a bend, the drawing has the corner once more. */
  private static final double MOST_OF_BLANK = 1.01;

  private static final Set<String> FOLDED = Set.of(Items.PAN_SHEET, Items.STRIP_SHEET);

  private final Design design;
  private final Kit kit;
  private final BillWitness read;
  private final Map<String, Part> parts;

  private MeshSums(Design design, BillWitness read) {
    this.design = design;
    this.kit = design.layout().kit();
    this.read = read;
    this.parts =
        design.layout().parts().stream()
            .collect(Collectors.toMap(p -> design.written().globalIds().get(p.id()), p -> p));
  }

  /** Fails where a line of the bill is not what the meshes say. */
  static void require(Design design, BillWitness read) {
    MeshSums sums = new MeshSums(design, read);
    assertThat(read.lines())
        .extracting(BillWitness.Line::item)
        .containsExactlyElementsOf(
            design.takeoff().lines().stream().map(Takeoff.Line::item).toList());
    assertThat(read.lines().stream().flatMap(l -> l.elements().stream()))
        .as("each part is counted once")
        .containsExactlyInAnyOrderElementsOf(sums.parts.keySet());
    read.pieces().forEach(sums::piece);
    for (BillWitness.Line line : read.lines()) {
      if (line.kind().equals("Length")) {
        sums.metres(line);
      } else {
        sums.counted(line);
      }
    }
    assertThat(read.total()).isCloseTo(read.sum(), within(0.005));
  }

  /** One mesh of the part's volume, and what the model says of it. */
  private void piece(String globalId, BillWitness.Piece piece) {
    Part part = parts.get(globalId);
    assertThat(piece.mesh().isEmpty()).as(part.id()).isEqualTo(part.kind() == PartKind.FASTENER);
    if (piece.mesh().isEmpty()) {
      return;
    }
    BillWitness.Mesh mesh = piece.mesh().get();
    StockItem item = kit.item(part.item());
    assertThat(mesh.open())
        .as(part.id())
        .isLessThan(part.kind() == PartKind.COLLAR_PIECE ? CUT_CLOSED : CLOSED);
    assertThat(mesh.volume())
        .as(part.id())
        .isCloseTo(part.volume(), withPercentage(VOLUME_PERCENT));
    double weight = mesh.volume() * kit.materialOf(item).density();
    boolean pipe = piece.type().contains("PIPE") || piece.type().contains("FLOW");
    said(part, piece, "NetVolume", mesh.volume());
    said(part, piece, pipe ? "GrossWeight" : "NetWeight", weight);
    if (part.kind() != PartKind.MEMBRANE && part.kind() != PartKind.TAPE) {
      said(part, piece, "NetArea", mesh.volume() / item.thickness());
    }
    if (item.isSoldByLength()) {
      said(part, piece, "Length", mesh.length());
    }
  }

  private static void said(Part part, BillWitness.Piece piece, String name, double measured) {
    if (piece.said().containsKey(name)) {
      assertThat(piece.said().get(name))
          .as("%s of %s", name, part.id())
          .isCloseTo(measured, withPercentage(VOLUME_PERCENT));
    }
  }

  private void counted(BillWitness.Line line) {
    double meshes = line.elements().stream().filter(e -> piece(e).mesh().isPresent()).count();
    double said =
        line.elements().stream().mapToDouble(e -> piece(e).said().getOrDefault("Count", 0.0)).sum();
    assertThat(line.value()).as(line.item()).isEqualTo(meshes > 0 ? meshes : said);
  }

  private BillWitness.Piece piece(String globalId) {
    return read.pieces().get(globalId);
  }

  private BillWitness.Mesh mesh(String globalId) {
    return piece(globalId).mesh().orElseThrow();
  }

  private void metres(BillWitness.Line line) {
    double fitted = 0;
    double folds = 0;
    double slack = METRES;
    for (String element : line.elements()) {
      Part part = parts.get(element);
      double length = fitted(part, mesh(element));
      double fold = part.cutLength() - part.length();
      fitted += length;
      folds += fold;
      slack += part.kind() == PartKind.MEMBRANE ? OVER_HEAD : METRES;
      assertThat(fold).as("folded at the ends of %s", part.id()).isIn(folds(part));
      blank(part, mesh(element));
    }
    Takeoff.Lengths told = design.takeoff().lengths().get(line.item());
    assertThat(line.value()).as("gross %s", line.item()).isCloseTo(fitted + folds, within(slack));
    assertThat(told.net() + told.laps()).as(line.item()).isCloseTo(fitted, within(slack));
    assertThat(told.folds()).as(line.item()).isCloseTo(folds, within(METRES));
    if (FOLDED.contains(line.item())) {
      assertThat(told.laps())
          .as("laps of %s", line.item())
          .isCloseTo(laps(line), within(line.elements().size() * SHIFTED));
    }
  }

  private double fitted(Part part, BillWitness.Mesh mesh) {
    return part.kind() == PartKind.SADDLE
        ? mesh.volume() / kit.item(part.item()).thickness() / part.sheetWidth().orElse(part.width())
        : mesh.length();
  }

  /** What the kit may fold at the ends of a piece, to a tenth of a micrometre. */
  private List<Object> folds(Part part) {
    double own = part.cutLength() - part.length();
    if (!FOLDED.contains(part.item())) {
      return List.of(part.kind() == PartKind.MEMBRANE ? own : 0.0);
    }
    List<Object> all = new ArrayList<>();
    for (PanValue up : List.of(PanValue.PAN_HEM, PanValue.STRIP_HEM)) {
      double hem = kit.get(up);
      double drip = kit.get(PanValue.PAN_DRIP);
      for (double fold : List.of(0.0, hem, drip, hem + drip)) {
        all.add(Math.abs(fold - own) < METRES ? own : fold);
      }
    }
    return all;
  }

  /** The sheet that is cut for a folded piece is enough for its mesh, and not much more. */
  private void blank(Part part, BillWitness.Mesh mesh) {
    if (part.sheetWidth().isPresent() && part.kind() != PartKind.MEMBRANE) {
      double sheet = part.cutLength() * part.sheetWidth().getAsDouble();
      assertThat(mesh.volume() / kit.item(part.item()).thickness() / sheet)
          .as("sheet used by %s", part.id())
          .isBetween(LEAST_OF_BLANK, MOST_OF_BLANK);
    }
  }

  /** Pieces that stand in one row, and how far each reaches over the next. */
  private double laps(BillWitness.Line line) {
    Map<String, List<BillWitness.Mesh>> rows = new LinkedHashMap<>();
    for (String element : line.elements()) {
      Part part = parts.get(element);
      if (part.kind() != PartKind.SADDLE) {
        String kind = part.kind() == PartKind.COLLAR_PIECE ? "pan" : part.kind().word();
        String place = part.id().substring(0, part.id().lastIndexOf('/'));
        rows.computeIfAbsent(place + " " + kind, r -> new ArrayList<>()).add(mesh(element));
      }
    }
    return rows.values().stream().mapToDouble(MeshSums::laps).sum();
  }

  private static double laps(List<BillWitness.Mesh> row) {
    List<BillWitness.Mesh> inOrder =
        row.stream().sorted(Comparator.comparingDouble(BillWitness.Mesh::from)).toList();
    double laps = 0;
    double reached = Double.NEGATIVE_INFINITY;
    for (BillWitness.Mesh mesh : inOrder) {
      laps += Math.max(0, Math.min(reached, mesh.to()) - mesh.from());
      reached = Math.max(reached, mesh.to());
    }
    return laps;
  }
}
