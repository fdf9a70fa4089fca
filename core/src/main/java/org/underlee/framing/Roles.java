package org.underlee.framing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.geom.PlanShape;

/** Gives every member of the decks its role. A member keeps the first role it is given. */
final class Roles {
  /** Evidence from geometry alone; a fitting name adds to it. */
  private static final double BY_PLACE = 0.9;

  private static final double NAME_ADDS = 0.08;

  /** Framing that the program made up is no more likely than not. */
  private static final double ASSUMED = 0.5;

  /** A board lies on the joists to within this, and is no thicker than {@link #THICKEST_BOARD}. */
  private static final double BOARD_GAP = 0.012;

  private static final double THICKEST_BOARD = 0.06;

  private final Map<Member, RoleGiven> given = new LinkedHashMap<>();

  private record InDeck(String deck, Field field) {}

  private Roles() {}

  static List<RoleGiven> give(
      List<Deck> decks, Members members, Posts posts, Collection<Member> sleepers) {
    Roles roles = new Roles();
    List<InDeck> fields =
        decks.stream().flatMap(d -> d.fields().stream().map(f -> new InDeck(d.id(), f))).toList();
    fields.forEach(roles::joists);
    fields.forEach(roles::supports);
    fields.forEach(f -> roles.guards(f, posts));
    MemberIndex inclined = new MemberIndex(members.inclined().toList());
    fields.forEach(f -> roles.stringers(f, inclined));
    MemberIndex small = new MemberIndex(members.small());
    fields.forEach(f -> roles.hangers(f, small));
    MemberIndex boards =
        new MemberIndex(
            Stream.concat(members.level(), members.coverings().stream().filter(Member::isLevel))
                .filter(m -> m.box().depth() <= THICKEST_BOARD)
                .toList());
    fields.forEach(f -> roles.boards(f, boards));
    sleepers.forEach(roles::sleeper);
    return List.copyOf(roles.given.values());
  }

  private void joists(InDeck in) {
    Field field = in.field;
    Set<Member> trimmers = Set.copyOf(field.trimmers());
    for (JoistLine line : field.lines()) {
      for (Member ply : line.plies()) {
        boolean trimmer = trimmers.contains(ply);
        String why = "one of " + field.lines().size() + " lines side by side; " + line.why();
        give(
            in.deck,
            ply,
            trimmer ? Role.TRIMMER : Role.JOIST,
            trimmer ? "trimmer" : "joist",
            trimmer ? why + "; a header ends on the line" : why);
      }
    }
  }

  private void supports(InDeck in) {
    Field field = in.field;
    Stream.of(field.high(), field.low(), field.dropBeams(), field.carriers())
        .flatMap(List::stream)
        .forEach(s -> give(in.deck, s.member(), s.role(), nameFor(s.role()), s.why()));
    field.blocking().forEach(b -> between(in.deck, b, field.roleBetweenLines(b)));
    for (Member post : field.posts()) {
      give(in.deck, post, Role.POST, "post", "upright, and carries a beam or the joists");
    }
  }

  private void between(String deck, Member piece, Role role) {
    switch (role) {
      case BRIDGING ->
          give(deck, piece, role, "bridging", "a strut that rises from one joist line to the next");
      case PACKER ->
          give(deck, piece, role, "pack", "fills the narrow gap between a pair of joists");
      default -> give(deck, piece, role, "block", "a short piece set between two joist lines");
    }
  }

  private static List<Member> edges(Field field) {
    List<Member> edges = new ArrayList<>();
    Stream.of(field.low(), field.high())
        .flatMap(List::stream)
        .map(Support::member)
        .forEach(edges::add);
    field.lines().forEach(l -> edges.addAll(l.plies()));
    return edges;
  }

  /** Posts at the field's edge, or on a joist, that rise as high as a guard. */
  static Set<Member> guardsOf(Field field, Posts posts) {
    double top = field.top();
    Set<Member> guards = new LinkedHashSet<>();
    for (Member edge : edges(field)) {
      guards.addAll(posts.guardsOn(edge, top));
    }
    return guards;
  }

  private void guards(InDeck in, Posts posts) {
    for (Member post : inFileOrder(guardsOf(in.field, posts))) {
      if (isFreeFor(post, Role.GUARD_POST)) {
        give(
            in.deck,
            post,
            Role.GUARD_POST,
            "guard",
            "upright, fixed to the edge and rising above the deck");
      }
    }
  }

  private void stringers(InDeck in, MemberIndex inclined) {
    Field field = in.field;
    double top = field.top();
    Set<Member> found = new LinkedHashSet<>();
    for (Member edge : edges(field)) {
      for (Member m : inclined.near(edge, Stringers.REACH)) {
        if (Stringers.climbsTo(edge, m, top)) {
          found.add(m);
        }
      }
    }
    for (Member m : inFileOrder(found)) {
      if (isFreeFor(m, Role.STRINGER)) {
        give(in.deck, m, Role.STRINGER, "stringer", "slopes up and ends at the deck's edge");
      }
    }
  }

  private void hangers(InDeck in, MemberIndex small) {
    for (Member m : inFileOrder(Hangers.at(in.field, small))) {
      if (isFreeFor(m, Role.HANGER)) {
        give(in.deck, m, Role.HANGER, "hanger", "thin, and wraps a joist's end");
      }
    }
  }

  private void boards(InDeck in, MemberIndex boards) {
    for (Member m : boards.near(in.field.bounds().grown(BOARD_GAP))) {
      if (isFreeFor(m, Role.DECK_BOARD) && isBoardOn(m, in.field)) {
        give(in.deck, m, Role.DECK_BOARD, "board", "thin, and lies on the joists");
      }
    }
  }

  /** Whether a bar is thin and lies on the field's joists. */
  static boolean isBoardOn(Member m, Field field) {
    if (m.box().depth() > THICKEST_BOARD || Math.abs(m.box().bottom() - field.top()) > BOARD_GAP) {
      return false;
    }
    PlanShape shape = field.shapeOf(m);
    return !shape.across().meet(field.across()).isEmpty()
        && !shape.along().meet(field.along()).isEmpty();
  }

  /** Sleepers are of no deck: nothing below them can be drained. */
  private void sleeper(Member m) {
    if (!given.containsKey(m)) {
      boolean named = m.isCalled("sleeper", "batten");
      given.put(
          m,
          new RoleGiven(
              m,
              Role.SLEEPER,
              Set.of(),
              named ? BY_PLACE + NAME_ADDS : BY_PLACE,
              "lies on a slab or across joists all along, with no space below it"));
    }
  }

  private static List<Member> inFileOrder(Collection<Member> members) {
    return members.stream().sorted(Comparator.comparingLong(m -> m.element().instance())).toList();
  }

  /** Whether a member has no role yet, or has this one from another field. */
  private boolean isFreeFor(Member member, Role role) {
    RoleGiven known = given.get(member);
    return known == null || known.role() == role;
  }

  private void give(String deck, Member member, Role role, String name, String why) {
    RoleGiven known = given.get(member);
    given.put(member, known != null ? known.alsoOf(deck) : first(deck, member, role, name, why));
  }

  private static RoleGiven first(String deck, Member member, Role role, String name, String why) {
    if (member.element().isAssumed()) {
      return new RoleGiven(
          member, role, Set.of(deck), ASSUMED, "assumed, not in the model: " + why);
    }
    if (member.isTold(role)) {
      return new RoleGiven(member, role, Set.of(deck), 1, Told.WHY);
    }
    boolean named = member.isCalled(name);
    return new RoleGiven(
        member,
        role,
        Set.of(deck),
        named ? BY_PLACE + NAME_ADDS : BY_PLACE,
        named ? why + "; its name agrees" : why);
  }

  private static String nameFor(Role role) {
    return switch (role) {
      case DROP_BEAM, FLUSH_BEAM -> "beam";
      default -> role.word();
    };
  }
}
