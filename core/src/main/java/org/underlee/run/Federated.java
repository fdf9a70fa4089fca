package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.ifc.ModelPart;
import org.underlee.step.StepInstance;

/**
 * Another model of the same house, placed in the deck model's world: by the maps that both are on,
 * else as it is, else by the site that both have.
 *
 * @param toDeck from its world to the deck model's
 * @param findings how it was placed, where that is more than taking it as it is
 */
record Federated(IfcModel model, String file, Transform toDeck, List<Finding> findings) {
  /** A model with nothing this near to a deck has another origin, or belongs to another house. */
  static final double SAME_SITE = 50;

  /** Sites further apart than this are not of one house, however coarse their seconds are. */
  private static final double ONE_PLACE = 1000;

  /** Places that differ by less than this are one. */
  private static final double SAME = 0.001;

  /** Attribute of IfcSite. */
  private static final int PLACEMENT = 5;

  private record Way(Transform toDeck, Optional<Finding> finding) {}

  /**
   * Places a model.
   *
   * @param places around the decks
   */
  static Federated of(IfcModel deck, IfcModel other, String file, List<Box> places) {
    List<Finding> said = new ArrayList<>();
    otherPlace(deck, other, file).ifPresent(said::add);
    List<Way> ways = new ArrayList<>();
    byMap(deck, other, file, said).ifPresent(ways::add);
    ways.add(new Way(Transform.IDENTITY, Optional.empty()));
    bySite(deck, other, file).ifPresent(ways::add);
    for (Way way : ways) {
      Federated placed = new Federated(other, file, way.toDeck, List.of());
      if (places.isEmpty() || !placed.near(places, SAME_SITE).elements().isEmpty()) {
        way.finding.ifPresent(said::add);
        return new Federated(other, file, way.toDeck, said);
      }
    }
    said.add(elsewhere(file));
    return new Federated(other, file, Transform.IDENTITY, said);
  }

  private static Optional<Way> byMap(
      IfcModel deck, IfcModel other, String file, List<Finding> said) {
    Optional<Georeference> own = Georeference.of(deck);
    Optional<Georeference> its = Georeference.of(other);
    if (own.isEmpty() || its.isEmpty()) {
      return Optional.empty();
    }
    if (!own.get().isOnMapOf(its.get())) {
      said.add(otherMap(file, own.get().system(), its.get().system()));
      return Optional.empty();
    }
    Transform move = own.get().toMap().inverse().after(its.get().toMap());
    return way(move, file, "its map conversion");
  }

  private static Optional<Way> bySite(IfcModel deck, IfcModel other, String file) {
    Optional<StepInstance> own = site(deck);
    Optional<StepInstance> its = site(other);
    if (own.isEmpty() || its.isEmpty() || !own.get().text(0).equals(its.get().text(0))) {
      return Optional.empty();
    }
    Transform from = other.placement(its.get().ref(PLACEMENT));
    return way(
        deck.placement(own.get().ref(PLACEMENT)).after(from.inverse()),
        file,
        "the placement of the site that both have");
  }

  private static Optional<StepInstance> site(IfcModel model) {
    int[] all = model.step().ofKeyword("IFCSITE");
    return all.length == 0
        ? Optional.empty()
        : Optional.of(model.step().decode(all[0])).filter(s -> !s.isOmitted(PLACEMENT));
  }

  private static Optional<Way> way(Transform move, String file, String by) {
    boolean stays =
        move.origin().length() < SAME
            && move.x().distance(Vec3.X) < SAME / SAME_SITE
            && move.y().distance(Vec3.Y) < SAME / SAME_SITE;
    return stays
        ? Optional.empty()
        : Optional.of(new Way(move, Optional.of(moved(file, by, move))));
  }

  /** Its elements within a distance of the places, in the deck model's world. */
  ModelPart near(List<Box> places, double reach) {
    List<Box> wanted = places.stream().map(p -> p.grown(reach)).toList();
    ModelPart own =
        model.near(
            ifcClass -> false,
            box -> false,
            none ->
                Optional.of((ifcClass, box) -> wanted.stream().anyMatch(box.moved(toDeck)::meets)));
    List<BuildingElement> placed =
        own.elements().stream()
            .map(e -> placed(e).in(file))
            .filter(e -> wanted.stream().anyMatch(e.shape().bounds()::meets))
            .toList();
    return new ModelPart(own.external(), placed, own.spaces(), own.notMeasured(), own.findings());
  }

  private BuildingElement placed(BuildingElement e) {
    return toDeck.equals(Transform.IDENTITY) ? e : e.shaped(e.shape().transformed(toDeck));
  }

  private static Finding moved(String file, String by, Transform move) {
    double turn = Math.toDegrees(Math.atan2(move.x().y(), move.x().x()));
    return Finding.of(
        Rules.SERVICES_MOVED,
        Place.NOWHERE.inFile(file),
        String.format(
            Locale.ROOT,
            "This model was placed by %s: moved by %.3f, %.3f, %.3f m and turned by %.3f degrees.",
            by,
            move.origin().x(),
            move.origin().y(),
            move.origin().z(),
            turn),
        "Look at one pipe and one wall in the picture to see that they fit.");
  }

  private static Finding otherMap(String file, String own, String its) {
    return Finding.of(
        Rules.SERVICES_OTHER_MAP,
        Place.NOWHERE.inFile(file),
        "This model is on the map \""
            + its
            + "\" and the deck's on \""
            + own
            + "\"; the maps are left aside.",
        "Export both models with the same coordinate reference system.");
  }

  private static Optional<Finding> otherPlace(IfcModel deck, IfcModel other, String file) {
    Optional<SiteOnEarth> own = SiteOnEarth.of(deck);
    Optional<SiteOnEarth> its = SiteOnEarth.of(other);
    return own.isPresent() && its.isPresent() && own.get().distance(its.get()) > ONE_PLACE
        ? Optional.of(
            Finding.of(
                Rules.SERVICES_OTHER_PLACE,
                Place.NOWHERE.inFile(file),
                String.format(
                    Locale.ROOT,
                    "By latitude and longitude the site of this model is %.1f km from the deck's;"
                        + " it may belong to another house.",
                    own.get().distance(its.get()) / 1000),
                "Check that it is the right model; many programs state a city of their own where"
                    + " nobody set the place."))
        : Optional.empty();
  }

  private static Finding elsewhere(String name) {
    return Finding.of(
        Rules.SERVICES_ELSEWHERE,
        Place.NOWHERE.inFile(name),
        "Nothing in this model is within "
            + Math.round(SAME_SITE)
            + " m of a deck, whether placed by map, as it is, or by its site; it cannot belong to"
            + " this house as it is.",
        "Export both models with the same origin and unit, or leave this one out.");
  }
}
