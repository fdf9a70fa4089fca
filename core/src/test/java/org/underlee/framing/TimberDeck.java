package org.underlee.framing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.finding.NotMeasured;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * A deck put together bar by bar, metres. The house is at y &lt; 0 and the water goes along +y, so
 * that places in the field's frame are x and y less the left face of the first joist. An element's
 * name is its GlobalId.
 */
public final class TimberDeck {
  public static final double W = 0.038;
  public static final double D = 0.184;

  /** Joist length, from the ledger's face to the rim's. */
  public static final double L = 3;

  /** Height of the joist bottoms. */
  public static final double Z = 2.5;

  private static final Storey GROUND = new Storey("storey", "Ground", 0);

  private final List<BuildingElement> elements;

  public TimberDeck() {
    this(new ArrayList<>());
  }

  private TimberDeck(List<BuildingElement> elements) {
    this.elements = elements;
  }

  /** Ledger on a house wall, {@code n} joists with their left faces 400 mm apart, and a rim. */
  public static TimberDeck plain(int n) {
    return open(n).wall();
  }

  /** The same without the house. */
  public static TimberDeck open(int n) {
    return new TimberDeck().joists(n).ledger("bar on the house", n).rim(n);
  }

  public TimberDeck joists(int n) {
    for (int i = 0; i < n; i++) {
      joist("j" + (i + 1), i * 0.4, 0, L);
    }
    return this;
  }

  public TimberDeck joist(String name, double x, double from, double to) {
    return bar("IfcBeam", name, x, from, Z, x + W, to, Z + D);
  }

  public TimberDeck ledger(String name, int n) {
    return bar("IfcBeam", name, 0, -W, Z, (n - 1) * 0.4 + W, 0, Z + D);
  }

  public TimberDeck rim(int n) {
    return bar("IfcBeam", "rim", 0, L, Z, (n - 1) * 0.4 + W, L + W, Z + D);
  }

  public TimberDeck wall() {
    return bar("IfcWall", "house", -1, -W - 0.2, 0, 4, -W, 2.9);
  }

  /** A box from corner to corner. */
  public TimberDeck bar(
      String ifcClass,
      String name,
      double x0,
      double y0,
      double z0,
      double x1,
      double y1,
      double z1) {
    Outline plan = Outline.rectangle(x0, y0, x1, y1);
    return add(
        ifcClass,
        name,
        Extrusion.straight(Transform.translation(new Vec3(0, 0, z0)), plan, z1 - z0).mesh());
  }

  /** A vertical prism over a plan. */
  public TimberDeck prism(String name, List<Vec2> plan, double z0, double z1) {
    return add(
        "IfcBeam",
        name,
        Extrusion.straight(Transform.translation(new Vec3(0, 0, z0)), Outline.of(plan), z1 - z0)
            .mesh());
  }

  /** A round bar between two points, of 24 facets. */
  public TimberDeck pipe(String ifcClass, String name, Vec3 from, Vec3 to, double diameter) {
    Vec3 axis = to.minus(from);
    Vec3 hint = Math.abs(axis.unit().z()) < 0.9 ? Vec3.Z : Vec3.X;
    return add(
        ifcClass,
        name,
        Extrusion.straight(
                Transform.frame(from, axis, hint),
                Outline.of(Outline.circle(0, 0, diameter / 2, 24)),
                axis.length())
            .mesh());
  }

  public TimberDeck add(String ifcClass, String name, Mesh shape) {
    long next = elements.stream().mapToLong(BuildingElement::instance).max().orElse(0) + 1;
    elements.add(
        new BuildingElement(next, name, ifcClass, name, "", "", Optional.of(GROUND), shape));
    return this;
  }

  public TimberDeck without(String name) {
    elements.removeIf(e -> e.name().equals(name));
    return this;
  }

  /** The same deck under another name for one member. */
  public TimberDeck renamed(String name, String other) {
    elements.replaceAll(
        e ->
            e.name().equals(name)
                ? new BuildingElement(
                    e.instance(), other, e.ifcClass(), other, "", "", e.storey(), e.shape())
                : e);
    return this;
  }

  public TimberDeck moved(Transform map) {
    return new TimberDeck(
        new ArrayList<>(
            elements.stream()
                .map(e -> with(e, e.instance(), e.shape().transformed(map)))
                .toList()));
  }

  /** In another order in the file, with other numbers, and each surface written in another way. */
  public TimberDeck mixed(Random random) {
    List<BuildingElement> order = new ArrayList<>(elements);
    Collections.shuffle(order, random);
    List<BuildingElement> mixed = new ArrayList<>();
    for (BuildingElement e : order) {
      mixed.add(with(e, mixed.size() + 1, shuffled(e.shape(), random)));
    }
    return new TimberDeck(mixed);
  }

  private static BuildingElement with(BuildingElement e, long instance, Mesh shape) {
    return new BuildingElement(
        instance, e.globalId(), e.ifcClass(), e.name(), "", "", e.storey(), shape);
  }

  private static Mesh shuffled(Mesh mesh, Random random) {
    List<Integer> faces = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      faces.add(t);
    }
    Collections.shuffle(faces, random);
    double[] xyz = new double[9 * faces.size()];
    int[] corners = new int[3 * faces.size()];
    for (int i = 0; i < corners.length; i++) {
      Vec3 p = mesh.point(faces.get(i / 3), i % 3);
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
      corners[i] = i;
    }
    return new Mesh(xyz, corners);
  }

  public List<BuildingElement> elements() {
    return List.copyOf(elements);
  }

  public Framing frame() {
    return frame(Told.NOTHING);
  }

  public Framing frame(Told told) {
    List<BuildingElement> all = elements();
    return Framer.frame(
        new ElementSource() {
          @Override
          public List<BuildingElement> elements() {
            return all;
          }

          @Override
          public List<NotMeasured> notMeasured() {
            return List.of();
          }
        },
        told);
  }

  /** The only field. */
  public Field field() {
    List<Field> fields = frame().fields().toList();
    if (fields.size() != 1) {
      throw new AssertionError("expected one field, found " + fields.size());
    }
    return fields.get(0);
  }

  public List<FieldBays> fieldBays() {
    Framing framing = frame();
    CrossingFinder crossings = new CrossingFinder(elements(), framing, List.of());
    return framing.fields().map(f -> BayFinder.find(f, crossings)).toList();
  }

  /** The bays of all fields. */
  public List<Bay> bays() {
    return fieldBays().stream().flatMap(f -> f.bays().stream()).toList();
  }

  /** The role of an element, or an empty text. */
  public String role(String name) {
    return frame().roleOf(name).map(Role::word).orElse("");
  }

  static Stream<String> names(List<Member> members) {
    return members.stream().map(Member::id);
  }
}
