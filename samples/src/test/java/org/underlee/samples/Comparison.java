package org.underlee.samples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.underlee.finding.InputException;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepFile;

/** Our reading of one file beside {@code web-ifc}'s, product by product. */
final class Comparison {
  private static final double BOX_METRES = 0.001;
  private static final double VOLUME_SHARE = 0.001;

  /**
   * The witness keeps coordinates in 32 bits, 2⁻²³ of their size apart: a volume is then unsure by
   * that much over the whole of its box's surface.
   */
  private static final double SINGLE = 0x1p-23;

  /** A surface whose area vectors sum to more than this share of its area is open. */
  private static final double OPEN_SHARE = 1e-4;

  /** A volume below this share of its surface's area to the power of 1.5 is that of a sheet. */
  private static final double FLAT_SHARE = 1e-6;

  /** What two readings can differ in. */
  enum What {
    /** A corner of the box is more than a millimetre away. */
    BOX,
    /** The volumes differ by more than 0.1 %. */
    VOLUME,
    /** The same where the witness's faces do not close, so that its volume means nothing. */
    VOLUME_WITNESS_OPEN,
    /** Our faces enclose nothing (a sheet, an open surface): volumes are not compared. */
    NO_VOLUME,
    ONLY_OURS,
    ONLY_THEIRS,
    FILE_ONLY_OURS,
    FILE_ONLY_THEIRS,
    FILE_OF_NEITHER
  }

  /** One difference; for a whole file the instance is zero and the class empty. */
  record Difference(String file, String ifcClass, What what, long instance) {}

  private final String file;
  private final List<Difference> differences = new ArrayList<>();
  private int compared;

  record Result(int compared, List<Difference> differences) {}

  /** What the comparison needs of one of our elements. */
  private record Our(long instance, String ifcClass, Box box, double volume, boolean hasVolume) {
    static Our of(BuildingElement element) {
      Mesh shape = element.shape();
      return new Our(
          element.instance(),
          element.ifcClass(),
          shape.bounds(),
          shape.volume(),
          !hasNoVolume(shape));
    }
  }

  /** Our reading of one file; not readable when {@code elements} is empty. */
  record Reading(String file, Optional<List<Our>> elements) {
    static Reading of(Path path, String name) {
      try {
        List<BuildingElement> elements = IfcModel.of(StepFile.read(path)).elements();
        return new Reading(name, Optional.of(elements.stream().map(Our::of).toList()));
      } catch (InputException e) {
        return new Reading(name, Optional.empty());
      }
    }
  }

  private Comparison(String file) {
    this.file = file;
  }

  /**
   * Compares one file.
   *
   * @param theirs the witness's products in it
   * @param unread whether the witness could not read it
   */
  static Result of(Reading reading, List<WebIfc.Product> theirs, boolean unread) {
    Comparison c = new Comparison(reading.file());
    if (reading.elements().isPresent()) {
      if (unread) {
        c.add(What.FILE_ONLY_OURS);
      } else {
        c.compare(reading.elements().get(), theirs);
      }
    } else if (unread || !theirs.isEmpty()) {
      c.add(unread ? What.FILE_OF_NEITHER : What.FILE_ONLY_THEIRS);
    }
    return new Result(c.compared, c.differences);
  }

  private void add(What what) {
    differences.add(new Difference(file, "", what, 0));
  }

  private void add(Our our, What what) {
    differences.add(new Difference(file, our.ifcClass(), what, our.instance()));
  }

  private void compare(List<Our> elements, List<WebIfc.Product> theirs) {
    Map<Long, Our> ours =
        elements.stream().collect(Collectors.toMap(Our::instance, Function.identity()));
    Set<Long> seen = new HashSet<>();
    for (WebIfc.Product their : theirs) {
      seen.add(their.instance());
      Our our = ours.get(their.instance());
      if (our == null) {
        differences.add(new Difference(file, their.type(), What.ONLY_THEIRS, their.instance()));
      } else {
        compare(our, their);
      }
    }
    ours.values().stream()
        .filter(e -> !seen.contains(e.instance()))
        .forEach(e -> add(e, What.ONLY_OURS));
  }

  private void compare(Our our, WebIfc.Product their) {
    compared++;
    Box box = our.box();
    double size = Math.max(reach(box.min()), reach(box.max()));
    double far =
        Math.max(
            reach(box.min().minus(point(their.min()))), reach(box.max().minus(point(their.max()))));
    if (!(far <= BOX_METRES + size * SINGLE)) {
      add(our, What.BOX);
    }
    if (!our.hasVolume()) {
      add(our, What.NO_VOLUME);
    } else if (!volumeAgrees(our, their.volume(), size)) {
      add(our, their.open() > OPEN_SHARE ? What.VOLUME_WITNESS_OPEN : What.VOLUME);
    }
  }

  private static boolean volumeAgrees(Our our, double their, double size) {
    Vec3 s = our.box().size();
    double surface = 2 * (s.x() * s.y() + s.y() * s.z() + s.z() * s.x());
    double allowed = VOLUME_SHARE * Math.abs(their) + size * SINGLE * surface;
    return Math.abs(our.volume() - their) <= allowed;
  }

  private static Vec3 point(double[] xyz) {
    return new Vec3(xyz[0], xyz[1], xyz[2]);
  }

  private static double reach(Vec3 p) {
    return Math.max(Math.abs(p.x()), Math.max(Math.abs(p.y()), Math.abs(p.z())));
  }

  /**
   * Only where the area vectors sum to nothing is the volume the same about every point; and a
   * surface drawn from both sides holds none.
   */
  private static boolean hasNoVolume(Mesh mesh) {
    Vec3 sum = Vec3.ZERO;
    double area = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 n = mesh.areaNormal(t);
      sum = sum.plus(n);
      area += n.length();
    }
    boolean flat = Math.abs(mesh.volume()) < FLAT_SHARE * Math.pow(area, 1.5);
    return flat || sum.length() > OPEN_SHARE * area;
  }
}
