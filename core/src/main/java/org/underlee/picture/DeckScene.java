package org.underlee.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Framing;
import org.underlee.framing.Role;
import org.underlee.framing.RoleGiven;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.DeckPicture.Family;

/** The decks of a model in 3-D: framing by role, what stands near it faded, and the assembly. */
public final class DeckScene {
  /** What lies further from the framing than this is left out. */
  private static final double NEAR = 1.5;

  /** How far beside the deck's middle the eye is, to what it is before and below it. */
  private static final double BESIDE = 0.5;

  private DeckScene() {}

  /**
   * The scene. Deck boards are left out, so that what lies below them is seen from above too.
   *
   * @param layout the assembly, where there is one
   */
  public static Scene of(Framing framing, List<BuildingElement> elements, Optional<Layout> layout) {
    return picture(framing, elements, layout).scene();
  }

  /** As {@link #of}, with what each shape stands for. */
  public static DeckPicture picture(
      Framing framing, List<BuildingElement> elements, Optional<Layout> layout) {
    return standing(framing, elements).with(layout, Part::mesh);
  }

  /** What is there before anything is laid out: the same for every layout of a survey. */
  public static Standing standing(Framing framing, List<BuildingElement> elements) {
    Map<String, Role> roles = new HashMap<>();
    Box deck = Box.EMPTY;
    for (RoleGiven given : framing.roles()) {
      roles.put(given.member().id(), given.role());
      deck = deck.union(given.member().element().shape().bounds());
    }
    List<Shape> shapes = new ArrayList<>();
    List<DeckPicture.Subject> subjects = new ArrayList<>();
    for (BuildingElement element : elements) {
      Optional<Role> role = Optional.ofNullable(roles.get(element.globalId()));
      boolean near = deck.isEmpty() || element.shape().bounds().meets(deck.grown(NEAR));
      if (near && !element.shape().isEmpty() && role.filter(r -> r == Role.DECK_BOARD).isEmpty()) {
        shapes.add(shape(shapes.size() + 1, element, role));
        subjects.add(new DeckPicture.Subject(element.globalId(), family(element, role)));
      }
    }
    return new Standing(shapes, subjects);
  }

  /** Framing and surroundings, to which layouts are added. */
  public static final class Standing {
    private final List<Shape> shapes;
    private final List<DeckPicture.Subject> subjects;

    private Standing(List<Shape> shapes, List<DeckPicture.Subject> subjects) {
      this.shapes = List.copyOf(shapes);
      this.subjects = List.copyOf(subjects);
    }

    /**
     * With an assembly, where there is one.
     *
     * @param mesh that of a part, which may be known already
     */
    public DeckPicture with(Optional<Layout> layout, Function<Part, Mesh> mesh) {
      List<Shape> all = new ArrayList<>(shapes);
      List<DeckPicture.Subject> told = new ArrayList<>(subjects);
      for (Part part : layout.map(Layout::parts).orElse(List.of())) {
        if (!part.bodies().isEmpty()) {
          Mesh own = mesh.apply(part);
          all.add(new Shape(all.size() + 1, part.label(), own, paint(part.kind()), true));
          told.add(new DeckPicture.Subject(part.id(), family(part.kind())));
        }
      }
      return new DeckPicture(Scene.of(all), told);
    }
  }

  private static Family family(BuildingElement element, Optional<Role> role) {
    if (role.isPresent()) {
      return Family.FRAMING;
    }
    return isService(element) ? Family.SERVICES : Family.SURROUNDINGS;
  }

  private static Family family(PartKind kind) {
    return switch (kind) {
      case PAN, COLLAR_PIECE, SADDLE, PLY_STRIP, MEMBRANE, CAP_STRIP, SHEET, RIDGE_CAP ->
          Family.PANS;
      case SIDE_RAIL, HEAD_RAIL, BATTEN, BATTEN_HANGER -> Family.RAILS;
      case GUTTER, FLASHING, END_CAP, OUTLET, DOWNSPOUT, ELBOW -> Family.GUTTER;
      case HANGER, STRAP, FASTENER, TAPE -> Family.SUNDRIES;
    };
  }

  /**
   * As someone sees it who stands on the patio before the first deck and looks up to the house, on
   * the side that the first downspout is not at: from its own side its post hides it.
   */
  public static Camera fromBelow(
      Framing framing, Optional<Layout> layout, Scene scene, double aspect) {
    double side = isAtHighSide(framing, layout, scene) ? -BESIDE : BESIDE;
    return camera(framing, scene, aspect, side, -0.95);
  }

  /** Whether the first downspout is beyond the middle, counted from the first joist. */
  private static boolean isAtHighSide(Framing framing, Optional<Layout> layout, Scene scene) {
    Optional<Part> downspout =
        layout.stream()
            .flatMap(l -> l.parts().stream())
            .filter(p -> p.kind() == PartKind.DOWNSPOUT && !p.bodies().isEmpty())
            .findFirst();
    return downspout.isEmpty()
        || framing
            .fields()
            .findFirst()
            .map(
                f -> {
                  double middle =
                      subject(scene).stream()
                          .mapToDouble(p -> f.frame().toLocal(p).x())
                          .average()
                          .orElse(0);
                  return f.frame().toLocal(downspout.get().bounds().centre()).x() > middle;
                })
            .orElse(true);
  }

  /** From above the garden, looking down to the house. */
  public static Camera fromAbove(Framing framing, Scene scene, double aspect) {
    return camera(framing, scene, aspect, -BESIDE, 0.8);
  }

  /**
   * What the picture is of: all that is drawn solid, so that a long wall does not shrink the deck.
   */
  private static List<Vec3> subject(Scene scene) {
    List<Shape> solid = scene.shapes().stream().filter(s -> s.paint().isSolid()).toList();
    return Scene.of(solid.isEmpty() ? scene.shapes() : solid).points();
  }

  private static Camera camera(
      Framing framing, Scene scene, double aspect, double side, double up) {
    Vec3 eye =
        framing
            .fields()
            .findFirst()
            .map(f -> f.frame().direction(new Vec3(side, 0.6, up)))
            .orElse(new Vec3(side, -0.6, up));
    return Camera.lookingFrom(eye, subject(scene), aspect);
  }

  private static Shape shape(int id, BuildingElement element, Optional<Role> role) {
    String label = element.name().isEmpty() ? element.globalId() : element.name();
    return new Shape(
        id,
        label,
        element.shape(),
        role.map(DeckScene::paint).orElseGet(() -> other(element)),
        true);
  }

  private static Paint paint(Role role) {
    return switch (role) {
      case JOIST, TRIMMER -> Palette.JOIST;
      case LEDGER, RIM, HEADER -> Palette.LEDGER;
      case DROP_BEAM, FLUSH_BEAM -> Palette.BEAM;
      case POST, GUARD_POST -> Palette.POST;
      case BLOCKING, BRIDGING, PACKER -> Palette.BLOCKING;
      case HANGER -> Palette.HANGER;
      case STRINGER, SLEEPER -> Palette.BEAM;
      case DECK_BOARD -> Palette.DECKING;
    };
  }

  /** Services are drawn solid, as they may be in the way; walls and the rest are faded. */
  private static Paint other(BuildingElement element) {
    return isService(element) ? Palette.PIPE : Palette.CONTEXT;
  }

  private static boolean isService(BuildingElement element) {
    String c = element.ifcClass();
    return c.contains("Pipe") || c.contains("Flow") || c.contains("Duct") || c.contains("Cable");
  }

  private static Paint paint(PartKind kind) {
    return switch (kind) {
      case PAN, SHEET -> Palette.PAN;
      case MEMBRANE -> Palette.MEMBRANE;
      case COLLAR_PIECE, SADDLE -> Palette.COLLAR;
      case SIDE_RAIL, HEAD_RAIL, CAP_STRIP, RIDGE_CAP -> Palette.RAIL;
      case PLY_STRIP -> Palette.PAN;
      case TAPE -> Palette.TAPE;
      case GUTTER, FLASHING, END_CAP, OUTLET, DOWNSPOUT, ELBOW -> Palette.GUTTER;
      case BATTEN -> Palette.BLOCKING;
      case HANGER, STRAP, BATTEN_HANGER, FASTENER -> Palette.HANGER;
    };
  }
}
