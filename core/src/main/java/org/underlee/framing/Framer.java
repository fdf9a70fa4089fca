package org.underlee.framing;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.StopSign;
import org.underlee.geom.Box;
import org.underlee.geom.Tolerance;

/**
 * Recognises deck framing in any model, from geometry first; names only add confidence.
 *
 * <p>Story: measure the bars; gather joists into sets; for each set find what holds it, which way
 * it falls, its lines; gather fields of one level into decks; give every member a role with its
 * reason.
 */
public final class Framer {
  private final List<BuildingElement> elements;
  private final ElementSource source;
  private final Told told;

  private Framer(ElementSource source, Told told) {
    this.source = source;
    this.told = told;
    this.elements = source.elements();
  }

  public static Framing frame(ElementSource source) {
    return frame(source, Told.NOTHING);
  }

  /** As {@link #frame(ElementSource)}, where the user says better of some elements. */
  public static Framing frame(ElementSource source, Told told) {
    return new Framer(source, told).recognise();
  }

  private Framing recognise() {
    StopSign stop = StopSign.here();
    Members members = Members.of(elements, told);
    stop.obey();
    Tolerance tolerance = Tolerance.forCoordinates(magnitude());
    List<Member> level = members.level().toList();
    Posts posts = Posts.of(members.upright().toList());
    stop.obey();
    HouseWalls walls = new HouseWalls(elements);
    stop.obey();
    MemberIndex edges = new MemberIndex(members.edges());
    Set<Member> sleepers = Sleepers.onSlabs(level, elements);
    stop.obey();
    List<Member> candidates =
        level.stream().filter(Framer::mayBeJoist).filter(m -> !sleepers.contains(m)).toList();
    JoistSets.Found side = JoistSets.find(candidates, tolerance);
    List<List<Member>> sets = new SetEdges(edges, tolerance).without(side.sets());
    Set<Member> lying = new LinkedHashSet<>(side.lyingAcross());
    level.stream().filter(sleepers::contains).forEach(lying::add);
    stop.obey();
    FieldFinder finder =
        new FieldFinder(
            new MemberIndex(members.all()),
            edges,
            posts,
            walls,
            sets.stream().flatMap(List::stream).collect(Collectors.toUnmodifiableSet()),
            tolerance);
    List<Deck> decks = Decks.of(finder.findAll(sets), outside(members, posts));
    stop.obey();
    List<RoleGiven> roles = Trust.weigh(decks, Roles.give(decks, members, posts, lying));
    Framing found =
        new Framing(decks, roles, source.notMeasured(), FramingFindings.of(decks, roles));
    return found.telling(ToldFindings.of(told, elements, found));
  }

  private static boolean mayBeJoist(Member m) {
    return m.told().isEmpty() || m.isTold(Role.JOIST);
  }

  private Outside outside(Members members, Posts posts) {
    List<Member> boards =
        Stream.concat(members.level(), members.coverings().stream().filter(Member::isLevel))
            .toList();
    List<BuildingElement> railings =
        elements.stream().filter(e -> e.ifcClass().equals("IfcRailing")).toList();
    return new Outside(
        new Surroundings(source), new DeckSigns(new MemberIndex(boards), posts, railings), told);
  }

  private double magnitude() {
    Box all = Box.around(elements.stream().map(e -> e.shape().bounds()).toList());
    return all.isEmpty() ? 0 : Math.max(all.min().length(), all.max().length());
  }
}
